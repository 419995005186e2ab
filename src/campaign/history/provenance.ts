/** Who recorded a run, when it landed, who reviewed it, and what changed since. */

import type { RunRecord } from '../../format/types.ts'
import { firstVersion, landedOf, recordedOf, stateOf } from '../../history/state.ts'
import type { Commit } from '../../history/types.ts'
import { lazily } from '../../quantity/lazily.ts'
import { changesOf, withAmendments } from './changes.ts'
import { fileCommits } from './file-commits.ts'
import type { Facts } from './past.ts'
import type { PeopleBook, ReviewsOf } from './reviews.ts'
import { besideRun, dataPathIn, isVoid, type RunText } from './run-text.ts'
import type { Change, Provenance } from './types.ts'
import { amendmentsOf } from './unknown.ts'

const authorId = (commit: Commit, people: PeopleBook): string =>
  people.byEmail.get(commit.author.email.toLowerCase())?.id ?? commit.author.name

type Located = Pick<RunRecord['source'], 'path'>

const withData = (
  path: string,
  text: string,
  data: string | null,
  textOf: (path: string) => string | undefined,
): RunText => {
  const said = data === null ? undefined : textOf(data)
  return data === null || said === undefined
    ? { path, text }
    : { path, text, data: { path: data, text: said } }
}

/** The first landed state of a run with its data file; null where none landed, or nothing changed since. */
export const landedText = (facts: Facts, { path }: Located, data: string | null): RunText | null => {
  const { history, textOf, textOfBlob } = facts
  const first = (file: string): string | undefined => firstVersion(history, file)?.blob ?? undefined
  const isNow = (file: string): boolean => first(file) === history.blobs.get(file)
  const blob = first(path)
  if (blob === undefined || (isNow(path) && (data === null || isNow(data)))) return null
  const then = (file: string): string | undefined => {
    const old = first(file)
    return old === undefined || isNow(file) ? textOf(file) : textOfBlob(old)
  }
  const text = then(path)
  return text === undefined ? null : withData(path, text, dataPathIn(path, text), then)
}

export const todaysText = ({ textOf }: Facts, { path }: Located, data: string | null): RunText =>
  withData(path, textOf(path) ?? '', data, textOf)

/** The data file that the run names now. */
export const dataPathOf = ({ readings, source }: RunRecord): string | null =>
  readings.file === undefined ? null : besideRun(source.path, readings.file)

const NONE: readonly Change[] = []

const changedSince = (facts: Facts, landed: RunText | null, record: RunRecord): readonly Change[] =>
  landed === null
    ? NONE
    : withAmendments(
        changesOf(landed, todaysText(facts, record.source, dataPathOf(record))),
        amendmentsOf(record),
      )

/** Day of the newest commit that touched the run or its data; null while it is not committed. */
const lastTouched = ({ history }: Facts, record: RunRecord): string | null => {
  const files = [record.source.path, dataPathOf(record) ?? record.source.path]
  if (files.some((file) => history.uncommitted.has(file))) return null
  const commits = files.flatMap((file) => {
    const version = history.files.get(file)?.touched.at(-1)
    return (version && history.commits.get(version.commit)) ?? []
  })
  const newest = commits.reduce<Commit | null>(
    (last, each) => (last && last.epoch >= each.epoch ? last : each),
    null,
  )
  return newest?.committed.slice(0, 10) ?? null
}

export const provenanceOf = (
  facts: Facts,
  people: PeopleBook,
  reviews: ReviewsOf,
  record: RunRecord,
  landed: RunText | null,
): Provenance => {
  const { history } = facts
  const { path } = record.source
  const recorded = recordedOf(history, path)
  const landedIn = landedOf(history, path)
  const changes = changedSince(facts, landed, record)
  // Only pages show them.
  const commits = lazily(() => fileCommits(facts, people, { run: path, data: dataPathOf(record) }))
  return {
    recorded: recorded
      ? { commit: recorded.hash, by: authorId(recorded, people), when: recorded.authored }
      : null,
    landed: landedIn ? { commit: landedIn.hash, when: landedIn.committed } : null,
    ...reviews(path, record.id, record.by, dataPathOf(record)),
    signature: recorded?.signature ?? null,
    amended: amendmentsOf(record),
    voidedSince: record.void !== undefined && landed !== null && !isVoid(landed),
    changes,
    changedOn: changes.length > 0 ? lastTouched(facts, record) : null,
    get commits() {
      return commits()
    },
    state: stateOf(history, path),
  }
}
