/** Where the history of the campaign begins is a decision: what lay before counts for nothing. */
import { type Facts, SETTINGS } from './past.ts'
import type { PeopleBook, ReviewsOf } from './reviews.ts'

export type Begins = { readonly commit: string; readonly since: string; readonly by: string }

/** Set in a repository that had settings before, and the settings of today are not reviewed. */
export const newBeginning = ({ history }: Facts, people: PeopleBook, reviews: ReviewsOf): Begins | null => {
  const { begins, commits, files } = history
  const commit = begins === null ? undefined : commits.get(begins)
  if (!commit || files.get(SETTINGS)?.touched[0]?.commit === begins) return null
  if (reviews(SETTINGS, 'campaign', []).reviewed.length > 0) return null
  const by = people.byEmail.get(commit.author.email.toLowerCase())?.id ?? commit.author.name
  return { commit: commit.hash, since: commit.committed.slice(0, 10), by }
}
