/** What is odd about a history without doing harm, in a sentence each. */
import type { Commit } from './types.ts'

const DAY = 24 * 3600_000

const some = (things: readonly string[]): string =>
  things.length > 3 ? `${things.slice(0, 3).join(', ')} and ${things.length - 3} more` : things.join(', ')

/** A commit cannot be older than the one that it builds on; a clock that was wrong shifts what was in force when. */
export function wrongClocks(commits: ReadonlyMap<string, Commit>, line: readonly string[]): string[] {
  const wrong = line.filter((hash, position) => {
    const before = commits.get(line[position - 1] ?? '')
    const commit = commits.get(hash)
    return before && commit && commit.epoch < before.epoch - DAY
  })
  if (wrong.length === 0) return []
  const named = some(wrong.map((hash) => hash.slice(0, 10)))
  return [`commits of the main line are dated more than a day before the one that they build on: ${named}`]
}

export const linksRemark = (links: readonly string[]): string[] =>
  links.length === 0
    ? []
    : [`links have no history of what they lead to; commit the file itself in place of: ${some(links)}`]

export const leftOutRemark = (paths: readonly string[]): string[] =>
  paths.length === 0 ? [] : [`files that git leaves out of this folder (sparse checkout): ${some(paths)}`]

export const missingTextsRemark = (count: number): string[] =>
  count === 0
    ? []
    : [`${count} earlier states could not be fetched (a clone without all contents, and no network)`]
