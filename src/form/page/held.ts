/** Which state of the cards is held here, whether it works without network, and whether a newer one is there. */
import type { Revision } from '../desk.ts'
import { button, h } from './dom.ts'

const wordsOf = ({ commit, day }: Revision): string =>
  commit
    ? `Cards as of commit ${commit.slice(0, 7)}${day ? ` of ${day}` : ''}.`
    : 'Cards of a state that is not committed.'

/** Asks the network, past every cache; null where there is none. */
const newest = async (base: string): Promise<Revision | null> => {
  try {
    const response = await fetch(`${base}record/revision.json`, { cache: 'no-store' })
    return response.ok ? ((await response.json()) as Revision) : null
  } catch {
    return null
  }
}

const take = (registration: ServiceWorkerRegistration | undefined): void => {
  const waiting = registration?.waiting
  if (!waiting) {
    location.reload()
    return
  }
  navigator.serviceWorker.addEventListener('controllerchange', () => location.reload(), { once: true })
  waiting.postMessage('take')
}

/** Once the page is loaded and has been quiet for a moment. */
const atRest = async (): Promise<void> => {
  if (document.readyState !== 'complete')
    await new Promise((done) => window.addEventListener('load', done, { once: true }))
  await new Promise((done) => setTimeout(done, 1000))
}

const register = async (base: string): Promise<ServiceWorkerRegistration | undefined> => {
  if (!('serviceWorker' in navigator)) return undefined
  try {
    return await navigator.serviceWorker.register(`${base}record/worker.js`, { scope: `${base}record/` })
  } catch {
    return undefined
  }
}

/** Resolves once a new worker has fetched all that it holds: false where it has given up. */
const fetched = (registration: ServiceWorkerRegistration): Promise<boolean> =>
  new Promise((done) => {
    const coming = registration.installing
    if (!coming) return done(true)
    coming.addEventListener('statechange', () => {
      if (coming.state !== 'installing') done(coming.state !== 'redundant')
    })
  })

export const heldStrip = (
  base: string,
): { readonly element: HTMLElement; readonly show: (held: Revision) => void } => {
  const revision = h('span')
  const network = h('span')
  const newer = h('p', { role: 'status' })
  // What a first visit needs comes first; the rest is fetched once the page has nothing else to do.
  const registering = atRest().then(() => register(base))
  void registering.then(async (registration) => {
    if (!registration) {
      network.textContent = ' This browser cannot work without network.'
      return
    }
    if (!registration.active) network.textContent = ' Being fetched for work without network …'
    if (!(await fetched(registration)) && !registration.active) {
      network.textContent = ' It could not be fetched for work without network: load the page again.'
      return
    }
    await navigator.serviceWorker.ready
    network.textContent = ' Works without network.'
  })
  const look = async (held: Revision): Promise<void> => {
    const there = await newest(base)
    if (!there || there.digest === held.digest) return
    const registration = await registering
    await registration?.update().catch(() => undefined)
    if (registration && !(await fetched(registration))) {
      newer.textContent =
        'A newer state of the cards is there; it could not be fetched whole. Load the page again.'
      return
    }
    newer.replaceChildren(
      'A newer state of the cards is there. ',
      button('Take it', () => take(registration)),
    )
  }
  return {
    element: h('div', { class: 'held' }, h('p', {}, revision, network), newer),
    show: (held) => {
      revision.textContent = wordsOf(held)
      void look(held)
      window.addEventListener('online', () => void look(held))
    },
  }
}
