/** The edge: a folder in a git repository → its history, in a fixed number of git processes. */
import { foldFiles } from '../files.ts'
import { REVIEWS_FILE } from '../forge/file.ts'
import { historiesOf, oldTexts } from '../histories.ts'
import { beginning } from '../landing.ts'
import { firstParents, reachableFrom } from '../line.ts'
import { type LoggedCommit, parseLog, parseMerges } from '../log.ts'
import { leftOutRemark, linksRemark, missingTextsRemark, wrongClocks } from '../remarks.ts'
import { parseTree } from '../status.ts'
import type { Commit, History } from '../types.ts'
import { askAll } from './ask.ts'
import { digestsOf, pastDigestsOf } from './digest.ts'
import { readTexts } from './objects.ts'
import { findPlace, type RepositoryPlace } from './place.ts'
import { readReviewsFile } from './reviews-file.ts'
import { checkSignatures, deciding } from './signatures.ts'
import { gitFailed } from './unknown.ts'
import { readWorking } from './working.ts'

export type HistoryOptions = {
  /** Name of the branch that holds what was agreed (`main` of `campaign.yaml`). */
  readonly main: string
  /** What CI wrote about reviews on the forge; relative to the root. */
  readonly reviewsFile?: string
}

const SETTINGS = 'shared/campaign.yaml'

const wanted = (path: string): boolean => /^(?:records|shared)\//.test(path)

/** `root` holds `records/` and `shared/`, at the top of a repository or below. Never throws. */
export async function readHistory(root: string, options: HistoryOptions): Promise<History> {
  const reviewsFile = options.reviewsFile ?? REVIEWS_FILE
  const place = await findPlace(root, options.main)
  if (place.state === 'unknown') return place
  const printed = await askAll(root, place, reviewsFile)
  if ('ok' in printed) return gitFailed(printed)

  const tree = parseTree(printed.tree)
  const head = new Map([...tree.files].filter(([path]) => wanted(path)))
  const working = await readWorking(place, head, printed, wanted)
  if ('ok' in working) return gitFailed(working)
  const { uncommitted, blobs, moves, leftOut } = working

  const { line, logged, commits, onMain } = mainLine(parseLog(printed.log, wanted), place)
  const drafts = foldFiles({ commits: logged, line, merges: parseMerges(printed.merges) }, { head, moves })
  const settings = drafts.find(({ path }) => path === SETTINGS)?.landed ?? []
  const settingsTexts = await readTexts(root, settings)
  const begins = beginning(settings, (blob) => settingsTexts.get(blob) ?? '')

  const forge = readReviewsFile(root, reviewsFile, printed.reviewsTracked)
  const files = historiesOf(drafts, { line, begins, pulls: forge.pulls })
  const digests = digestsOf(blobs)
  const pastDigests = pastDigestsOf(files)
  const old = oldTexts(files.values(), blobs.values())
  const [texts, checked] = await Promise.all([
    readTexts(
      root,
      [...old].map((blob) => ({ blob })),
    ),
    checkSignatures(
      root,
      deciding(commits.values(), new Set([...digests.values(), ...pastDigests.values()])),
    ),
  ])
  for (const [hash, signature] of checked) {
    const commit = commits.get(hash)
    if (commit) commits.set(hash, { ...commit, ...signature })
  }
  const notes = [
    ...forge.notes,
    ...wrongClocks(commits, line),
    ...linksRemark(tree.links.filter(wanted)),
    ...leftOutRemark(leftOut),
    ...missingTextsRemark(old.size - texts.size),
  ]
  return {
    state: 'known',
    head: place.head,
    line: begins === null ? line : line.slice(line.indexOf(begins)),
    onMain,
    commits,
    files,
    uncommitted,
    blobs,
    digests,
    pastDigests,
    texts,
    pulls: forge.pulls,
    begins,
    notes,
  }
}

/** Where HEAD is on the main line, what came after it is left out: an old state is shown as it was. */
function mainLine(newestFirst: readonly LoggedCommit[], { head, mainTip }: RepositoryPlace) {
  const all = new Map<string, Commit>(newestFirst.map(({ commit }) => [commit.hash, commit]))
  const whole = firstParents(all, mainTip)
  const position = whole.indexOf(head)
  const onMain = position >= 0
  const behind = onMain && head !== mainTip
  const part = behind ? reachableFrom(all, head) : null
  const logged = newestFirst.filter(({ commit }) => part === null || part.has(commit.hash)).reverse()
  const commits = new Map(logged.map(({ commit }) => [commit.hash, commit]))
  return { line: behind ? whole.slice(0, position + 1) : whole, logged, commits, onMain }
}
