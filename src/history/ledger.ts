/**
 * Which file is which while commits go by. A path leads to a file as the commits seen so far have it (`where`), to one
 * that has left it (`moved`), and to one as the main line has it (`onLine`): on a branch these differ until it lands.
 */
import type { Version } from './types.ts'

export type Draft = { path: string; landed: Version[]; touched: Version[]; head: string | null }

export type Ledger = {
  readonly drafts: Set<Draft>
  readonly where: Map<string, Draft>
  readonly moved: Map<string, Draft>
  readonly onLine: Map<string, Draft>
  readonly pathOnLine: Map<Draft, string>
  /** Commit → place in the order in which they are gone through. */
  readonly order: ReadonlyMap<string, number>
}

export const emptyLedger = (order: ReadonlyMap<string, number>): Ledger => ({
  drafts: new Set(),
  where: new Map(),
  moved: new Map(),
  onLine: new Map(),
  pathOnLine: new Map(),
  order,
})

/** The file at a path; one that has left the path only where the commit found something there. */
export function draftAt(ledger: Ledger, path: string, isNew: boolean): Draft {
  const there = ledger.where.get(path) ?? (isNew ? undefined : ledger.moved.get(path))
  return there ?? beginDraft(ledger, path)
}

function beginDraft({ drafts, where }: Ledger, path: string): Draft {
  const draft = { path, landed: [], touched: [], head: null }
  drafts.add(draft)
  where.set(path, draft)
  return draft
}

/**
 * A file goes to a new path. Not where a file of the main line has been: that one's history must stay with the path.
 * True if it went.
 */
export function follow(ledger: Ledger, from: string, to: string): boolean {
  const { where, moved } = ledger
  const draft = where.get(from)
  const there = where.get(to)
  if (!draft || draft === there || (there && there.landed.length > 0)) return false
  where.delete(from)
  moved.set(from, draft)
  place(ledger, draft, to)
  return true
}

/** The file stands at the path from now on, with what was seen of another one there that never landed. */
export function place(ledger: Ledger, draft: Draft, path: string): void {
  const { drafts, where, moved, order } = ledger
  const there = where.get(path)
  if (there && there !== draft && there.landed.length === 0) {
    const placeOf = ({ commit }: Version) => order.get(commit) ?? 0
    draft.touched = [...draft.touched, ...there.touched].sort((a, b) => placeOf(a) - placeOf(b))
    drafts.delete(there)
    for (const [old, one] of moved) if (one === there) moved.set(old, draft)
  }
  where.set(path, draft)
  moved.delete(path)
  draft.path = path
}

/** What stands at the path is a file of its own after all, with what happened at that path. */
export function split(ledger: Ledger, draft: Draft, path: string): Draft {
  const own = beginDraft(ledger, path)
  own.touched = draft.touched.filter((version) => version.path === path)
  draft.touched = draft.touched.filter((version) => version.path !== path)
  return own
}
