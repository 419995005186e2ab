/** The branch and the commits of what was handed in. Only its own files: whatever else is changed or staged stays so. */
import type { Person, Records } from '../../src/format/types.ts'
import type { HandedIn, Placement } from '../../src/take/parcel.ts'
import { git, gitLine } from '../git.ts'

export type Repository =
  /** No repository, or no git: files are placed, and that is all. */
  | { readonly is: 'none'; readonly why: string }
  | { readonly is: 'ready'; readonly on: string | null }
  | { readonly is: 'busy'; readonly why: string }

const UNDER_WAY: readonly (readonly [string, string])[] = [
  ['MERGE_HEAD', 'a merge'],
  ['CHERRY_PICK_HEAD', 'a cherry-pick'],
  ['REVERT_HEAD', 'a revert'],
  ['REBASE_HEAD', 'a rebase'],
]

const exists = (root: string, ref: string): boolean =>
  gitLine(root, ['rev-parse', '-q', '--verify', ref]) !== null

export const repositoryAt = (root: string): Repository => {
  const inside = git(root, ['rev-parse', '--is-inside-work-tree'])
  if (!inside.ok) return { is: 'none', why: inside.why }
  if (inside.text.trim() !== 'true') return { is: 'none', why: 'this folder is no working tree of git' }
  const under = UNDER_WAY.find(([ref]) => exists(root, ref))
  if (under) return { is: 'busy', why: `${under[1]} is under way: finish it first, or add --no-commit.` }
  const identity = git(root, ['var', 'GIT_COMMITTER_IDENT'])
  if (!identity.ok) {
    const why =
      'git does not know who you are: git config user.name "…" and git config user.email …, or add --no-commit.'
    return { is: 'busy', why }
  }
  return { is: 'ready', on: gitLine(root, ['symbolic-ref', '-q', '--short', 'HEAD']) }
}

/** `take/2026-03-04-0912-tank-leak`, of several runs with the number of the others behind it. */
export const branchName = (runs: readonly HandedIn[]): string => {
  const [first] = runs
  return `take/${first?.id ?? 'run'}${runs.length > 1 ? `-and-${runs.length - 1}-more` : ''}`
}

export type BranchState = 'free' | 'same' | 'other' | 'no name'

/** `same`: it is there, and holds exactly these files. */
export const branchState = (root: string, branch: string, placements: readonly Placement[]): BranchState => {
  if (!git(root, ['check-ref-format', '--branch', branch]).ok) return 'no name'
  if (!exists(root, `refs/heads/${branch}`)) return 'free'
  const same = placements.every(({ path, bytes }) => {
    const held = git(root, ['cat-file', 'blob', `refs/heads/${branch}:./${path}`])
    return held.ok && held.out.equals(bytes)
  })
  return same ? 'same' : 'other'
}

/** Which of these paths the current commit does not hold as they are on the disk. */
export const notCommitted = (root: string, paths: readonly string[]): readonly string[] => {
  const status = git(root, [
    'status',
    '--porcelain',
    '-z',
    '--untracked-files=all',
    '--ignored',
    '--',
    ...paths,
  ])
  const prefix = gitLine(root, ['rev-parse', '--show-prefix']) ?? ''
  const changed = new Set(status.ok ? status.text.split('\0').map((line) => line.slice(3)) : [])
  return paths.filter((path) => changed.has(`${prefix}${path}`))
}

/** The first of `by` whose e-mail is known. */
export const authorOf = (by: readonly string[], people: Records['people']): Person | null =>
  by.flatMap((id) => people[id] ?? []).find(({ emails }) => emails.length > 0) ?? null

export type Commit = {
  readonly paths: readonly string[]
  readonly author: Person | null
  readonly message: string
}

/** Null, or what git said. */
export const beginBranch = (root: string, branch: string): string | null => {
  const done = git(root, ['checkout', '--quiet', '-b', branch], { loud: true })
  return done.ok ? null : done.why
}

/** The short hash, or what git said. */
export const commitFiles = (
  root: string,
  { paths, author, message }: Commit,
): { readonly ok: true; readonly hash: string } | { readonly ok: false; readonly why: string } => {
  const added = git(root, ['add', '--', ...paths])
  if (!added.ok) return { ok: false, why: added.why }
  const named = author ? [`--author=${author.name} <${author.emails[0]}>`] : []
  const call = ['commit', '--quiet', ...named, '--file=-', '--only', '--', ...paths]
  const done = git(root, call, { input: message, loud: true })
  if (!done.ok) return { ok: false, why: done.why }
  return { ok: true, hash: gitLine(root, ['rev-parse', '--short', 'HEAD']) ?? '' }
}

export const remoteOf = (root: string): string | null => {
  const remotes = git(root, ['remote'])
  const names = remotes.ok ? remotes.text.split('\n').filter((name) => name !== '') : []
  return names.includes('origin') ? 'origin' : (names[0] ?? null)
}
