/** The state of the card, instruments and settings that a run was made by. */
import { firstVersion, resolveRevision, revisionAt, versionIn } from '../../history/state.ts'
import type { KnownHistory } from '../../history/types.ts'
import type { Run } from '../types.ts'
import type { JudgedBy } from './judged-by.ts'

export const SETTINGS = 'shared/campaign.yaml'

export type Facts = {
  readonly history: KnownHistory
  /** Text of a file as it lies there now; of one that is gone, as it was last. */
  readonly textOf: (path: string) => string | undefined
  /** Text of a landed state. */
  readonly textOfBlob: (blob: string) => string | undefined
  readonly judgedBy: JudgedBy
}

/** The state of the main line that a run was made by. */
export type Past = {
  readonly revision: string
  /** The commit that brought the card of then. */
  readonly cardCommit: string
  readonly when: string | null
  /** The card came only after the test. */
  readonly writtenAfter: boolean
}

/** By the revision that the run names, else by its time, else the first state after it. Null: the card has not landed. */
export const pastOfRun = ({ history }: Facts, run: Run): Past | null => {
  const { path } = run.card.source
  const { cardRevision, when } = run.record
  const commitOf = (commit: string) => history.commits.get(commit)?.committed ?? null
  for (const revision of [
    cardRevision ? resolveRevision(history, cardRevision) : null,
    revisionAt(history, when.epoch),
  ]) {
    const card = revision === null ? null : versionIn(history, path, revision)
    if (revision !== null && card)
      return { revision, cardCommit: card.commit, when: commitOf(card.commit), writtenAfter: false }
  }
  const first = firstVersion(history, path)
  if (!first) return null
  const { commit } = first
  return { revision: commit, cardCommit: commit, when: commitOf(commit), writtenAfter: true }
}

export type OldFile = { readonly path: string; readonly blob: string; readonly text: string | null }

/** The state of a file in a revision; where it came later, its first one. */
const blobThen = (history: KnownHistory, path: string, revision: string): string | null =>
  (versionIn(history, path, revision) ?? firstVersion(history, path))?.blob ?? null

/** The files of then by which the run would be judged otherwise than by those of today. */
export const oldFiles = (facts: Facts, run: Run, past: Past): OldFile[] => {
  const { history, textOf, textOfBlob, judgedBy } = facts
  const instruments = new Set(run.instruments.map(({ instrument }) => instrument.source.path))
  return [run.card.source.path, ...instruments, SETTINGS].flatMap((path) => {
    const blob = blobThen(history, path, past.revision)
    if (blob === null || blob === history.blobs.get(path)) return []
    const text = textOfBlob(blob) ?? null
    const { date } = run.record.when
    const then = text === null ? null : judgedBy(path, text, date)
    const now = judgedBy(path, textOf(path) ?? '', date)
    return then !== null && then === now ? [] : [{ path, blob, text }]
  })
}

/** The commit with which the card came to be what it judges by today, whatever its prose. Null: that has not landed. */
export const cardCame = ({ history, textOf, textOfBlob, judgedBy }: Facts, path: string): string | null => {
  const landed = history.files.get(path)?.landed ?? []
  const today = history.blobs.get(path)
  const [only] = landed
  if (only && landed.length === 1 && only.blob === today) return only.commit
  const key = judgedBy(path, textOf(path) ?? '', '')
  const same = (blob: string | null): boolean => {
    if (blob === null) return false
    const text = blob === today ? undefined : textOfBlob(blob)
    return blob === today || (text !== undefined && judgedBy(path, text, '') === key)
  }
  const before = landed.findLastIndex((version) => !same(version.blob))
  return landed[before + 1]?.commit ?? null
}
