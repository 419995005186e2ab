/** The file in which a step of CI keeps what the forge said about reviews. It is never committed. */
import { z } from 'zod'
import type { ForgePull } from '../types.ts'

export const REVIEWS_FILE = '.reviews.json'

export type ReviewsFile = {
  /** Commits that were asked about, with a pull request or without: they are not asked about again. */
  readonly asked: readonly string[]
  readonly pulls: readonly ForgePull[]
}

export const NO_REVIEWS: ReviewsFile = { asked: [], pulls: [] }

const shape = z.object({
  schema: z.literal(1),
  asked: z.array(z.string()).default([]),
  pulls: z.array(
    z.object({
      number: z.number(),
      commits: z.array(z.string()),
      approvals: z.array(z.object({ login: z.string(), commit: z.string(), when: z.string() })),
      files: z.record(z.string(), z.string()),
    }),
  ),
})

/** null where the text is none of ours, or damaged. */
export const parseReviewsFile = (text: string): ReviewsFile | null => {
  try {
    const read = shape.safeParse(JSON.parse(text))
    return read.success ? { asked: read.data.asked, pulls: read.data.pulls } : null
  } catch {
    return null
  }
}

/** One order, so that the same answers give the same bytes. */
export const printReviewsFile = ({ asked, pulls }: ReviewsFile): string => {
  const ordered = [...pulls]
    .sort((a, b) => a.number - b.number)
    .map((pull) => ({
      number: pull.number,
      commits: pull.commits,
      approvals: pull.approvals,
      files: Object.fromEntries(Object.entries(pull.files).sort(([a], [b]) => (a < b ? -1 : 1))),
    }))
  return `${JSON.stringify({ schema: 1, asked: [...asked].sort(), pulls: ordered }, null, 1)}\n`
}
