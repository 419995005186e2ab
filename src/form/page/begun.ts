/** Runs that were begun in this browser and are still here; opening a file that was handed in. */

import type { Piece } from '../archive.ts'
import { photoKey, photoType, runId } from '../name.ts'
import { isBlankRow } from '../state.ts'
import { buttonTwice, h, labelled } from './dom.ts'
import { blankRun, DATA, type KeptRun, type Store } from './store.ts'

/** In a safe context each browser has one; elsewhere the time and chance do. */
export const freshKey = (): string =>
  globalThis.crypto?.randomUUID?.() ?? `${Date.now().toString(36)}-${Math.random().toString(36).slice(2)}`

const timeOf = (epoch: number): string => {
  const date = new Date(epoch - new Date(epoch).getTimezoneOffset() * 60_000)
  return date.toISOString().slice(0, 16).replace('T', ' ')
}

const handedWords = ({ handed }: KeptRun): string => {
  if (handed === null) return 'not handed in'
  return `handed in ${timeOf(handed.at)}${handed.changed ? ', changed since' : ''}`
}

const rowOf = (run: KeptRun, base: string, remove: () => void): HTMLElement => {
  const id = runId(run.state, [], run.known)
  const rows = run.state.rows.filter((row) => !isBlankRow(row)).length
  const words = `${id}: ${rows} ${rows === 1 ? 'row' : 'rows'}, changed ${timeOf(run.changed)}`
  return h(
    'li',
    {},
    h('a', { href: `${base}record/${run.card}/?run=${run.key}`, 'data-run': run.key }, run.title),
    h('small', {}, ` ${words}; ${handedWords(run)} `),
    buttonTwice('Remove', 'Really remove it from this browser', remove, {
      'aria-label': `Remove ${id} from this browser`,
    }),
  )
}

type Found = { readonly name: string; readonly text: string; readonly beside: readonly Piece[] }

/** The run in a file: the file itself, or an archive with what goes beside it. */
const runIn = async (file: File): Promise<Found | null> => {
  if (!/\.zip$/i.test(file.name)) return { name: file.name, text: await file.text(), beside: [] }
  const { openArchive } = await import('../archive.ts')
  const parcel = openArchive(new Uint8Array(await file.arrayBuffer()))
  return parcel && { ...parcel.run, beside: parcel.beside }
}

const blobOf = ({ name, bytes }: Piece): Blob => new Blob([new Uint8Array(bytes)], { type: photoType(name) })

/** Opens a file as a run of this browser, and goes there. Says why where it cannot. */
const openFile = async (
  file: File,
  base: string,
  store: Store,
  cards: ReadonlyMap<string, string>,
): Promise<string> => {
  const found = await runIn(file)
  if (!found) return `${file.name} does not hold one run as it is handed in.`
  // The reader of files is large, and few open one.
  const { reopenRun } = await import('../reopen.ts')
  const read = reopenRun(found.text)
  if (!read.ok) return `${file.name} cannot be opened: ${read.message}.`
  const { state, losses } = read
  const title = cards.get(state.card)
  if (title === undefined) return `${file.name} is of the card ${state.card}, which is not here.`
  const key = freshKey()
  // A browser that has the name already puts a number in brackets behind it.
  const known = found.name.replace(/(?: \(\d+\))?\.md$/i, '')
  for (const piece of found.beside) {
    const name = piece.name === state.data?.file ? DATA : photoKey(known, piece.name)
    await store.putFile(key, name, blobOf(piece))
  }
  await store.put({ ...blankRun(key, state.card), title, state, changed: Date.now(), known, losses })
  location.assign(`${base}record/${state.card}/?run=${key}`)
  return ''
}

const NOTHING_KEPT =
  'This browser keeps nothing beyond this page, so no run can be opened in it. Another browser, or one that is not private, can.'

/** `here`: key of the run that is on the page. `store` is null where the browser keeps nothing. */
export const begunList = (
  store: Store | null,
  base: string,
  cards: ReadonlyMap<string, string>,
  here = '',
): HTMLElement => {
  const list = h('div', { tabindex: -1 })
  const said = h('p', { role: 'status' })
  const input = h('input', { type: 'file', accept: '.md,.zip,text/markdown,application/zip' })
  input.addEventListener('change', () => {
    const [file] = input.files ?? []
    // The same file, put right, can be chosen again.
    input.value = ''
    if (!file) return
    const opening = store ? openFile(file, base, store, cards) : Promise.resolve(NOTHING_KEPT)
    opening
      .catch(
        () => `${file.name} could not be opened: it cannot be read, or the store of this browser is full.`,
      )
      .then((words) => {
        said.textContent = words
      })
  })
  const failed = (what: string) => (): void => {
    list.replaceChildren(h('p', { role: 'alert' }, `${what}. Load the page again.`))
  }
  const remove = async ({ key }: KeptRun): Promise<void> => {
    await store?.remove(key)
    await draw()
    list.focus()
  }
  const draw = async (): Promise<void> => {
    const runs = (await store?.all()) ?? []
    const others = runs.filter((run) => run.key !== here).sort((a, b) => b.changed - a.changed)
    const items = others.map((run) =>
      rowOf(run, base, () => void remove(run).catch(failed('The run could not be removed'))),
    )
    list.replaceChildren(
      ...(items.length > 0
        ? [h('p', {}, 'Begun in this browser:'), h('ul', { class: 'list begun' }, ...items)]
        : []),
    )
  }
  void draw().catch(failed('The runs that are kept in this browser cannot be read'))
  return h(
    'div',
    { class: 'begun-runs' },
    list,
    h(
      'details',
      {},
      h('summary', {}, 'Open a run that was handed in'),
      labelled({ label: 'File of the run (.md, or .zip with what goes beside it)' }, input),
      said,
    ),
  )
}
