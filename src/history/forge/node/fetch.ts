/** Asks the forge over the network. The token goes to the host of the API and nowhere else, and is never printed. */

import { afterAnswer } from '../answered.ts'
import { type Answer, readFiles, readPulls, readReviews } from '../answers.ts'
import type { Ask, Asked } from '../gather.ts'
import { nextPage } from '../paging.ts'
import type { ForgePlace } from '../place.ts'

export type Client = ForgePlace & {
  readonly token: string | null
  readonly pause: (milliseconds: number) => Promise<void>
  readonly now: () => number
  /** Told when there is something to wait for. */
  readonly say: (text: string) => void
}

type Page =
  | { readonly kind: 'page'; readonly json: unknown; readonly next: string | null }
  | { readonly kind: 'not-there' }
  | { readonly kind: 'stop'; readonly why: string }

type Heard =
  | { readonly kind: 'answer'; readonly response: Response; readonly body: string }
  | { readonly kind: 'failure'; readonly why: string }

const TIMEOUT = 30_000
/** Pauses before the second, third and fourth try, in ms. */
const PAUSES = [1000, 2000, 4000]
const MOST_REDIRECTS = 5
const MOST_PAGES = 200

const causeOf = (error: unknown): string => {
  if (!(error instanceof Error)) return 'unknown'
  if (error.name === 'TimeoutError') return `no answer in ${TIMEOUT / 1000} s`
  const { cause } = error
  if (cause instanceof Error && 'code' in cause) return String(cause.code)
  return error.name
}

const hear = async (client: Client, url: string): Promise<Heard> => {
  try {
    const response = await fetch(url, {
      redirect: 'manual',
      signal: AbortSignal.timeout(TIMEOUT),
      headers: {
        accept: 'application/vnd.github+json',
        'x-github-api-version': '2022-11-28',
        'user-agent': 'ground-test-record',
        ...(client.token === null ? {} : { authorization: `Bearer ${client.token}` }),
      },
    })
    return { kind: 'answer', response, body: await response.text() }
  } catch (error) {
    return { kind: 'failure', why: causeOf(error) }
  }
}

const readJson = (text: string): { readonly json: unknown } | null => {
  try {
    return { json: JSON.parse(text) }
  } catch {
    return null
  }
}

const pageOf = (response: Response, body: string, url: string): Page => {
  const read = readJson(body)
  if (!read) return { kind: 'stop', why: 'the answer of the forge is no JSON' }
  const next = nextPage(response.headers.get('link'), url)
  if (next.kind === 'elsewhere') {
    return { kind: 'stop', why: `the next page lies at another host, ${next.host}; nothing was sent there` }
  }
  return { kind: 'page', json: read.json, next: next.kind === 'next' ? next.url : null }
}

/** Where an answer leads to, if it leads to the same host. */
const redirected = (response: Response, url: string): string | Page => {
  const target = URL.parse(response.headers.get('location') ?? '', url)
  if (target && target.origin === new URL(url).origin) return target.href
  return {
    kind: 'stop',
    why: `the forge leads to another host, ${target?.host ?? 'which it does not name'}; nothing was sent there`,
  }
}

const getPage = async (client: Client, address: string): Promise<Page> => {
  let url = address
  let redirects = 0
  let why = ''
  for (let failures = 0; ; ) {
    const heard = await hear(client, url)
    let seconds = 0
    if (heard.kind === 'failure') {
      why = `the forge was not reached (${heard.why})`
    } else {
      const { response, body } = heard
      if ([301, 302, 307, 308].includes(response.status)) {
        const target = redirected(response, url)
        if (typeof target !== 'string') return target
        if (++redirects > MOST_REDIRECTS) return { kind: 'stop', why: 'the forge leads in a circle' }
        url = target
        continue
      }
      const step = afterAnswer(response.status, response.headers, body, client.now())
      if (step.kind === 'take') return pageOf(response, body, url)
      if (step.kind !== 'wait') return step
      ;({ why, seconds } = step)
    }
    const pause = PAUSES[failures++]
    if (pause === undefined) return { kind: 'stop', why: `${why}, ${failures} times` }
    if (seconds > 0) client.say(`${why}; waiting ${seconds} s`)
    await client.pause(Math.max(seconds * 1000, pause))
  }
}

const getAll = async <T>(
  client: Client,
  path: string,
  read: (json: unknown) => Answer<T>,
): Promise<Asked<T>> => {
  const value: T[] = []
  let url: string | null = `${client.api}/repos/${client.repository}/${path}?per_page=100`
  for (let pages = 0; url !== null; pages++) {
    if (pages === MOST_PAGES) return { kind: 'stop', why: `the forge gives more than ${MOST_PAGES} pages` }
    const page: Page = await getPage(client, url)
    if (page.kind !== 'page') return page
    const answer = read(page.json)
    if (!answer.ok) return { kind: 'stop', why: answer.error }
    value.push(...answer.value)
    url = page.next
  }
  return { kind: 'list', value }
}

export const askForge = (client: Client): Ask => ({
  pulls: (commit) => getAll(client, `commits/${commit}/pulls`, readPulls),
  reviews: (pull) => getAll(client, `pulls/${pull}/reviews`, readReviews),
  files: (pull) => getAll(client, `pulls/${pull}/files`, readFiles),
})
