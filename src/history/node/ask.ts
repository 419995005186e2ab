/** What git prints of a repository, all asked at once. */
import { isAbsolute, normalize } from 'node:path'
import { parseTracked, parseTree } from '../status.ts'
import { type GitAnswer, git } from './git.ts'
import type { RepositoryPlace } from './place.ts'

const FOLDERS = ['records', 'shared']

/** As git stores it, whatever the user likes to see. */
const LOG = [
  'log',
  '--topo-order',
  '--relative',
  '--raw',
  '--no-abbrev',
  '-z',
  '--no-renames',
  '--ignore-submodules=none',
  '--no-color',
  '--encoding=UTF-8',
]

const COMMITS = [
  '--diff-merges=first-parent',
  '--pretty=raw',
  '--no-decorate',
  '--no-notes',
  '--no-mailmap',
  '--no-show-signature',
]

const STATUS = [
  'status',
  '--porcelain=v2',
  '-z',
  '--no-renames',
  '--untracked-files=all',
  '--ignored=traditional',
  '--ignore-submodules=all',
]

export type Printed = {
  readonly log: string
  readonly merges: string
  readonly tree: string
  readonly status: string
  readonly tracked: string
  /** The file of reviews is part of the repository, or about to be. */
  readonly reviewsTracked: boolean
}

type Failed = Extract<GitAnswer, { ok: false }>

/** `reviewsFile` is relative to the root; one that lies outside of it is taken as not tracked. */
export async function askAll(
  root: string,
  { head, mainTip }: RepositoryPlace,
  reviewsFile: string,
): Promise<Printed | Failed> {
  const reviews = normalize(reviewsFile).replaceAll('\\', '/')
  const inside = !isAbsolute(reviews) && !reviews.startsWith('../')
  const paths = ['--', ...FOLDERS, ...(inside ? [reviews] : [])]
  const tips = [...new Set([head, mainTip])]
  const answers = await Promise.all([
    git(root, [...LOG, ...COMMITS, ...tips, '--']),
    git(root, [...LOG, '--merges', '--diff-merges=combined', '--format=%H', ...tips, '--']),
    git(root, ['ls-tree', '-r', '-z', head, ...paths]),
    git(root, [...STATUS, '--', ...FOLDERS]),
    git(root, ['ls-files', '-v', '-z', ...paths]),
  ])
  const failed = answers.find((answer) => !answer.ok)
  if (failed && !failed.ok) return failed
  const [log = '', merges = '', tree = '', status = '', tracked = ''] = answers.map(({ out }) =>
    out.toString('utf8'),
  )
  const reviewsTracked = parseTree(tree).files.has(reviews) || parseTracked(tracked).tracked.has(reviews)
  return { log, merges, tree, status, tracked, reviewsTracked }
}
