/**
 * Answers of the forge's REST API (version 2022-11-28), as far as reviews need them. Fields that are not used are
 * not looked at; what is used and has another shape is refused, never guessed.
 */
import { z } from 'zod'

/** A list that the API documents, or why the answer is none. */
export type Answer<T> =
  | { readonly ok: true; readonly value: readonly T[] }
  | { readonly ok: false; readonly error: string }

export type PullAnswer = {
  readonly number: number
  /** Commit of its last state. */
  readonly head: string
  /** Branch that it was proposed for. */
  readonly base: string
  readonly merged: boolean
}

export type ReviewAnswer = {
  /** null: the account is gone. */
  readonly login: string | null
  readonly state: string
  /** null: the commit is gone from the pull request. */
  readonly commit: string | null
  /** null: not yet handed in. */
  readonly when: string | null
}

export type FileAnswer = {
  readonly path: string
  /** null: taken away. */
  readonly blob: string | null
}

const objectName = z.string().regex(/^(?:[0-9a-f]{40}|[0-9a-f]{64})$/)

const pull = z
  .object({
    number: z.int().positive(),
    merged_at: z.string().nullable(),
    head: z.object({ sha: objectName }),
    base: z.object({ ref: z.string() }),
  })
  .transform(
    ({ number, merged_at, head, base }): PullAnswer => ({
      number,
      head: head.sha,
      base: base.ref,
      merged: merged_at !== null,
    }),
  )

const review = z
  .object({
    user: z.object({ login: z.string() }).nullable(),
    state: z.string(),
    commit_id: objectName.nullable(),
    submitted_at: z.iso.datetime({ offset: true }).nullish(),
  })
  .transform(
    ({ user, state, commit_id, submitted_at }): ReviewAnswer => ({
      login: user?.login ?? null,
      state,
      commit: commit_id,
      when: submitted_at ?? null,
    }),
  )

const file = z
  .object({ filename: z.string().min(1), status: z.string(), sha: objectName.nullable() })
  .transform(
    ({ filename, status, sha }): FileAnswer => ({ path: filename, blob: status === 'removed' ? null : sha }),
  )

const listOf =
  <T>(entry: z.ZodType<T>, what: string) =>
  (json: unknown): Answer<T> => {
    const read = z.array(entry).safeParse(json)
    if (read.success) return { ok: true, value: read.data }
    const [issue] = read.error.issues
    const where = issue?.path.join('.') || 'the whole answer'
    return { ok: false, error: `the list of ${what} has not the documented form at ${where}` }
  }

/** `GET /repos/{owner}/{repo}/commits/{sha}/pulls` */
export const readPulls = listOf(pull, 'pull requests')

/** `GET /repos/{owner}/{repo}/pulls/{number}/reviews`, in order of time. */
export const readReviews = listOf(review, 'reviews')

/** `GET /repos/{owner}/{repo}/pulls/{number}/files` */
export const readFiles = listOf(file, 'changed files')
