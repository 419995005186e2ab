/** Runs that were begun in this browser and are still here; opening a file that was handed in. */

import { runId } from '../name.ts'
import { isBlankRow } from '../state.ts'
import { button, h, labelled } from './dom.ts'
import type { KeptRun, Store } from './store.ts'

/** In a safe context each browser has one; elsewhere the time and chance do. */
export const freshKey = (): string =>
  globalThis.crypto?.randomUUID?.() ?? `${Date.now().toString(36)}-${Math.random().toString(36).slice(2)}`

const timeOf = (epoch: number): string => {
  const date = new Date(epoch - new Date(epoch).getTimezoneOffset() * 60_000)
  return date.toISOString().slice(0, 16).replace('T', ' ')
}

const rowOf = (run: KeptRun, base: string, store: Store, render: () => void): HTMLElement => {
  const rows = run.state.rows.filter((row) => !isBlankRow(row)).length
  const words = `${runId(run.state)}: ${rows} ${rows === 1 ? 'row' : 'rows'}, changed ${timeOf(run.changed)}`
  const handed = run.handed === null ? 'not handed in' : `handed in ${timeOf(run.handed)}`
  const drop = button('Remove', () => {
    drop.replaceWith(
      button('Really remove it from this browser', () => {
        void store.remove(run.key).then(render)
      }),
    )
  })
  drop.setAttribute('aria-label', `Remove ${runId(run.state)} from this browser`)
  return h(
    'li',
    {},
    h('a', { href: `${base}record/${run.card}/?run=${run.key}`, 'data-run': run.key }, run.title),
    h('small', {}, ` ${words}; ${handed} `),
    drop,
  )
}

/** Opens a file as a run of this browser, and goes there. Says why where it cannot. */
const openFile = async (
  file: File,
  base: string,
  store: Store,
  cards: ReadonlyMap<string, string>,
): Promise<string> => {
  // The reader of files is large, and few open one.
  const { reopenRun } = await import('../reopen.ts')
  const read = reopenRun(await file.text())
  if (!read.ok) return `${file.name} cannot be opened: ${read.message}.`
  const { state, losses } = read
  const title = cards.get(state.card)
  if (title === undefined) return `${file.name} is of the card ${state.card}, which is not here.`
  const key = freshKey()
  const fresh = {
    key,
    card: state.card,
    title,
    state,
    stamps: null,
    changed: Date.now(),
    handed: null,
    begunWith: '',
    version: 0,
  }
  await store.put(fresh)
  if (losses.length > 0) sessionStorage.setItem(`losses-${key}`, losses.join(', '))
  location.assign(`${base}record/${state.card}/?run=${key}`)
  return ''
}

export type Begun = { readonly element: HTMLElement; readonly render: () => void }

/** `here`: key of the run that is on the page. */
export const begunList = (
  store: Store,
  base: string,
  cards: ReadonlyMap<string, string>,
  here = '',
): Begun => {
  const list = h('div')
  const said = h('p', { role: 'status' })
  const input = h('input', { type: 'file', accept: '.md,text/markdown' })
  input.addEventListener('change', () => {
    const [file] = input.files ?? []
    if (!file) return
    openFile(file, base, store, cards)
      .catch(() => `${file.name} could not be kept: the store of this browser is full or blocked.`)
      .then((words) => {
        said.textContent = words
      })
  })
  const render = (): void => {
    void store.all().then((runs) => {
      const others = runs.filter((run) => run.key !== here).sort((a, b) => b.changed - a.changed)
      const items = others.map((run) => rowOf(run, base, store, render))
      list.replaceChildren(
        ...(items.length > 0
          ? [h('p', {}, 'Begun in this browser:'), h('ul', { class: 'list begun' }, ...items)]
          : []),
      )
    })
  }
  render()
  return {
    element: h(
      'div',
      { class: 'begun-runs' },
      list,
      h(
        'details',
        {},
        h('summary', {}, 'Open a run that was handed in'),
        labelled({ label: 'File of the run (.md)' }, input),
        said,
      ),
    ),
    render,
  }
}
