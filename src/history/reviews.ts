/** Reviews that stand in messages of commits. */
import { reachableFrom } from './line.ts'
import type { Commit, KnownHistory, Signature, Trailer } from './types.ts'

export type TrailerReview = {
  /** `sha256:…`, as in `digests`. */
  readonly digest: string
  /** The record as the trailer names it: for words; the digest decides. */
  readonly record: string
  readonly name: string
  readonly email: string
  readonly commit: string
  readonly signature: Signature
  /** E-mail of the key's owner, where the signature is good. */
  readonly signer: string | null
}

const CONTENT = /^(sha256:[0-9a-f]{64})(?:\s+(.+))?$/
const PERSON = /^(.*?)\s*<([^<>\s]+)>$/

/**
 * From `Reviewed-content: sha256:<digest> <record>` in any commit that the main line is made of, whatever it is called
 * by now: the digest ties the review to content, so that a squash or a rebase can neither lose nor lend it.
 */
export const trailerReviews = ({ commits, line }: KnownHistory): TrailerReview[] => {
  const tip = line.at(-1)
  if (tip === undefined) return []
  const part = reachableFrom(commits, tip)
  return [...commits.values()].filter(({ hash }) => part.has(hash)).flatMap(reviewsIn)
}

/** A review may be forged by whoever writes the message; only a signature ties it to a person. */
export const reviewsIn = (commit: Commit): TrailerReview[] =>
  commit.trailers.filter(named('reviewed-content')).flatMap((trailer) => {
    const [, digest, record = ''] = CONTENT.exec(trailer.value) ?? []
    if (digest === undefined) return []
    const { hash, signature, signer } = commit
    return personsOf(commit, trailer).map((person) => ({
      digest,
      record,
      ...person,
      commit: hash,
      signature,
      signer,
    }))
  })

/**
 * Who reviewed: `Reviewed-by` of the same paragraph; else the only one of the message; else, where the message names
 * nobody, its author. Several elsewhere: nobody can tell which, and none counts.
 */
const personsOf = (commit: Commit, { paragraph }: Trailer): { name: string; email: string }[] => {
  const all = commit.trailers.filter(named('reviewed-by'))
  const beside = all.filter((trailer) => trailer.paragraph === paragraph)
  if (all.length === 0) return [commit.author]
  if (beside.length === 0 && all.length > 1) return []
  return (beside.length > 0 ? beside : all).flatMap(({ value }) => {
    const [, name, email] = PERSON.exec(value) ?? []
    return name !== undefined && email !== undefined ? [{ name, email }] : []
  })
}

const named =
  (key: string) =>
  (trailer: Trailer): boolean =>
    trailer.key.toLowerCase() === key
