/** The trailers of a review, as history reads them: one paragraph, so that they stay together in any message. */

export type Reviewed = { readonly id: string /** `sha256:…` */; readonly digest: string }

export const trailers = (
  reviewed: readonly Reviewed[],
  reviewer: { readonly name: string; readonly email: string },
): string =>
  [
    ...reviewed.map(({ id, digest }) => `Reviewed-content: ${digest} ${id}`),
    `Reviewed-by: ${reviewer.name.replace(/\s+/g, ' ')} <${reviewer.email}>`,
  ]
    .map((line) => `${line}\n`)
    .join('')

/** A whole message of a commit. */
export const reviewMessage = (
  reviewed: readonly Reviewed[],
  reviewer: { readonly name: string; readonly email: string },
): string => {
  const [only, second] = reviewed
  const what = only && !second ? only.id : `${reviewed.length} records`
  return `Review ${what}\n\n${trailers(reviewed, reviewer)}`
}
