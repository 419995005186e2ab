/** Commits → the history of each file: what each commit did to it, and which states the main line had of it. */
import { type Draft, draftAt, emptyLedger, follow, type Ledger, place, split } from './ledger.ts'
import { arrivals } from './line.ts'
import type { Change, LoggedCommit } from './log.ts'
import { exactRenames } from './renames.ts'

export type Log = {
  /** Parents before children. */
  readonly commits: readonly LoggedCommit[]
  /** First parents of the main line, oldest first. */
  readonly line: readonly string[]
  /** Merge → files that it made other than all its parents had them. */
  readonly merges: ReadonlyMap<string, ReadonlySet<string>>
}

/** Files as they are in HEAD, and moves that are not committed yet (new path → old path). */
export type Present = {
  readonly head: ReadonlyMap<string, string>
  readonly moves: ReadonlyMap<string, string>
}

/**
 * What a branch brings is gone through just before the commit that lands it, and what has not landed comes last: so
 * neither dates nor the order in which git walks decide. States on the main line are those of its first-parent
 * changes, so that a merge and a squash of the same branch give the same.
 */
export function foldFiles({ commits, line, merges }: Log, present: Present): Draft[] {
  const positions = arrivals(new Map(commits.map(({ commit }) => [commit.hash, commit])), line)
  const arrived = ({ commit }: LoggedCommit) => positions.get(commit.hash) ?? line.length
  const ordered = commits.toSorted((a, b) => arrived(a) - arrived(b))
  const ledger = emptyLedger(new Map(ordered.map(({ commit }, place) => [commit.hash, place])))
  const onLine = new Set(line)
  for (const { commit, changes } of ordered) {
    const { hash, parents } = commit
    const own = parents.length > 1 ? changes.filter(({ path }) => merges.get(hash)?.has(path)) : changes
    touch(ledger, hash, own)
    if (onLine.has(hash)) land(ledger, hash, changes)
  }
  nameAsNow(ledger, present)
  return [...ledger.drafts]
}

function touch(ledger: Ledger, commit: string, changes: readonly Change[]): void {
  const left = new Set<string>()
  for (const [to, from] of exactRenames(changes)) if (follow(ledger, from, to)) left.add(from)
  for (const { path, before, blob } of changes) {
    if (!left.has(path)) draftAt(ledger, path, before === null).touched.push({ commit, path, blob })
  }
}

function land(ledger: Ledger, commit: string, changes: readonly Change[]): void {
  const { onLine, pathOnLine } = ledger
  for (const [to, from] of exactRenames(changes)) follow(ledger, from, to)
  const gone = new Set(changes.filter(({ blob }) => blob === null).map(({ path }) => path))
  for (const { path, blob } of changes) {
    if (blob === null) continue
    const draft = onLine.has(path) ? changedOnLine(ledger, path) : newOnLine(ledger, path, gone)
    onLine.set(path, draft)
    pathOnLine.set(draft, path)
    draft.landed.push({ commit, path, blob })
  }
  for (const path of gone) {
    const draft = onLine.get(path)
    if (!draft) continue
    draft.landed.push({ commit, path, blob: null })
    onLine.delete(path)
    pathOnLine.delete(draft)
  }
}

/** Whatever a branch did meanwhile under other names: on the main line this file changed. */
function changedOnLine(ledger: Ledger, path: string): Draft {
  const draft = ledger.onLine.get(path) ?? draftAt(ledger, path, false)
  if (ledger.where.get(path) !== draft) place(ledger, draft, path)
  return draft
}

function newOnLine(ledger: Ledger, path: string, gone: ReadonlySet<string>): Draft {
  const draft = draftAt(ledger, path, true)
  const old = ledger.pathOnLine.get(draft)
  if (old === undefined) return draft
  // It has moved on a branch, but what lands still has the old path: then this one is a copy.
  if (!gone.has(old)) return split(ledger, draft, path)
  ledger.onLine.delete(old)
  return draft
}

/** HEAD may be behind the main line, or beside it, and have a file under another name. */
function nameAsNow(ledger: Ledger, { head, moves }: Present): void {
  const taken = new Set<Draft>()
  const paths = [...head.keys()]
  const atHome = (path: string) => ledger.where.get(path)?.path === path
  for (const path of [...paths.filter(atHome), ...paths.filter((path) => !atHome(path))]) {
    const found = draftAt(ledger, path, false)
    const draft = taken.has(found) ? split(ledger, found, path) : found
    draft.path = path
    draft.head = head.get(path) ?? null
    ledger.where.set(path, draft)
    taken.add(draft)
  }
  for (const [to, from] of moves) follow(ledger, from, to)
}
