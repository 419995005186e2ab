/**
 * Holds the pages of the forms and all that they need, so that they work without network. What it holds was fetched
 * as one state; a newer one waits until no page of the old one is open, or somebody takes it. Two states are held at most.
 */

/** Put before this text at build: digest of the state, and the addresses that it is made of, under the base path. */
declare const HELD: { readonly digest: string; readonly base: string; readonly files: readonly string[] }

type Waiting = Event & { readonly waitUntil: (work: Promise<unknown>) => void }
type Fetching = Waiting & {
  readonly request: Request
  readonly respondWith: (response: Promise<Response>) => void
}
type Scope = {
  addEventListener(type: 'install' | 'activate', listener: (event: Waiting) => void): void
  addEventListener(type: 'fetch', listener: (event: Fetching) => void): void
  addEventListener(type: 'message', listener: (event: MessageEvent<unknown>) => void): void
  readonly skipWaiting: () => Promise<void>
  readonly clients: { readonly claim: () => Promise<void> }
}

const scope = self as unknown as Scope
const PREFIX = `record ${HELD.base} `
const NAME = PREFIX + HELD.digest

/** States that are held beside this one, in the order in which they were fetched. */
const others = async (): Promise<string[]> =>
  (await caches.keys()).filter((name) => name.startsWith(PREFIX) && name !== NAME)

const fetchAll = async (): Promise<void> => {
  const isNew = !(await caches.keys()).includes(NAME)
  const cache = await caches.open(NAME)
  try {
    await cache.addAll(HELD.files.map((file) => new Request(HELD.base + file, { cache: 'no-cache' })))
  } catch (error) {
    // An empty one would count as a state that was held.
    if (isNew) await caches.delete(NAME)
    throw error
  }
}

/** The state before stays: tabs that still show it fetch the one or the other of its chunks only later. */
const dropOld = async (): Promise<void> => {
  const old = (await others()).slice(0, -1)
  await Promise.all(old.map((name) => caches.delete(name)))
  await scope.clients.claim()
}

const heldBefore = async (request: Request): Promise<Response | undefined> => {
  for (const name of await others()) {
    const held = await (await caches.open(name)).match(request)
    if (held) return held
  }
  return undefined
}

const answer = async (request: Request): Promise<Response> => {
  const cache = await caches.open(NAME)
  const held = (await cache.match(request, { ignoreSearch: true })) ?? (await heldBefore(request))
  if (held) return held
  try {
    return await fetch(request)
  } catch (error) {
    // A page that is not held: better the choice of forms than nothing.
    const start = request.mode === 'navigate' ? await cache.match(`${HELD.base}record/`) : undefined
    if (start) return start
    throw error
  }
}

scope.addEventListener('install', (event) => event.waitUntil(fetchAll()))
scope.addEventListener('activate', (event) => event.waitUntil(dropOld()))
scope.addEventListener('message', (event) => {
  if (event.data === 'take') void scope.skipWaiting()
})
scope.addEventListener('fetch', (event) => {
  const { pathname, origin } = new URL(event.request.url)
  const isOurs = event.request.method === 'GET' && origin === location.origin
  // What is newest is asked of the network alone.
  if (!isOurs || pathname.endsWith('/record/revision.json')) return
  event.respondWith(answer(event.request))
})
