/**
 * What the campaign asks of a history: who recorded a file, whether it landed, what was in force when. A revision is
 * the hash of a commit of the main line.
 */
import { indexOf } from './lookup.ts'
import type { Commit, FileHistory, History, KnownHistory, Version } from './types.ts'

/** The commit that first brought the file, on whatever branch. */
export function recordedOf(history: KnownHistory, path: string): Commit | null {
  const first = history.files.get(path)?.touched.find(({ blob }) => blob !== null)
  return (first && history.commits.get(first.commit)) ?? null
}

/** The commit of the main line with which the file landed. */
export function landedOf(history: KnownHistory, path: string): Commit | null {
  const first = firstVersion(history, path)
  return (first && history.commits.get(first.commit)) ?? null
}

/** The state in which it landed. */
export const firstVersion = (history: KnownHistory, path: string): Version | null =>
  history.files.get(path)?.landed.find(({ blob }) => blob !== null) ?? null

export type FileState = 'uncommitted' | 'proposed' | 'landed' | 'unknown'

/** Of the file, whatever was changed in it since: on the main line, only on this branch, or not in git at all. */
export function stateOf(history: History, path: string): FileState {
  if (history.state === 'unknown') return 'unknown'
  const file = history.files.get(path)
  if (file && file.landed.length > 0) return 'landed'
  return file && file.head !== null ? 'proposed' : 'uncommitted'
}

/** Of the content as it lies there: a landed file that was edited is `uncommitted`, or `proposed` once committed. */
export function contentStateOf(history: History, path: string): FileState {
  if (history.state === 'unknown') return 'unknown'
  const blob = history.blobs.get(path)
  const file = history.files.get(path)
  if (blob === undefined || !file || blob !== file.head) return 'uncommitted'
  return file.landed.some((version) => version.blob === blob) ? 'landed' : 'proposed'
}

/**
 * The newest commit of the main line that had landed at a time (ms); null before the first. A commit that is dated
 * before the one that it builds on counts as no earlier than that: a date set back brings nothing into force earlier.
 */
export function revisionAt(history: KnownHistory, epoch: number): string | null {
  const { landedBy } = indexOf(history)
  let [low, high] = [0, landedBy.length]
  while (low < high) {
    const middle = (low + high) >> 1
    if ((landedBy[middle] ?? 0) <= epoch) low = middle + 1
    else high = middle
  }
  return history.line[low - 1] ?? null
}

/** Commits of the whole history whose hash begins so. */
export const commitsNamed = (history: KnownHistory, text: string): readonly string[] =>
  indexOf(history).beginningWith(text.toLowerCase())

/** A commit of the main line by the first seven or more digits of its hash; null: none, or more than one. */
export function resolveRevision(history: KnownHistory, text: string): string | null {
  if (!/^[0-9a-f]{7,64}$/i.test(text)) return null
  const { positions } = indexOf(history)
  const found = commitsNamed(history, text).filter((hash) => positions.has(hash))
  return found.length === 1 ? (found[0] ?? null) : null
}

/** The state of a file on the main line at a time; null: not there yet, or taken away. */
export function versionAt(history: KnownHistory, path: string, epoch: number): Version | null {
  const revision = revisionAt(history, epoch)
  return revision === null ? null : versionIn(history, path, revision)
}

/** The state of a file in a revision; null: it was not there. `path` is the one of today. */
export function versionIn(history: KnownHistory, path: string, revision: string): Version | null {
  const file = history.files.get(path)
  return file ? stateIn(history, file, revision) : null
}

/** Files as they were in a revision: path then → blob. */
export function treeAt(history: KnownHistory, revision: string, folder = 'shared'): Map<string, string> {
  const tree = new Map<string, string>()
  for (const file of indexOf(history).filesIn(folder)) {
    const version = stateIn(history, file, revision)
    if (version && version.blob !== null && version.path.startsWith(`${folder}/`)) {
      tree.set(version.path, version.blob)
    }
  }
  return tree
}

/**
 * Text of a landed state; null where it is no text, or could not be fetched. `now` gives the texts of today by path;
 * a checkout may have given those other line ends.
 */
export function textOfBlob(
  history: KnownHistory,
  blob: string,
  now: (path: string) => string | undefined,
): string | null {
  const old = history.texts.get(blob)
  if (old !== undefined) return old
  const path = indexOf(history).pathOfBlob.get(blob)
  return path === undefined ? null : (now(path) ?? null)
}

/** Paths of files that had landed, that HEAD or its branch has had, and that are not there now. */
export const goneFiles = (history: KnownHistory, folder: string): string[] =>
  indexOf(history)
    .filesIn(folder)
    .filter((file) => isGone(history, file))
    .map(({ path }) => path)

export const goneRuns = (history: KnownHistory): string[] =>
  goneFiles(history, 'records/runs').filter((path) => path.endsWith('.md'))

/** Not gone is what landed after this branch began: it is only not here yet. */
function isGone(history: KnownHistory, { path, head, landed, touched }: FileHistory): boolean {
  if (landed.length === 0 || history.blobs.has(path)) return false
  if (head !== null) return history.uncommitted.get(path) === 'removed'
  return touched.some(({ commit, blob }) => blob !== null && indexOf(history).inHead.has(commit))
}

function stateIn(history: KnownHistory, { landed }: FileHistory, revision: string): Version | null {
  const { positions } = indexOf(history)
  const position = positions.get(revision)
  if (position === undefined) return null
  const version = landed.findLast(({ commit }) => (positions.get(commit) ?? 0) <= position)
  return version && version.blob !== null ? version : null
}
