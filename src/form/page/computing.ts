/** The computing part: when it is brought to the page, and what stands there where it fails. */
import type { Pack } from '../desk.ts'
import type { Finding } from '../finding.ts'
import type { Preview } from '../preview.ts'
import { type Computer, createComputer } from './compute.ts'
import type { createLive, Live } from './live.ts'
import { DATA, type Store } from './store.ts'

const NO_RESULT: Omit<Preview, 'path' | 'text' | 'findings'> = {
  verdict: null,
  reasons: [],
  criteria: [],
  measures: [],
  notes: [],
  advice: [],
  items: [],
  plots: [],
  rows: 0,
}

/** What the checker would say is not known either. */
const untold = (message: string): Finding => ({
  spot: 'file',
  severity: 'error',
  code: '',
  message,
  hint: '',
})

/** Brings the computing part, and keeps the results up to date from then on. */
export const compute = (live: ReturnType<typeof createLive>, store: Store, pack: Pack): Computer => {
  const worker = new Worker(new URL('./worker.web.ts', import.meta.url), { type: 'module' })
  const failed = (message: string): void => {
    const words = `The results cannot be computed here (${message}). What you type is kept all the same.`
    live.say(words, true)
    // What was computed before must not stand as if it were of now.
    const last = live.preview()
    if (last) live.show({ ...last, ...NO_RESULT, reasons: [words], findings: [untold(words)] })
  }
  // A run that was handed in is not in its own way.
  const taken = live.view.taken.filter((id) => id !== live.id())
  const computer = createComputer(worker, pack, taken, live.show, failed)
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
  const asking = (): void => {
    ask().catch(() => live.say('The data file of this run cannot be read from this browser just now.', true))
  }
  live.onChange(asking)
  asking()
  return computer
}

/** The computing part is large: it comes with the first reading, or when somebody looks at what is to be handed in. */
export const whenNeeded = (live: Live, root: HTMLElement, need: () => void): void => {
  const before = JSON.stringify(live.state().rows)
  if (live.run().version > 0) need()
  live.onChange((state) => {
    // A stamp of a list without a column of times writes nothing, and begins the run all the same.
    if (state.data || live.run().stamps || JSON.stringify(state.rows) !== before) need()
  })
  root.querySelector('#hand-in')?.addEventListener('focusin', need)
  root.querySelector('#hand-in')?.addEventListener('pointerdown', need)
}
