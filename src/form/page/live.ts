/** What the parts of the form share: the run as it stands, how it is changed, and who wants to hear of it. */

import type { Now, Stamps } from '../clock.ts'
import { dataEnding, type FileFound } from '../logger.ts'
import { runId } from '../name.ts'
import type { Preview } from '../preview.ts'
import type { RunState } from '../state.ts'
import type { FormView } from '../view.ts'
import type { Computer } from './compute.ts'
import type { KeptRun } from './store.ts'

export type Live = {
  readonly view: FormView
  readonly run: () => KeptRun
  readonly state: () => RunState
  readonly change: (update: (state: RunState) => RunState) => void
  readonly stamp: (stamps: Stamps) => void
  readonly onChange: (listener: (state: RunState) => void) => void
  readonly onPreview: (listener: (preview: Preview) => void) => void
  readonly preview: () => Preview | null
  /** Looks at a file of readings, in the worker. */
  readonly lookAt: (file: Blob) => Promise<FileFound>
  /** Says something to whoever listens or looks: `loud` at once. */
  readonly say: (text: string, loud?: boolean) => void
}

/** The clock of the device: the only place where the form asks for the time. */
export const now = (): Now => {
  const date = new Date()
  return { epoch: date.getTime(), offset: -date.getTimezoneOffset() }
}

/** The data file of a run has the name of the run, whatever becomes of `when` and article. */
export const settled = (state: RunState, taken: readonly string[]): RunState =>
  state.data && typeof state.data.file === 'string'
    ? { ...state, data: { ...state.data, file: `${runId(state, taken)}.${dataEnding(state.data.file)}` } }
    : state

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
  let kept = first
  let shown: Preview | null = null
  let computing: () => Promise<Computer> = () => Promise.reject(new Error('the page is not ready yet'))
  const changed: ((state: RunState) => void)[] = []
  const previewed: ((preview: Preview) => void)[] = []
  const tell = (): void => {
    for (const listener of changed) listener(kept.state)
  }
  return {
    view,
    say,
    run: () => kept,
    state: () => kept.state,
    change: (update) => {
      kept = { ...kept, state: settled(update(kept.state), view.taken) }
      tell()
    },
    stamp: (stamps) => {
      kept = { ...kept, stamps }
      tell()
    },
    begun: (mark, revision) => {
      if (kept.begunWith !== '') return
      const state = kept.state.revision === '' ? { ...kept.state, revision } : kept.state
      kept = { ...kept, begunWith: mark, state }
    },
    handed: (epoch) => {
      kept = { ...kept, handed: epoch }
      tell()
    },
    onChange: (listener) => changed.push(listener),
    onPreview: (listener) => previewed.push(listener),
    preview: () => shown,
    lookAt: async (file) => (await computing()).lookAt(await file.arrayBuffer(), kept.state),
    computeWith: (computer) => {
      computing = computer
    },
    show: (preview) => {
      shown = preview
      for (const listener of previewed) listener(preview)
    },
  }
}
