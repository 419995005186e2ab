/** The history as it was when an older commit was HEAD, out of the one that is known now. */

import { reachableFrom } from './line.ts'
import { indexOf } from './lookup.ts'
import type { FileHistory, KnownHistory, Version } from './types.ts'

export type OldHead = {
  readonly commit: string
  /** Path → blob of every file of that commit below the root. */
  readonly tree: ReadonlyMap<string, string>
  /** Digests of its records, by path. */
  readonly digests: ReadonlyMap<string, string>
}

/** A file under the path that it had then, whatever it is called by now. */
const fileThen = (
  { path, landed, touched }: FileHistory,
  { tree }: OldHead,
  part: ReadonlySet<string>,
  positions: ReadonlyMap<string, number>,
  end: number,
): FileHistory => {
  const reached = (version: Version): boolean => (positions.get(version.commit) ?? end + 1) <= end
  const landedThen = landed.filter(reached)
  const touchedThen = touched.filter(({ commit }) => part.has(commit))
  const name = touchedThen.at(-1)?.path ?? landedThen.at(-1)?.path ?? path
  return { path: name, landed: landedThen, touched: touchedThen, head: tree.get(name) ?? null }
}

/**
 * Nothing of what came after the commit counts: no landing, no review, nothing in the working folder. `now` are the
 * texts of the files here, by path: an old state may be what a file is again today.
 */
export const historyAt = (
  history: KnownHistory,
  old: OldHead,
  now: ReadonlyMap<string, string>,
): KnownHistory => {
  const part = reachableFrom(history.commits, old.commit)
  const line = history.line.filter((hash) => part.has(hash))
  const { positions, pathOfBlob } = indexOf(history)
  const end = positions.get(line.at(-1) ?? '') ?? -1
  const files = [...history.files.values()]
    .map((file) => fileThen(file, old, part, positions, end))
    .filter(({ landed, head }) => landed.length > 0 || head !== null)
  const there = new Set(old.tree.values())
  const texts = new Map(history.texts)
  for (const { landed } of files) {
    for (const { blob } of landed) {
      if (blob === null || texts.has(blob) || there.has(blob)) continue
      const text = now.get(pathOfBlob.get(blob) ?? '')
      if (text !== undefined) texts.set(blob, text)
    }
  }
  return {
    ...history,
    head: old.commit,
    line,
    onMain: positions.has(old.commit),
    commits: new Map([...history.commits].filter(([hash]) => part.has(hash))),
    files: new Map(files.map((file) => [file.path, file])),
    uncommitted: new Map(),
    blobs: old.tree,
    digests: old.digests,
    texts,
    pulls: history.pulls.filter(({ commits }) => commits.some((hash) => part.has(hash))),
    notes: [],
  }
}
