/**
 * Who reviewed exactly this content of a file. A review counts by a person with the role `review` who did not do the
 * work, and only of a kind that the campaign accepts; what does not count is kept beside it with the reason.
 */
import type { CampaignSettings, Person } from '../../format/types.ts'
import { indexOf } from '../../history/lookup.ts'
import { type TrailerReview, trailerReviews } from '../../history/reviews.ts'
import { versionIn } from '../../history/state.ts'
import type { ForgePull, KnownHistory } from '../../history/types.ts'
import type { NotCounted, Review, ReviewKind } from './types.ts'

/** A statement that somebody reviewed a state of a file. */
type Evidence = {
  readonly person: Person | undefined
  readonly name: string
  readonly how: ReviewKind
  readonly commit: string
  readonly when: string
  readonly badSignature: boolean
  /** Of another content than that of today. */
  readonly older: boolean
}

export type Reviewed = { readonly reviewed: readonly Review[]; readonly notCounted: readonly NotCounted[] }

/**
 * `path` of the file, `id` of its record, `by`: whose own work it is, `data`: the file with its readings, `blob`: of
 * a landed state in place of the content of today.
 */
export type ReviewsOf = (
  path: string,
  id: string,
  by: readonly string[],
  data?: string | null,
  blob?: string,
) => Reviewed

export const NO_REVIEWS: Reviewed = { reviewed: [], notCounted: [] }

const grouped = <T>(all: Iterable<T>, keysOf: (each: T) => readonly string[]): ReadonlyMap<string, T[]> => {
  const groups = new Map<string, T[]>()
  for (const each of all) {
    for (const key of keysOf(each)) {
      const group = groups.get(key)
      if (group) group.push(each)
      else groups.set(key, [each])
    }
  }
  return groups
}

const peopleBy = (
  people: Readonly<Record<string, Person>>,
  keysOf: (person: Person) => readonly string[],
): ReadonlyMap<string, Person> =>
  new Map(Object.values(people).flatMap((person) => keysOf(person).map((key) => [key.toLowerCase(), person])))

export type PeopleBook = {
  readonly byEmail: ReadonlyMap<string, Person>
  readonly byLogin: ReadonlyMap<string, Person>
}

export const peopleBook = (people: Readonly<Record<string, Person>>): PeopleBook => ({
  byEmail: peopleBy(people, (person) => person.emails),
  byLogin: peopleBy(people, (person) => (person.login ? [person.login] : [])),
})

/** A good signature proves the reviewer only where the key is the reviewer's own. */
const trailerEvidence = (
  { email, commit, signature, signer }: TrailerReview,
  older: boolean,
  history: KnownHistory,
  book: PeopleBook,
): Evidence => {
  const person = book.byEmail.get(email.toLowerCase())
  const owner = signer === null ? undefined : book.byEmail.get(signer.toLowerCase())
  const signed = signature === 'good' && person !== undefined && owner?.id === person.id
  return {
    person,
    name: email,
    how: signed ? 'signed' : 'trailer',
    commit,
    when: history.commits.get(commit)?.committed ?? '',
    badSignature: signature === 'bad',
    older,
  }
}

/** An approval covers a data file that its pull request did not change as it stood when that landed. */
const coversData = (pull: ForgePull, data: string | null, history: KnownHistory): boolean => {
  const blob = data === null ? undefined : history.blobs.get(data)
  if (data === null || blob === undefined) return true
  const brought = pull.files[data]
  if (brought !== undefined) return brought === blob
  const { positions } = indexOf(history)
  const landing = Math.max(...pull.commits.map((commit) => positions.get(commit) ?? -1), -1)
  const revision = history.line[landing]
  return revision !== undefined && versionIn(history, data, revision)?.blob === blob
}

const pullEvidence = (
  pull: ForgePull,
  paths: readonly string[],
  data: string | null,
  blob: string | undefined,
  history: KnownHistory,
  book: PeopleBook,
): Evidence[] => {
  const brought = paths.map((each) => pull.files[each]).find((blob) => blob !== undefined)
  const same = brought !== undefined && brought === blob && coversData(pull, data, history)
  return pull.approvals.map(({ login, commit, when }) => ({
    person: book.byLogin.get(login.toLowerCase()),
    name: login,
    how: 'forge' as const,
    commit,
    when,
    badSignature: false,
    older: !same,
  }))
}

const reasonAgainst = (
  evidence: Evidence,
  accepted: CampaignSettings['review'],
  by: readonly string[],
): NotCounted['reason'] | null => {
  const { person, how, older, badSignature } = evidence
  // A signed trailer is a trailer as well.
  const kinds: readonly ReviewKind[] = how === 'signed' ? ['signed', 'trailer'] : [how]
  if (badSignature) return 'the signature is bad'
  if (!person) return 'not in people.yaml'
  if (by.includes(person.id)) return 'own work'
  if (!person.roles.includes('review')) return 'without the role review'
  if (older) return 'of older content'
  return kinds.some((kind) => accepted.includes(kind)) ? null : 'this kind of review is not accepted here'
}

const judged = (all: readonly Evidence[], accepted: CampaignSettings['review'], by: readonly string[]) => {
  const reviewed: Review[] = []
  const notCounted: NotCounted[] = []
  const said = new Set<string>()
  for (const evidence of all) {
    const { person, name, how, commit, when } = evidence
    const review: Review = { by: person?.id ?? name, how, commit, when }
    const reason = reasonAgainst(evidence, accepted, by)
    const key = `${review.by} ${how} ${commit} ${reason}`
    if (said.has(key)) continue
    said.add(key)
    if (reason === null) reviewed.push(review)
    else notCounted.push({ ...review, reason })
  }
  return { reviewed, notCounted }
}

/** One pass over all trailers and approvals; each question is then a look into a map. */
export const reviewsOf = (
  history: KnownHistory,
  book: PeopleBook,
  accepted: CampaignSettings['review'],
): ReviewsOf => {
  const trailers = trailerReviews(history)
  const byDigest = grouped(trailers, (review) => [review.digest])
  const byName = grouped(trailers, (review) => [review.record])
  const byPath = grouped(history.pulls, (pull) => Object.keys(pull.files))
  const evidenceOf = (
    path: string,
    id: string,
    data: string | null,
    blob: string | undefined,
  ): readonly Evidence[] => {
    const today = history.blobs.get(path)
    const digest =
      blob === undefined || blob === today
        ? history.digests.get(path)
        : history.pastDigests?.get(`${path} ${blob}`)
    const same = digest === undefined ? [] : (byDigest.get(digest) ?? [])
    const others = [...(byName.get(id) ?? []), ...(byName.get(path) ?? [])].filter(
      (review) => review.digest !== digest,
    )
    const file = history.files.get(path)
    const paths = [...new Set([path, ...(file?.touched ?? []).map((version) => version.path)])]
    const pulls = new Set(paths.flatMap((each) => byPath.get(each) ?? []))
    return [
      ...[...pulls].flatMap((pull) => pullEvidence(pull, paths, data, blob ?? today, history, book)),
      ...same.map((review) => trailerEvidence(review, false, history, book)),
      ...others.map((review) => trailerEvidence(review, true, history, book)),
    ]
  }
  if (trailers.length === 0 && history.pulls.length === 0) return () => NO_REVIEWS
  return (path, id, by, data = null, blob = undefined) =>
    judged(evidenceOf(path, id, data, blob), accepted, by)
}
