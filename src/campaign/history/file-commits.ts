/** The commits that made the file of a run what it is: who, when, and what of the protected fields each changed. */
import { indexOf } from '../../history/lookup.ts'
import { textOfBlob } from '../../history/state.ts'
import type { KnownHistory, Version } from '../../history/types.ts'
import type { Difference } from './changed-rows.ts'
import { changesOf } from './changes.ts'
import type { Facts } from './past.ts'
import type { PeopleBook } from './reviews.ts'
import type { RunText } from './run-text.ts'
import type { FileCommit } from './types.ts'

type State = { readonly path: string; readonly blob: string | null; readonly data: string | null }

/** Every commit that touched one of the files or landed it, oldest first; of equal times in the order of git. */
const commitsOf = (history: KnownHistory, paths: readonly string[]): string[] => {
  const versions = paths.flatMap((path) => {
    const file = history.files.get(path)
    return [...(file?.touched ?? []), ...(file?.landed ?? [])]
  })
  const epoch = (hash: string): number => history.commits.get(hash)?.epoch ?? 0
  const hashes = [...new Set(versions.map((version) => version.commit))]
  return hashes.filter((hash) => history.commits.has(hash)).sort((a, b) => epoch(a) - epoch(b))
}

const versionBy = (history: KnownHistory, path: string, commit: string): Version | undefined => {
  const file = history.files.get(path)
  const own = (version: Version): boolean => version.commit === commit
  return file?.touched.find(own) ?? file?.landed.find(own)
}

const stateAfter = (
  history: KnownHistory,
  { run, data }: { readonly run: string; readonly data: string | null },
  commit: string,
  before: State | null,
): State => {
  const own = versionBy(history, run, commit)
  const beside = data === null ? undefined : versionBy(history, data, commit)
  return {
    path: own?.path ?? before?.path ?? run,
    blob: own ? own.blob : (before?.blob ?? null),
    data: beside ? beside.blob : (before?.data ?? null),
  }
}

const didOf = (before: State | null, now: State, onLine: boolean): FileCommit['did'] => {
  if (now.blob === null) return 'taken away'
  if (before === null || before.blob === null) return 'added'
  if (before.blob === now.blob && before.data === now.data) {
    if (before.path !== now.path) return 'renamed'
    return onLine ? 'landed' : 'changed'
  }
  return 'changed'
}

/** Null: not all of its text is at hand, as of a state that stood only on a branch. */
const textOf = (facts: Facts, { path, blob, data }: State, dataPath: string | null): RunText | null => {
  const textFor = (of: string): string | null =>
    textOfBlob(facts.history, of, (now) => facts.textOf(now)) ?? facts.textOfBlob(of) ?? null
  const text = blob === null ? null : textFor(blob)
  if (text === null) return null
  if (dataPath === null || data === null) return { path, text }
  const beside = textFor(data)
  return beside === null ? null : { path, text, data: { path: dataPath, text: beside } }
}

const changesBetween = (
  facts: Facts,
  before: State | null,
  now: State,
  dataPath: string | null,
): readonly Difference[] | null => {
  if (before === null || before.blob === null || now.blob === null) return []
  if (before.blob === now.blob && before.data === now.data) return []
  const [was, is] = [textOf(facts, before, dataPath), textOf(facts, now, dataPath)]
  return was && is ? changesOf(was, is) : null
}

/** `run` and `data` are the paths of today. */
export const fileCommits = (
  facts: Facts,
  people: PeopleBook,
  files: { readonly run: string; readonly data: string | null },
): FileCommit[] => {
  const { history } = facts
  const { positions } = indexOf(history)
  const found: FileCommit[] = []
  let before: State | null = null
  for (const hash of commitsOf(history, files.data === null ? [files.run] : [files.run, files.data])) {
    const commit = history.commits.get(hash)
    if (!commit) continue
    const now = stateAfter(history, files, hash, before)
    const onLine = positions.has(hash)
    found.push({
      commit: hash,
      by: people.byEmail.get(commit.author.email.toLowerCase())?.id ?? commit.author.name,
      when: commit.committed,
      subject: commit.subject,
      did: didOf(before, now, onLine),
      path: now.path,
      onMainLine: onLine,
      signature: commit.signature,
      changes: changesBetween(facts, before, now, files.data),
    })
    before = now
  }
  return found
}
