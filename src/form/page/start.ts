/** The form of one card on its page. */
import { beginRun } from '../begin.ts'
import { momentText } from '../clock.ts'
import type { Pack } from '../desk.ts'
import type { FormView } from '../view.ts'
import { runText } from '../write.ts'
import { begunList, freshKey } from './begun.ts'
import type { Computer } from './compute.ts'
import { compute, whenNeeded } from './computing.ts'
import { conditionsPart } from './conditions.ts'
import { h } from './dom.ts'
import { showFaults } from './faults.ts'
import { handInPart } from './hand-in.ts'
import { heldStrip } from './held.ts'
import { createKeeper } from './keep.ts'
import { createLive, type Live, now } from './live.ts'
import { memoryStore } from './memory.ts'
import { readingsPart } from './readings.ts'
import { resultPart } from './result.ts'
import { saveFile } from './save-file.ts'
import { seenPart } from './seen.ts'
import { blankRun, type KeptRun, openStore, type Store } from './store.ts'
import { instrumentsPart, whoPart } from './who.ts'

const fresh = (view: FormView, when: string): KeptRun => ({
  ...blankRun(freshKey(), view.card),
  title: view.title,
  state: beginRun(view, when),
  begunAt: when,
})

const NOT_HERE =
  'The run that this address names is not in this browser: what stands here is a new one. Runs that are kept here are in the list above.'

/** The run that the address names, where this browser has it; else a new one, and that is said. */
const runOfPage = async (
  view: FormView,
  store: Store,
): Promise<{ readonly run: KeptRun; readonly said: string }> => {
  const begun = fresh(view, momentText(now()))
  const key = new URLSearchParams(location.search).get('run')
  if (!key) return { run: begun, said: '' }
  try {
    const kept = await store.get(key)
    return kept?.card === view.card ? { run: kept, said: '' } : { run: begun, said: NOT_HERE }
  } catch {
    const said =
      'The run that this address names cannot be read just now. Load the page again before you type.'
    return { run: begun, said }
  }
}

/** A short mark of a text: whether the card is still the one that the run was begun with. */
const markOf = (text: string): string => {
  let mark = 0x811c9dc5
  for (let at = 0; at < text.length; at++) mark = Math.imul(mark ^ text.charCodeAt(at), 0x01000193)
  return (mark >>> 0).toString(16)
}

const speaker = (): { readonly element: HTMLElement; readonly say: Live['say'] } => {
  const quiet = h('p', { class: 'said', role: 'status' })
  const loud = h('p', { class: 'said loud', role: 'alert' })
  return {
    element: h('div', {}, quiet, loud),
    say: (text, isLoud = false) => {
      quiet.textContent = isLoud ? '' : text
      loud.textContent = isLoud ? text : ''
    },
  }
}

const idle = (work: () => void): void => {
  if ('requestIdleCallback' in window) window.requestIdleCallback(work, { timeout: 2000 })
  else setTimeout(work, 200)
}

/** Fetches the cards that this browser holds, and says which. */
const fetchPack = async (live: ReturnType<typeof createLive>, base: string): Promise<Pack> => {
  const response = await fetch(`${base}record/shared.json`)
  if (!response.ok) throw new Error('the cards could not be fetched')
  const pack: Pack = await response.json()
  const card = pack.files.find(({ path }) => path === `shared/cards/${live.view.card}.md`)?.text ?? ''
  live.begun(markOf(card), pack.revision.commit ?? '')
  if (live.run().begunWith !== markOf(card))
    live.say('The card has changed since this run was begun: look at its steps and limits again.', true)
  return pack
}

const PARTS: readonly (readonly [string, string])[] = [
  ['who', 'Who and when'],
  ['instruments', 'Instruments'],
  ['conditions', 'Conditions'],
  ['readings', 'Readings'],
  ['result', 'Result'],
  ['seen', 'Seen and done'],
  ['hand-in', 'Hand in'],
]

const partsList = (): HTMLElement =>
  h(
    'nav',
    { 'aria-label': 'Parts of the form' },
    h('ul', { class: 'jump' }, ...PARTS.map(([id, text]) => h('li', {}, h('a', { href: `#${id}` }, text)))),
  )

/** What is to be known before anything is typed; it stays. */
const noticesOf = (about: string, losses: readonly string[]): HTMLElement[] => {
  const lost =
    losses.length > 0 ? `The form does not keep all of the file that was opened: ${losses.join(', ')}.` : ''
  return [about, lost]
    .filter((words) => words !== '')
    .map((words) => h('p', { class: 'said loud', role: 'alert' }, words))
}

export const startForm = async (root: HTMLElement): Promise<void> => {
  const view: FormView = JSON.parse(root.dataset.form ?? '{}')
  const base = root.dataset.base ?? '/'
  const { element: said, say } = speaker()
  const opened = await openStore().catch(() => null)
  const store = opened ?? memoryStore()
  const { run, said: about } = await runOfPage(view, store)
  const live = createLive(view, run, say)
  const save = (): void =>
    saveFile(new Blob([runText(live.state())], { type: 'text/markdown' }), `${live.id()}.md`)
  const begun = begunList(opened, base, new Map(view.cards), run.key)
  const keeper = createKeeper(
    live,
    opened,
    (written) => {
      const here = new URL(location.href)
      if (here.searchParams.get('run') !== written.key) {
        here.searchParams.set('run', written.key)
        history.replaceState(null, '', here)
      }
      if (written.version === 1) void navigator.storage?.persist?.()
    },
    save,
  )
  const held = heldStrip(base)
  const faults = showFaults(live, root)
  const handed = (): void => live.handed(Date.now())
  root.replaceChildren(
    h(
      'div',
      { class: 'form-head' },
      held.element,
      keeper.element,
      ...noticesOf(about, run.losses),
      said,
      begun,
      partsList(),
    ),
    whoPart(live),
    instrumentsPart(live),
    conditionsPart(live),
    readingsPart(live, store),
    resultPart(live),
    seenPart(live, store),
    handInPart(live, store, root, handed, faults.all),
  )
  root.toggleAttribute('data-ready', true)
  if (!opened) keeper.keep()
  const trouble = (error: unknown): void =>
    say(
      `No results yet (${error instanceof Error ? error.message : 'no network'}). What you type is kept all the same.`,
      true,
    )
  const pack = new Promise<Pack>((done, failed) => idle(() => void fetchPack(live, base).then(done, failed)))
  pack.then((fetched) => held.show(fetched.revision)).catch(trouble)
  let computer: Promise<Computer> | undefined
  const computing = (): Promise<Computer> => {
    computer ??= pack.then((fetched) => compute(live, store, fetched))
    return computer
  }
  live.computeWith(computing)
  whenNeeded(live, root, () => void computing().catch(trouble))
}

/** The list of begun runs on the page where a card is chosen. */
export const startList = async (root: HTMLElement): Promise<void> => {
  const base = root.dataset.base ?? '/'
  const cards: [string, string][] = JSON.parse(root.dataset.cards ?? '[]')
  const held = heldStrip(base)
  root.replaceChildren(held.element)
  root.append(begunList(await openStore().catch(() => null), base, new Map(cards)))
  const pack: Pack | null = await fetch(`${base}record/shared.json`)
    .then((response) => (response.ok ? response.json() : null))
    .catch(() => null)
  if (pack) held.show(pack.revision)
}
