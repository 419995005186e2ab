/**
 * Commands run in a thread that stays: their modules are loaded once a test file, not once a call. What a program of
 * its own is for (starting, what is left in memory by the call before) is tested with true processes beside it.
 */
import { join, resolve } from 'node:path'
import { MessageChannel, type MessagePort, receiveMessageOnPort, Worker } from 'node:worker_threads'

export type Call = {
  readonly command: string
  readonly args: readonly string[]
  readonly env: NodeJS.ProcessEnv
}
export type Called = { readonly status: number | null; readonly stdout: string; readonly stderr: string }

const LONGEST_MS = 60_000

const home = resolve(import.meta.dirname, '../..')
const signal = new Int32Array(new SharedArrayBuffer(4))
let started: MessagePort | undefined

const start = (): MessagePort => {
  const { port1, port2 } = new MessageChannel()
  const thread = new Worker(join(import.meta.dirname, 'warm-thread.ts'), {
    workerData: { port: port2, signal, home },
    transferList: [port2],
    execArgv: [],
  })
  thread.unref()
  port1.unref()
  return port1
}

/** Runs `scripts/<command>.ts` and waits for its end; throws where there is none. Paths are those of this repository. */
export const callWarm = (command: string, args: readonly string[], env: NodeJS.ProcessEnv): Called => {
  started ??= start()
  Atomics.store(signal, 0, 0)
  started.postMessage({ command, args, env: { ...env } } satisfies Call)
  if (Atomics.wait(signal, 0, 0, LONGEST_MS) === 'timed-out') throw new Error(`${command} never ended`)
  const called: Called | undefined = receiveMessageOnPort(started)?.message
  if (!called) throw new Error(`${command} gave no answer`)
  return called
}
