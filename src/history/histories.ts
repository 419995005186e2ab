/** Files as the commits left them → their histories as the campaign counts them. */
import { landedSince, landingTogether, withoutBetween } from './landing.ts'
import type { Draft } from './ledger.ts'
import type { FileHistory, ForgePull } from './types.ts'

export type Counting = {
  /** The whole main line, oldest first. */
  readonly line: readonly string[]
  /** The commit with which the history of the campaign begins; null: with the repository. */
  readonly begins: string | null
  readonly pulls: readonly ForgePull[]
}

/** Files that never landed and are not in HEAD are of no concern, nor those that were gone when it began. */
export function historiesOf(drafts: Iterable<Draft>, counting: Counting): Map<string, FileHistory> {
  const { line, begins, pulls } = counting
  const positions = new Map(line.map((hash, position) => [hash, position]))
  const positionOf = (commit: string) => positions.get(commit) ?? 0
  const last = landingTogether(pulls, line)
  const histories = new Map<string, FileHistory>()
  for (const { path, landed, touched, head } of drafts) {
    const states = withoutBetween(landedSince(landed, begins ?? undefined, positionOf), last)
    if (states.length === 0 && head === null) continue
    histories.set(path, { path, landed: states, touched, head })
  }
  return histories
}

const TEXT = /\.(md|markdown|ya?ml|csv|tsv|txt|dat|log)$/i

/** Blobs of landed states of text files that are not among those of today. */
export function oldTexts(histories: Iterable<FileHistory>, today: Iterable<string>): Set<string> {
  const there = new Set(today)
  const old = new Set<string>()
  for (const { landed } of histories) {
    for (const { path, blob } of landed)
      if (blob !== null && TEXT.test(path) && !there.has(blob)) old.add(blob)
  }
  return old
}
