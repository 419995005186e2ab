/** What a card asked for over time: its landed states that judge differently, oldest first. */
import type { CardRecord } from '../../format/types.ts'
import type { Fields } from '../../format/yaml.ts'
import type { Facts } from './past.ts'
import { NO_REVIEWS, type PeopleBook, type ReviewsOf } from './reviews.ts'
import { frontMatter } from './run-text.ts'
import type { CardVersion } from './types.ts'

const criteriaOf = (text: string): CardVersion['criteria'] => {
  const criteria = frontMatter(text)?.criteria
  if (criteria === undefined || typeof criteria === 'string' || Array.isArray(criteria)) return {}
  return Object.fromEntries(
    Object.entries(criteria as Fields).flatMap(([id, criterion]) => {
      const accept =
        typeof criterion === 'string' || Array.isArray(criterion) ? undefined : (criterion as Fields).accept
      return typeof accept === 'string' ? [[id, accept]] : []
    }),
  )
}

/** The last one is that of today; where that has not landed its commit is null. */
export const cardVersions = (
  facts: Facts,
  people: PeopleBook,
  reviews: ReviewsOf,
  card: CardRecord,
): CardVersion[] => {
  const { history, textOf, textOfBlob, judgedBy } = facts
  const { path } = card.source
  const today = history.blobs.get(path)
  const states = (history.files.get(path)?.landed ?? []).map(({ commit, blob }) => ({
    commit: commit as string | null,
    blob,
    text: blob === null ? undefined : blob === today ? textOf(path) : textOfBlob(blob),
  }))
  const versions: CardVersion[] = []
  let last: string | null | undefined
  for (const { commit, blob, text } of [
    ...states,
    { commit: null, blob: today ?? null, text: textOf(path) },
  ]) {
    const key = text === undefined ? null : judgedBy(path, text, '')
    const before = versions.at(-1)
    if (text === undefined) continue
    const { reviewed } = blob === null ? NO_REVIEWS : reviews(path, card.id, [], null, blob)
    if (key === last && before) {
      const known = new Set(before.reviewed.map((review) => `${review.by} ${review.how} ${review.commit}`))
      versions[versions.length - 1] = {
        ...before,
        commits: commit === null ? before.commits : [...before.commits, commit],
        reviewed: [
          ...before.reviewed,
          ...reviewed.filter((review) => !known.has(`${review.by} ${review.how} ${review.commit}`)),
        ],
      }
      continue
    }
    last = key
    const found = commit === null ? undefined : history.commits.get(commit)
    const by = found && (people.byEmail.get(found.author.email.toLowerCase())?.id ?? found.author.name)
    versions.push({
      commit,
      when: found?.committed ?? null,
      by: by ?? null,
      criteria: criteriaOf(text),
      commits: commit === null ? [] : [commit],
      reviewed,
    })
  }
  return versions
}
