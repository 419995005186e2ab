/** The form of one card on its page. */
import { beginRun } from '../begin.ts'
import { momentText } from '../clock.ts'
import type { Pack } from '../desk.ts'
import { runId } from '../name.ts'
import type { FormView } from '../view.ts'
import { runText } from '../write.ts'
import { begunList, freshKey } from './begun.ts'
import { type Computer, createComputer } from './compute.ts'
import { conditionsPart } from './conditions.ts'
import { DATA } from './data-file.ts'
import { h } from './dom.ts'
import { showFaults } from './faults.ts'
import { handInPart } from './hand-in.ts'
import { heldStrip } from './held.ts'
import { createKeeper } from './keep.ts'
import { createLive, type Live, now } from './live.ts'
import { memoryStore } from './memory.ts'
import { readingsPart } from './readings.ts'
import { resultPart } from './result.ts'
import { seenPart } from './seen.ts'
import { type KeptRun, openStore, type Store } from './store.ts'
import { instrumentsPart, whoPart } from './who.ts'

const fresh = (view: FormView): KeptRun => ({
  key: freshKey(),
  card: view.card,
  title: view.title,
  state: beginRun(view, momentText(now())),
  stamps: null,
  changed: 0,
  handed: null,
  begunWith: '',
  version: 0,
})

/** The run that the address names, where this browser has it; else a new one. */
const runOfPage = async (view: FormView, store: Store): Promise<KeptRun> => {
  const key = new URLSearchParams(location.search).get('run')
  const kept = key ? await store.get(key).catch(() => undefined) : undefined
  return kept?.card === view.card ? kept : fresh(view)
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

/** Brings the computing part, and keeps the results up to date from then on. */
const compute = (live: ReturnType<typeof createLive>, store: Store, pack: Pack): Computer => {
  const worker = new Worker(new URL('./worker.web.ts', import.meta.url), { type: 'module' })
  const failed = (message: string): void =>
    live.say(`The results cannot be computed here (${message}). What you type is kept all the same.`, true)
  const computer = createComputer(worker, pack, live.view.taken, live.show, failed)
  /** A file that was chosen on this page is in the worker already. */
  let fetched = live.state().data === null
  const ask = async (): Promise<void> => {
    if (!fetched) {
      fetched = true
      const blob = await store.file(live.run().key, DATA)
      if (blob) computer.data(await blob.arrayBuffer())
    }
    computer.ask(live.state())
  }
  live.onChange(() => void ask())
  void ask()
  return computer
}

/** The computing part is large: it comes with the first reading, or when somebody looks at what is to be handed in. */
const whenNeeded = (live: Live, root: HTMLElement, need: () => void): void => {
  const before = JSON.stringify(live.state().rows)
  if (live.run().version > 0) need()
  live.onChange((state) => {
    if (state.data || JSON.stringify(state.rows) !== before) need()
  })
  root.querySelector('#hand-in')?.addEventListener('focusin', need)
  root.querySelector('#hand-in')?.addEventListener('pointerdown', need)
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

export const startForm = async (root: HTMLElement): Promise<void> => {
  const view: FormView = JSON.parse(root.dataset.form ?? '{}')
  const base = root.dataset.base ?? '/'
  const { element: said, say } = speaker()
  const opened = await openStore().catch(() => null)
  const store = opened ?? memoryStore()
  const run = await runOfPage(view, store)
  const live = createLive(view, run, say)
  const save = (): void => {
    const link = h('a', {
      href: URL.createObjectURL(new Blob([runText(live.state())], { type: 'text/markdown' })),
      download: `${runId(live.state(), view.taken)}.md`,
    })
    link.click()
  }
  const begun = begunList(store, base, new Map(view.cards), run.key)
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
    h('div', { class: 'form-head' }, held.element, keeper.element, said, begun.element, partsList()),
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
  const losses = sessionStorage.getItem(`losses-${run.key}`)
  if (losses) say(`The form does not keep all of that file: ${losses}.`, true)
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
  const store = await openStore().catch(() => null)
  if (store) root.append(begunList(store, base, new Map(cards)).element)
  const response = await fetch(`${base}record/shared.json`).catch(() => null)
  const pack: Pack | null = response?.ok ? await response.json() : null
  if (pack) held.show(pack.revision)
}
