/** What reviews would count if HEAD went to the main line as it is: those of a branch stand in its own commits. */
import type { Records } from '../../format/types.ts'
import type { History } from '../../history/types.ts'
import { peopleBook, type ReviewsOf, reviewsOf } from './reviews.ts'

/** Null: history is not known. */
export const reviewsIfLanded = (
  history: History | undefined,
  { people, settings }: Pick<Records, 'people' | 'settings'>,
): ReviewsOf | null => {
  if (!history || history.state === 'unknown') return null
  const landed = { ...history, line: [...history.line.filter((hash) => hash !== history.head), history.head] }
  return reviewsOf(landed, peopleBook(people), settings.review)
}
