/** Reading and computing beside the page, so that the page never waits. */
import { plannedSchema } from '../../campaign/schema.ts'
import { decodePieces } from '../../format/logger/decode.ts'
import type { LoggerText } from '../../format/logger/types.ts'
import type { ColumnField, Method } from '../../methods/method.ts'
import { loadMethod } from '../../methods/registry.web.ts'
import { prepareFormulas } from '../../quantity/formula/index.ts'
import { cardsNeeded, methodOf, type Pack, takeRun } from '../desk.ts'
import { type FileFound, fileLines, lookAt, readAll } from '../logger.ts'
import { type Beside, type Preview, previewRun } from '../preview.ts'
import type { RunState } from '../state.ts'
import { runText } from '../write.ts'

export type Order =
  | { readonly is: 'begin'; readonly pack: Pack }
  /** The data file of a run that is opened again. */
  | { readonly is: 'data'; readonly bytes: ArrayBuffer }
  | { readonly is: 'look'; readonly number: number; readonly bytes: ArrayBuffer; readonly state: RunState }
  /** What is in the file that was looked at last. */
  | { readonly is: 'lines'; readonly number: number }
  | { readonly is: 'preview'; readonly state: RunState; readonly taken: readonly string[] }

export type Answer =
  | { readonly is: 'preview'; readonly preview: Preview }
  | { readonly is: 'found'; readonly number: number; readonly found: FileFound }
  | { readonly is: 'lines'; readonly number: number; readonly lines: readonly string[] }
  /** With the number of the order, where it had one. */
  | { readonly is: 'failed'; readonly number?: number; readonly message: string }

let pack: Pack = { revision: { commit: null, day: '', digest: '' }, files: [] }
/** The data file that was looked at last, or that came with the run. */
let data: LoggerText | null = null

/** What is scanned for the look, or before a column is chosen, is not scanned again for each preview. */
const textOf = (bytes: ArrayBuffer): LoggerText => ({
  ...decodePieces([new Uint8Array(bytes)]),
  kept: new Map(),
})
const methods: Record<string, Method> = {}

/** Fetches the methods that the run needs and that are not here yet. */
const prepare = async (text: string): Promise<void> => {
  await prepareFormulas()
  const wanted = cardsNeeded(pack, text).map((card) => methodOf(pack, card))
  for (const id of wanted.filter((id) => id !== '' && !methods[id])) {
    const method = await loadMethod(id)
    if (method) methods[id] = method
  }
}

const fieldsOf = (state: RunState): readonly ColumnField[] => {
  const path = 'records/runs/0000-00/look.md'
  const { records } = takeRun(pack, methods, { path, text: runText(state), beside: [] })
  const card = records.cards[state.card]
  const method = card && methods[card.method]
  return card && method ? plannedSchema(method, card).columns : []
}

const tell = (answer: Answer): void => self.postMessage(answer)

const answer = async (order: Order): Promise<void> => {
  if (order.is === 'begin') pack = order.pack
  else if (order.is === 'data') data = textOf(order.bytes)
  else if (order.is === 'look') {
    await prepare(runText(order.state))
    data = textOf(order.bytes)
    tell({ is: 'found', number: order.number, found: lookAt(data, fieldsOf(order.state)) })
    // While somebody chooses columns: what is asked for then has been read.
    readAll(data)
  } else if (order.is === 'lines') {
    tell({ is: 'lines', number: order.number, lines: data ? fileLines(data) : [] })
  } else {
    await prepare(runText(order.state))
    const { state, taken } = order
    const name = state.data?.file
    const beside: Beside = data && typeof name === 'string' ? { ...data, name } : null
    const preview = previewRun(pack, methods, state, taken, beside)
    tell({ is: 'preview', preview })
  }
}

self.addEventListener('message', (event: MessageEvent<Order>) => {
  const { data: order } = event
  answer(order).catch((error: unknown) => {
    const message = error instanceof Error ? error.message : String(error)
    tell({ is: 'failed', message, ...('number' in order ? { number: order.number } : {}) })
  })
})
