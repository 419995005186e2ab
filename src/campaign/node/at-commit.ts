/** The edge: a commit of the repository → the campaign as its files said it then. */
import { dataFile, isDataFile, type TextFile } from '../../format/data-file.ts'
import { readTextFile } from '../../format/node/load.ts'
import { readRecords } from '../../format/records.ts'
import { historyAt } from '../../history/at-commit.ts'
import { digestsOf } from '../../history/node/digest.ts'
import { git } from '../../history/node/git.ts'
import { readContents } from '../../history/node/objects.ts'
import { parseTree } from '../../history/status.ts'
import type { History } from '../../history/types.ts'
import { type CampaignInput, computeCampaign } from '../compute.ts'
import type { Campaign } from '../types.ts'

export type PastCampaign = {
  readonly campaign: Campaign
  /** Texts of its files, by path. */
  readonly texts: ReadonlyMap<string, string>
}

const READ = /\.(md|markdown|ya?ml)$/i
const FOLDERS = ['records', 'shared']

/** The working folder as it is now, to take from it what has not changed. */
type Now = { readonly root: string; readonly texts: ReadonlyMap<string, string>; readonly history: History }

/** What lies here with the same content need not come out of git; a large file kept elsewhere lies only here. */
const unchanged = ({ root, texts, history }: Now, path: string, blob: string): TextFile | undefined => {
  const text = texts.get(path)
  if (text === undefined || history.state === 'unknown' || history.blobs.get(path) !== blob) return undefined
  return isDataFile(path) ? readTextFile(root, path) : { path, text }
}

const filesOf = async (now: Now, tree: ReadonlyMap<string, string>): Promise<TextFile[]> => {
  const wanted = [...tree].filter(([path]) => READ.test(path) || isDataFile(path))
  const here = new Map(wanted.map(([path, blob]) => [path, unchanged(now, path, blob)]))
  const contents = await readContents(
    now.root,
    wanted.flatMap(([path, blob]) => (here.get(path) ? [] : [blob])),
  )
  return wanted.flatMap(([path, blob]) => {
    const known = here.get(path)
    if (known) return [known]
    const bytes = contents.get(blob)
    if (!bytes) return []
    return [isDataFile(path) ? dataFile(path, bytes) : { path, text: bytes.toString('utf8') }]
  })
}

/**
 * In two processes of git, whatever the number of files. `input` is the campaign as it is now, whose methods, day and
 * history serve again. A text: why git cannot tell.
 */
export const campaignAt = async (
  root: string,
  commit: string,
  input: CampaignInput,
): Promise<PastCampaign | string> => {
  const listed = await git(root, ['ls-tree', '-r', '-z', commit, '--', ...FOLDERS])
  if (!listed.ok) return listed.why
  const tree = parseTree(listed.out.toString('utf8'))
  const history = input.history ?? { state: 'unknown', why: 'not-read', message: '', hint: '' }
  const now = input.texts ?? new Map<string, string>()
  const files = await filesOf({ root, texts: now, history }, tree.files)
  const exists = new Set([...tree.files.keys(), ...tree.links])
  const { records, problems } = readRecords(files, input.methods, exists)
  const texts = new Map(files.map(({ path, text }) => [path, text]))
  const past = { commit, tree: tree.files, digests: digestsOf(tree.files) }
  const campaign = computeCampaign({
    ...input,
    records,
    problems,
    texts,
    history: history.state === 'unknown' ? history : historyAt(history, past, now),
  })
  return { campaign, texts }
}
