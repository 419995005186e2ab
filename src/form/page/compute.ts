/** The way to the worker: of previews only the newest is asked for, one at a time. */
import type { Pack } from '../desk.ts'
import type { FileFound } from '../logger.ts'
import type { Preview } from '../preview.ts'
import type { RunState } from '../state.ts'
import type { Answer, Order } from './worker.web.ts'

export type Computer = {
  readonly ask: (state: RunState) => void
  /** Bytes of the data file beside the run. */
  readonly data: (bytes: ArrayBuffer) => void
  /** Looks at a file, which is the data file from then on. */
  readonly lookAt: (bytes: ArrayBuffer, state: RunState) => Promise<FileFound>
  /** What is in the file that was looked at last, line by line. */
  readonly fileLines: () => Promise<readonly string[]>
}

type Asked = { readonly answered: (answer: Answer) => void; readonly refused: (error: Error) => void }

export const createComputer = (
  worker: Worker,
  pack: Pack,
  taken: readonly string[],
  show: (preview: Preview) => void,
  failed: (message: string) => void,
): Computer => {
  const send = (order: Order, moved: readonly ArrayBuffer[] = []): void =>
    worker.postMessage(order, [...moved])
  let waiting: RunState | null = null
  let busy = false
  /** By number of the order, so that no answer is taken for that of another. */
  const asked = new Map<number, Asked>()
  let last = 0
  const answerTo = (order: (number: number) => Order, moved?: readonly ArrayBuffer[]): Promise<Answer> =>
    new Promise((answered, refused) => {
      last += 1
      asked.set(last, { answered, refused })
      send(order(last), moved)
    })
  const take = (number: number, answer: Answer): void => {
    const order = asked.get(number)
    asked.delete(number)
    if (answer.is === 'failed') order?.refused(new Error(answer.message))
    else order?.answered(answer)
  }
  const next = (): void => {
    if (busy || !waiting) return
    busy = true
    send({ is: 'preview', state: waiting, taken })
    waiting = null
  }
  worker.addEventListener('message', ({ data }: MessageEvent<Answer>) => {
    if ('number' in data && data.number !== undefined) {
      take(data.number, data)
      return
    }
    busy = false
    if (data.is === 'failed') failed(data.message)
    else if (data.is === 'preview') show(data.preview)
    next()
  })
  worker.addEventListener('error', (event) => {
    busy = false
    failed(event.message || 'the computation could not be loaded')
  })
  send({ is: 'begin', pack })
  return {
    ask: (state) => {
      waiting = state
      next()
    },
    data: (bytes) => send({ is: 'data', bytes }, [bytes]),
    lookAt: async (bytes, state) => {
      const answer = await answerTo((number) => ({ is: 'look', number, bytes, state }), [bytes])
      if (answer.is !== 'found') throw new Error('the file was not looked at')
      return answer.found
    },
    fileLines: async () => {
      const answer = await answerTo((number) => ({ is: 'lines', number }))
      return answer.is === 'lines' ? answer.lines : []
    },
  }
}
