/** Commits of the main line → the pull requests that brought them, who approved their last state, and what it changed. */
import type { ForgePull } from '../types.ts'
import type { FileAnswer, PullAnswer, ReviewAnswer } from './answers.ts'
import { approvalsOf } from './approvals.ts'
import type { ReviewsFile } from './file.ts'

export type Asked<T> =
  | { readonly kind: 'list'; readonly value: readonly T[] }
  | { readonly kind: 'not-there' }
  | { readonly kind: 'stop'; readonly why: string }

/** How the forge is asked; every list is whole, whatever its pages. */
export type Ask = {
  readonly pulls: (commit: string) => Promise<Asked<PullAnswer>>
  readonly reviews: (pull: number) => Promise<Asked<ReviewAnswer>>
  readonly files: (pull: number) => Promise<Asked<FileAnswer>>
}

export type Gathered = ReviewsFile & {
  readonly notes: readonly string[]
  /** Why it ended before all was asked; what was found till then is kept. */
  readonly stopped: string | null
}

/** The API lists no more files of a pull request than this. */
const MOST_FILES = 3000

type Found =
  | { readonly kind: 'pull'; readonly pull: ForgePull; readonly notes: readonly string[] }
  | { readonly kind: 'stop'; readonly why: string }

/** Paths that the forge gives are those of the repository; ours are those below the folder of the records. */
const ownFiles = (files: readonly FileAnswer[], prefix: string): Record<string, string> =>
  Object.fromEntries(
    files.flatMap(({ path, blob }) => {
      const own = path.startsWith(prefix) ? path.slice(prefix.length) : ''
      return blob !== null && /^(?:records|shared)\//.test(own) ? [[own, blob]] : []
    }),
  )

const findPull = async (ask: Ask, answer: PullAnswer, prefix: string): Promise<Found> => {
  const { number } = answer
  const reviews = await ask.reviews(number)
  if (reviews.kind === 'stop') return reviews
  const files = await ask.files(number)
  if (files.kind === 'stop') return files
  if (reviews.kind === 'not-there' || files.kind === 'not-there') {
    return { kind: 'stop', why: `the forge names pull request ${number}, and then does not know it` }
  }
  const truncated = files.value.length >= MOST_FILES
  return {
    kind: 'pull',
    pull: {
      number,
      commits: [],
      approvals: approvalsOf(reviews.value, answer.head),
      files: ownFiles(files.value, prefix),
    },
    notes: truncated
      ? [
          `pull request ${number} changes ${MOST_FILES} files or more, and the forge lists no more than that: ` +
            'of the others no review is known; `npm run approve` writes one into a commit',
        ]
      : [],
  }
}

export type GatherOptions = {
  /** Commits of the main line, oldest first. */
  readonly commits: readonly string[]
  readonly known: ReviewsFile
  /** Name of the main line: a pull request for another branch brought nothing to it. */
  readonly main: string
  /** Folder of the records in the repository, with a slash at the end, or empty. */
  readonly prefix: string
  /** Ask about what is known, too. What is not reached again stays as it was known. */
  readonly fresh?: boolean
  readonly progress?: (done: number, of: number) => void
}

type Pulls = ReadonlyMap<number, ForgePull>

/** What is known of commits that are still on the main line. */
const stillThere = (known: ReviewsFile, positions: ReadonlyMap<string, number>) => ({
  asked: new Set(known.asked.filter((commit) => positions.has(commit))),
  pulls: new Map(
    known.pulls
      .map((pull) => ({ ...pull, commits: pull.commits.filter((commit) => positions.has(commit)) }))
      .filter((pull) => pull.commits.length > 0)
      .map((pull) => [pull.number, pull]),
  ),
})

const inOrder = (pulls: Pulls, positions: ReadonlyMap<string, number>): ForgePull[] =>
  [...pulls.values()]
    .sort((a, b) => a.number - b.number)
    .map((pull) => ({
      ...pull,
      commits: [...new Set(pull.commits)].sort((a, b) => (positions.get(a) ?? 0) - (positions.get(b) ?? 0)),
    }))

/** Asks about the newest commits first: where the forge limits how often it is asked, they matter most. */
export const gather = async (ask: Ask, options: GatherOptions): Promise<Gathered> => {
  const { commits, main, prefix, fresh = false } = options
  const positions = new Map(commits.map((commit, position) => [commit, position]))
  const { asked, pulls } = stillThere(options.known, positions)
  const found = new Set<number>()
  const notes: string[] = []
  const result = (stopped: string | null): Gathered => {
    const whole = fresh && stopped === null
    const kept = whole ? new Map([...pulls].filter(([number]) => found.has(number))) : pulls
    return {
      asked: commits.filter((each) => asked.has(each)),
      pulls: inOrder(kept, positions),
      notes,
      stopped,
    }
  }
  const open = commits.filter((commit) => fresh || !asked.has(commit)).reverse()
  for (const [index, commit] of open.entries()) {
    options.progress?.(index, open.length)
    const answer = await ask.pulls(commit)
    if (answer.kind === 'stop') return result(answer.why)
    if (answer.kind === 'not-there') {
      notes.push(`the forge does not know commit ${commit.slice(0, 10)}; it was not pushed there yet`)
      continue
    }
    for (const brought of answer.value.filter((pull) => pull.merged && pull.base === main)) {
      const { number } = brought
      let pull = pulls.get(number)
      if (!pull || (fresh && !found.has(number))) {
        const news = await findPull(ask, brought, prefix)
        if (news.kind === 'stop') return result(news.why)
        notes.push(...news.notes)
        pull = { ...news.pull, commits: pull?.commits ?? [] }
        found.add(number)
      }
      pulls.set(number, { ...pull, commits: [...pull.commits, commit] })
    }
    asked.add(commit)
  }
  return result(null)
}
