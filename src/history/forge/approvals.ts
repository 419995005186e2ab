/** Who approves the last state of a pull request. */
import type { ForgeApproval } from '../types.ts'
import type { ReviewAnswer } from './answers.ts'

/** A comment and a review that is not handed in yet leave standing what the person said before. */
const SAYS_SOMETHING = new Set(['APPROVED', 'CHANGES_REQUESTED', 'DISMISSED'])

/**
 * The last word of each person, where it is an approval of exactly `head`. A later request for changes takes an
 * approval back, and so does its dismissal; an approval of an earlier state is none of this one.
 * @param reviews in order of time, as the API gives them
 */
export const approvalsOf = (reviews: readonly ReviewAnswer[], head: string): ForgeApproval[] => {
  const last = new Map<string, ReviewAnswer>()
  for (const review of reviews) {
    if (review.login !== null && SAYS_SOMETHING.has(review.state)) last.set(review.login, review)
  }
  return [...last].flatMap(([login, { state, commit, when }]) =>
    state === 'APPROVED' && commit === head && when !== null ? [{ login, commit, when }] : [],
  )
}
