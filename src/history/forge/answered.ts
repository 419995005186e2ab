/** What to do after an answer of the forge: take it, ask again later, or stop and say why. */

export type Headers = { readonly get: (name: string) => string | null }

export type Step =
  | { readonly kind: 'take' }
  /** The forge does not know the commit: it was not pushed there. */
  | { readonly kind: 'not-there' }
  | { readonly kind: 'wait'; readonly seconds: number; readonly why: string }
  | { readonly kind: 'stop'; readonly why: string }

/** Longer than this nobody waits for a step of CI; what was found so far is kept. */
export const LONGEST_WAIT = 120

/** The documentation asks for a minute where a limit is hit and no header says how long it lasts. */
const UNSTATED_WAIT = 60

const TOKEN_HINT = 'the token needs to read contents and pull requests of the repository'

const limited = (status: number, headers: Headers, body: string): boolean =>
  status === 429 ||
  (status === 403 &&
    (headers.get('retry-after') !== null ||
      headers.get('x-ratelimit-remaining') === '0' ||
      /rate limit/i.test(body)))

/** Seconds until the forge may be asked again, by `retry-after`, else `x-ratelimit-reset` (seconds since 1970). */
const secondsToWait = (headers: Headers, now: number): number => {
  const after = Number(headers.get('retry-after') ?? Number.NaN)
  if (Number.isFinite(after) && after >= 0) return Math.ceil(after)
  const reset = Number(headers.get('x-ratelimit-reset') ?? Number.NaN)
  if (headers.get('x-ratelimit-remaining') === '0' && Number.isFinite(reset)) {
    return Math.max(1, Math.ceil(reset - now / 1000) + 1)
  }
  return UNSTATED_WAIT
}

const inWords = (seconds: number): string =>
  seconds < 120 ? `${seconds} s` : `${Math.ceil(seconds / 60)} minutes`

/**
 * @param now ms since 1970
 * @param body text of the answer: only searched for words, never printed
 * @see the forge's documentation, “Rate limits for the REST API”
 */
export const afterAnswer = (status: number, headers: Headers, body: string, now: number): Step => {
  if (status === 200) return { kind: 'take' }
  if (limited(status, headers, body)) {
    const seconds = secondsToWait(headers, now)
    return seconds <= LONGEST_WAIT
      ? { kind: 'wait', seconds, why: 'the forge limits how often it is asked' }
      : {
          kind: 'stop',
          why: `the forge limits how often it is asked, and may be asked again in ${inWords(seconds)}; call again then`,
        }
  }
  if (status >= 500) return { kind: 'wait', seconds: 0, why: `the forge answers with ${status}` }
  if (status === 422) return { kind: 'not-there' }
  if (status === 401) return { kind: 'stop', why: `the forge does not accept the token (401); ${TOKEN_HINT}` }
  if (status === 403) return { kind: 'stop', why: `the forge refuses the answer (403); ${TOKEN_HINT}` }
  if (status === 404) {
    return {
      kind: 'stop',
      why: `the forge does not know the repository (404), or does not show it; ${TOKEN_HINT}`,
    }
  }
  return { kind: 'stop', why: `the forge answers with ${status}, which is not understood` }
}
