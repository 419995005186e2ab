/** What the parts of the form share: the run as it stands, how it is changed, and who wants to hear of it. */

import { type Now, onSite } from '../clock.ts'
import type { FileFound } from '../logger.ts'
import { named, runId } from '../name.ts'
import type { Preview } from '../preview.ts'
import { stampRow } from '../stamp.ts'
import type { RunState } from '../state.ts'
import type { FormView } from '../view.ts'
import type { Computer } from './compute.ts'
import type { KeptRun } from './store.ts'

export type Live = {
  readonly view: FormView
  readonly run: () => KeptRun
  readonly state: () => RunState
  /** What the run is called; photos and data have that name too. */
  readonly id: () => string
  readonly change: (update: (state: RunState) => RunState) => void
  /** One more reading with the time of now: the row that it stands in, and whether the clock of the device went back. */
  readonly stamp: () => { readonly row: number; readonly wentBack: boolean }
  readonly onChange: (listener: (state: RunState) => void) => void
  readonly onPreview: (listener: (preview: Preview) => void) => void
  readonly preview: () => Preview | null
  /** Looks at a file of readings, in the worker. */
  readonly lookAt: (file: Blob) => Promise<FileFound>
  /** What is in the file that was looked at last, line by line. */
  readonly fileLines: () => Promise<readonly string[]>
  /** Says something to whoever listens or looks: `loud` at once. */
  readonly say: (text: string, loud?: boolean) => void
}

/** The clock of the device: the only place where the form asks for the time. `at`: of another moment. */
export const now = (at?: string): Now => {
  const date = at === undefined ? new Date() : new Date(at)
  return { epoch: date.getTime(), offset: -date.getTimezoneOffset() }
}

/** The time of now where the run is made. */
export const nowAt = (live: Live): Now => onSite(now(), live.state().when)

export const idOf = (run: KeptRun, { taken }: FormView): string => runId(run.state, taken, run.known)

export const createLive = (
  view: FormView,
  first: KeptRun,
  say: Live['say'],
): Live & {
  readonly show: (preview: Preview) => void
  /** Which card it was begun with; what is known of that already stays. */
  readonly begun: (mark: string, revision: string) => void
  readonly handed: (epoch: number) => void
  /** Where the worker comes from, once it is needed. */
  readonly computeWith: (computer: () => Promise<Computer>) => void
} => {
  // Since then another run of the same minute may have landed.
  let kept = { ...first, state: named(first.state, first.called || idOf(first, view), idOf(first, view)) }
  /** A new run that nobody has touched is not worth keeping. */
  let isTouched = first.version > 0
  let shown: Preview | null = null
  let computing: () => Promise<Computer> = () => Promise.reject(new Error('the page is not ready yet'))
  const changed: ((state: RunState) => void)[] = []
  const previewed: ((preview: Preview) => void)[] = []
  const tell = (): void => {
    isTouched = true
    for (const listener of changed) listener(kept.state)
  }
  const put = (more: Partial<KeptRun> & Pick<KeptRun, 'state'>): void => {
    const next = { ...kept, ...more }
    const called = idOf(next, view)
    const state = named(next.state, idOf(kept, view), called)
    kept = { ...next, state, called, handed: next.handed && { ...next.handed, changed: true } }
    tell()
  }
  return {
    view,
    say,
    run: () => kept,
    state: () => kept.state,
    id: () => idOf(kept, view),
    change: (update) => put({ state: update(kept.state) }),
    stamp: () => {
      const { state, stamps, row, wentBack } = stampRow(kept, view.columns, now(), kept.begunAt)
      put({ state, stamps })
      return { row, wentBack }
    },
    begun: (mark, revision) => {
      if (kept.begunWith !== '') return
      // Which card was in hand is known of a run that is begun here, not of one that was made elsewhere.
      const isOwn = kept.known === '' && kept.state.revision === ''
      kept = { ...kept, begunWith: mark, state: isOwn ? { ...kept.state, revision } : kept.state }
      if (isTouched) tell()
    },
    handed: (epoch) => {
      kept = { ...kept, known: idOf(kept, view), handed: { at: epoch, changed: false } }
      tell()
    },
    onChange: (listener) => changed.push(listener),
    onPreview: (listener) => previewed.push(listener),
    preview: () => shown,
    lookAt: async (file) => (await computing()).lookAt(await file.arrayBuffer(), kept.state),
    fileLines: async () => (await computing()).fileLines(),
    computeWith: (computer) => {
      computing = computer
    },
    show: (preview) => {
      shown = preview
      for (const listener of previewed) listener(preview)
    },
  }
}
