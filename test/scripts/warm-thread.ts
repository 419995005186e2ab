/** The thread of `warm.ts`: one call after the other, each with arguments, environment and outputs of its own. */
import module from 'node:module'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import { type MessagePort, workerData } from 'node:worker_threads'
import type { Call, Called } from './warm.ts'

type Given = { readonly port: MessagePort; readonly signal: Int32Array; readonly home: string }
const { port, signal, home }: Given = workerData

module.enableCompileCache(join(home, 'node_modules/.cache/compiled'))

const keepInto =
  (pieces: string[]): typeof process.stdout.write =>
  (piece) => {
    pieces.push(typeof piece === 'string' ? piece : Buffer.from(piece).toString())
    return true
  }

let calls = 0

const answer = async ({ command, args, env }: Call): Promise<Called> => {
  for (const name of Object.keys(process.env)) if (!(name in env)) delete process.env[name]
  Object.assign(process.env, env)
  const file = join(home, `scripts/${command}.ts`)
  process.argv.splice(0, process.argv.length, process.execPath, file, ...args)
  process.exitCode = 0
  const out: string[] = []
  const err: string[] = []
  process.stdout.write = keepInto(out)
  process.stderr.write = keepInto(err)
  try {
    calls += 1
    // The question makes the script itself a new module, which runs; what it imports is there already.
    await import(`${pathToFileURL(file).href}?call=${calls}`)
  } catch (error) {
    err.push(error instanceof Error ? (error.stack ?? error.message) : String(error))
    process.exitCode = 1
  }
  return { status: Number(process.exitCode), stdout: out.join(''), stderr: err.join('') }
}

port.on('message', async (call: Call) => {
  port.postMessage(await answer(call))
  Atomics.store(signal, 0, 1)
  Atomics.notify(signal, 0)
})
