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
}

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
  let looking: ((found: FileFound) => void) | null = null
  const next = (): void => {
    if (busy || !waiting) return
    busy = true
    send({ is: 'preview', state: waiting, taken })
    waiting = null
  }
  worker.addEventListener('message', ({ data }: MessageEvent<Answer>) => {
    if (data.is === 'found') {
      looking?.(data.found)
      return
    }
    busy = false
    if (data.is === 'failed') failed(data.message)
    else show(data.preview)
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
    lookAt: (bytes, state) =>
      new Promise((found) => {
        looking = found
        send({ is: 'look', bytes, state }, [bytes])
      }),
  }
}
