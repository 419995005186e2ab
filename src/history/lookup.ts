/** What lookups in a history need again and again, made once for each history. */
import { reachableFrom } from './line.ts'
import type { FileHistory, KnownHistory } from './types.ts'

export type HistoryIndex = {
  /** Commit of the main line → its place there. */
  readonly positions: ReadonlyMap<string, number>
  /** By place on the main line: when it had landed (ms), never falling. */
  readonly landedBy: readonly number[]
  /** Every commit that HEAD is made of. */
  readonly inHead: ReadonlySet<string>
  /** Blob → a path that has that content today. */
  readonly pathOfBlob: ReadonlyMap<string, string>
  /** Files that are in a folder, or ever landed there. */
  readonly filesIn: (folder: string) => readonly FileHistory[]
  /** Commits by the first digits of their hash, of the main line or not. */
  readonly beginningWith: (start: string) => readonly string[]
}

const known = new WeakMap<KnownHistory, HistoryIndex>()

export function indexOf(history: KnownHistory): HistoryIndex {
  const made = known.get(history) ?? makeIndex(history)
  known.set(history, made)
  return made
}

function makeIndex({ line, commits, head, blobs, files }: KnownHistory): HistoryIndex {
  let latest = Number.NEGATIVE_INFINITY
  const landedBy = line.map((hash) => {
    latest = Math.max(latest, commits.get(hash)?.epoch ?? latest)
    return latest
  })
  const folders = new Map<string, readonly FileHistory[]>()
  const filesIn = (folder: string) => {
    const inside = (path: string) => path.startsWith(`${folder}/`)
    const found =
      folders.get(folder) ??
      [...files.values()].filter(({ path, landed }) => inside(path) || landed.some((one) => inside(one.path)))
    folders.set(folder, found)
    return found
  }
  const begun = new Map<string, readonly string[]>()
  const beginningWith = (start: string) => {
    const found = begun.get(start) ?? [...commits.keys()].filter((hash) => hash.startsWith(start))
    begun.set(start, found)
    return found
  }
  return {
    positions: new Map(line.map((hash, position) => [hash, position])),
    landedBy,
    inHead: reachableFrom(commits, head),
    pathOfBlob: new Map([...blobs].map(([path, blob]) => [blob, path])),
    filesIn,
    beginningWith,
  }
}
