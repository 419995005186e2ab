/** Keeping: every change at once, and loudly where that fails. */
import { runText } from '../write.ts'
import { h } from './dom.ts'
import type { Live } from './live.ts'
import { ChangedElsewhere, type KeptRun, type Store } from './store.ts'

export type Keeper = {
  readonly element: HTMLElement
  /** Keeps the run as it stands now. */
  readonly keep: () => void
}

const ELSEWHERE =
  'This run was changed in another tab or window. Nothing is kept from here: copy what you need, then reload the page.'
const FULL =
  'Not kept: the store of this browser is full or blocked. What you type is on this page only. Copy or download it now.'

/** `store` is null where the browser keeps nothing. `kept` hears of each version that was written. */
export const createKeeper = (
  live: Live,
  store: Store | null,
  kept: (run: KeptRun) => void,
  download: () => void,
): Keeper => {
  const status = h('p', { class: 'kept', role: 'status' })
  const alarm = h('div', { class: 'not-kept', role: 'alert', hidden: true })
  let version = live.run().version
  let writing = false
  let again = false

  const text = h('textarea', { rows: 8, readonly: true, 'aria-label': 'The text of this run' })
  let said = ''

  const fail = (words: string): void => {
    status.textContent = ''
    text.value = runText(live.state())
    // Said once: an alert at every digit would hide what it is about.
    if (!alarm.hidden && said === words) return
    said = words
    alarm.hidden = false
    const copy = (): void => {
      text.select()
      void navigator.clipboard?.writeText(text.value).catch(() => undefined)
    }
    alarm.replaceChildren(
      h('p', {}, h('strong', {}, words)),
      h('button', { type: 'button', click: copy }, 'Copy the text'),
      h('button', { type: 'button', click: download }, 'Download the text'),
      text,
    )
  }

  const write = async (): Promise<void> => {
    if (!store) return fail(FULL)
    const run = { ...live.run(), version, changed: Date.now() }
    try {
      const written = await store.put(run)
      version = written.version
      alarm.hidden = true
      status.textContent = 'Kept in this browser.'
      kept(written)
    } catch (error) {
      fail(error instanceof ChangedElsewhere ? ELSEWHERE : FULL)
    }
  }

  /** One writing at a time; what changes meanwhile is written next. */
  const keep = (): void => {
    if (writing) {
      again = true
      return
    }
    writing = true
    void write().finally(() => {
      writing = false
      if (!again) return
      again = false
      keep()
    })
  }
  live.onChange(keep)
  return { element: h('div', {}, status, alarm), keep }
}
