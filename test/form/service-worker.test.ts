/**
 * The worker that keeps the forms without network, as it stands in a built site, over caches in memory: a site is
 * published anew while tabs of the old one are open. What a cache does is in the Service Workers specification (W3C),
 * section 5: caches are matched in the order in which they were made.
 */
import { readFileSync } from 'node:fs'
import { stripTypeScriptTypes } from 'node:module'
import { beforeEach, describe, expect, it } from 'vitest'

const code = stripTypeScriptTypes(readFileSync('src/form/offline/service-worker.web.ts', 'utf8'))
const ORIGIN = 'https://tests.example'

type Listener = (event: Record<string, unknown>) => void
type Cache = Map<string, string>

/** Address → content, as the host has it now. */
let host: Map<string, string>
let online: boolean
let caches: Map<string, Cache>

const pathOf = (request: { url: string } | string): string =>
  new URL(typeof request === 'string' ? request : request.url, ORIGIN).pathname

const fetched = async (request: { url: string } | string): Promise<string> => {
  const found = online ? host.get(pathOf(request)) : undefined
  if (found === undefined) throw new TypeError('Failed to fetch')
  return found
}

const opened = (cache: Cache) => ({
  addAll: async (requests: readonly { url: string }[]) => {
    const all = await Promise.all(requests.map(async (each) => [pathOf(each), await fetched(each)] as const))
    for (const [path, text] of all) cache.set(path, text)
  },
  match: async (request: { url: string } | string) => cache.get(pathOf(request)),
})

const storage = {
  open: async (name: string) => {
    const cache = caches.get(name) ?? new Map<string, string>()
    caches.set(name, cache)
    return opened(cache)
  },
  keys: async () => [...caches.keys()],
  delete: async (name: string) => caches.delete(name),
  match: async (request: { url: string }) =>
    [...caches.values()].map((cache) => cache.get(pathOf(request))).find((found) => found !== undefined),
}

/** A published state: its page names its chunk. */
const publish = async (
  digest: string,
  base = '/',
): Promise<(path: string, mode?: string) => Promise<string>> => {
  const files = ['record/', `assets/plot-${digest}.js`]
  host = new Map(files.map((file) => [base + file, `${file} of ${digest}`]))
  const listeners = new Map<string, Listener>()
  const scope = {
    addEventListener: (type: string, listener: Listener) => listeners.set(type, listener),
    clients: { claim: async () => undefined },
    skipWaiting: async () => undefined,
  }
  class Asked {
    readonly url: string
    constructor(url: string) {
      this.url = new URL(url, ORIGIN).href
    }
  }
  const run = new Function('self', 'caches', 'fetch', 'location', 'Request', 'HELD', code)
  run(scope, storage, fetched, { origin: ORIGIN }, Asked, { digest, base, files })
  const tell = async (type: string): Promise<void> => {
    let work: Promise<unknown> = Promise.resolve()
    listeners.get(type)?.({
      waitUntil: (more: Promise<unknown>) => {
        work = more
      },
    })
    await work
  }
  await tell('install')
  await tell('activate')
  return async (path, mode = 'cors') => {
    let answer: Promise<string> | undefined
    const request = { url: ORIGIN + path, method: 'GET', mode }
    listeners.get('fetch')?.({
      request,
      respondWith: (response: Promise<string>) => {
        answer = response
      },
    })
    return answer ?? fetched(request)
  }
}

beforeEach(() => {
  host = new Map()
  online = true
  caches = new Map()
})

describe('a newer state of the site', () => {
  it('gives its own pages, and still the chunks that tabs of the state before may ask for', async () => {
    await publish('a')
    const ask = await publish('b')
    online = false
    expect(await ask('/record/?run=1', 'navigate')).toBe('record/ of b')
    expect(await ask('/assets/plot-b.js')).toBe('assets/plot-b.js of b')
    expect(await ask('/assets/plot-a.js')).toBe('assets/plot-a.js of a')
  })
  it('keeps no more than the state before, however often it is published', async () => {
    for (const digest of ['a', 'b', 'c', 'd']) await publish(digest)
    expect([...caches.keys()].map((name) => name.slice(-1))).toEqual(['c', 'd'])
  })
  it('leaves the forms of another campaign on the same host alone', async () => {
    await publish('x', '/other/')
    await publish('a', '/own/')
    await publish('b', '/own/')
    await publish('c', '/own/')
    expect([...caches.keys()]).toEqual(['record /other/ x', 'record /own/ b', 'record /own/ c'])
  })
  it('that cannot be fetched whole leaves the old one as it was', async () => {
    const ask = await publish('a')
    online = false
    await expect(publish('b')).rejects.toThrow()
    expect(await ask('/record/', 'navigate')).toBe('record/ of a')
    expect([...caches.keys()]).toEqual(['record / a'])
  })
})

it('what is newest is asked of the network alone', async () => {
  const ask = await publish('a')
  host.set('/record/revision.json', 'newest')
  expect(await ask('/record/revision.json')).toBe('newest')
  online = false
  await expect(ask('/record/revision.json')).rejects.toThrow()
})

it('without network a page that is not held leads to the choice of forms, and nothing else does', async () => {
  const ask = await publish('a')
  online = false
  expect(await ask('/record/no-such-card/', 'navigate')).toBe('record/ of a')
  await expect(ask('/assets/other.js')).rejects.toThrow()
})
