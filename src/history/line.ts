/** The main line: from a commit back along first parents. */
import type { Commit } from './types.ts'

type Commits = ReadonlyMap<string, Pick<Commit, 'parents'>>

/** Oldest first. */
export function firstParents(commits: Commits, tip: string): string[] {
  const line: string[] = []
  for (let at: string | undefined = tip; at !== undefined; at = commits.get(at)?.parents[0]) {
    if (commits.has(at)) line.push(at)
  }
  return line.reverse()
}

/** Every commit that `tip` is made of, itself among them. */
export function reachableFrom(commits: Commits, tip: string): Set<string> {
  const seen = new Set<string>()
  visit(commits, tip, seen, () => undefined)
  return seen
}

/**
 * Commit → position on the line at which it came in: its own, or that of the merge that brought it. Commits that are
 * not part of the line have none.
 */
export function arrivals(commits: Commits, line: readonly string[]): Map<string, number> {
  const positions = new Map<string, number>()
  const seen = new Set<string>()
  for (const [position, hash] of line.entries()) {
    visit(commits, hash, seen, (brought) => positions.set(brought, position))
  }
  return positions
}

function visit(commits: Commits, tip: string, seen: Set<string>, on: (hash: string) => void): void {
  const open = [tip]
  for (let hash = open.pop(); hash !== undefined; hash = open.pop()) {
    const commit = seen.has(hash) ? undefined : commits.get(hash)
    if (!commit) continue
    seen.add(hash)
    on(hash)
    open.push(...commit.parents)
  }
}
