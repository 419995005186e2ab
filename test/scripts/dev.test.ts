/** `dev` as people use it: a save is at its address some seconds later; a broken file is said, and breaks nothing. */
import { type ChildProcess, spawn } from 'node:child_process'
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { createServer } from 'node:net'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { afterAll, beforeAll, expect, it } from 'vitest'

const home = resolve(import.meta.dirname, '../..')
const root = mkdtempSync(join(tmpdir(), 'dev-'))
const ID = '2026-02-19-0910-tank-leak-left'
const RUN = join(root, `records/runs/2026-02/${ID}.md`)

/** A machine that does other things as well; alone it takes two or three. */
const LONGEST_MS = 90_000

let running: ChildProcess
let printed = ''
let address = ''

/** The environment of a shell: what the test runner adds to it must not reach the server. */
const shell = (): NodeJS.ProcessEnv =>
  Object.fromEntries(
    Object.entries(process.env).filter(
      ([name]) => !/^(?:VITEST|NODE_ENV|MODE|DEV|PROD|SSR|BASE_URL|TEST)/.test(name),
    ),
  )

const freePort = (): Promise<number> =>
  new Promise((found) => {
    const server = createServer().listen(0, () => {
      const place = server.address()
      const port = typeof place === 'object' && place ? place.port : 0
      server.close(() => found(port))
    })
  })

const until = async (what: string, holds: () => boolean | Promise<boolean>): Promise<void> => {
  const last = Date.now() + LONGEST_MS
  while (Date.now() < last) {
    if (await holds()) return
    await new Promise((later) => setTimeout(later, 200))
  }
  throw new Error(`never seen: ${what}\n${printed}`)
}

/** Empty while the server begins anew. */
const page = (path: string): Promise<string> =>
  fetch(`${address}${path}`)
    .then((answer) => answer.text())
    .catch(() => '')

/** Words of the stamps of the title block. */
const stamps = async (path: string): Promise<string[]> => {
  const [, block = ''] = /class="stamps"([\s\S]*?)<\/p>/.exec(await page(path)) ?? []
  return [...block.matchAll(/class="stamp [^"]*"[^>]*>\s*<span[^>]*>([^<]*)</g)].map(([, word = '']) => word)
}

beforeAll(async () => {
  for (const folder of ['records', 'shared'])
    cpSync(join(home, folder), join(root, folder), { recursive: true })
  const port = await freePort()
  address = `http://localhost:${port}/`
  const args = ['scripts/run.mjs', 'dev', '--root', root, '--port', String(port)]
  const env = { ...shell(), NO_COLOR: '1', VIEWS_FILE: join(root, 'views.json') }
  running = spawn(process.execPath, args, { cwd: home, env, stdio: ['ignore', 'pipe', 'pipe'] })
  const keep = (bytes: Buffer) => {
    printed += bytes.toString()
  }
  running.stdout?.on('data', keep)
  running.stderr?.on('data', keep)
  await until('the first page', () => printed.includes('follows each save'))
}, LONGEST_MS + 5000)

afterAll(() => {
  running.kill()
  rmSync(root, { recursive: true, force: true })
})

it(
  'shows the changed verdict at the address of the run, and a broken file as a problem',
  async () => {
    await until('the pass', async () => (await stamps(`runs/${ID}/`)).includes('pass'))
    const text = readFileSync(RUN, 'utf8')
    const began = Date.now()
    writeFileSync(RUN, text.replace('---\n', '---\nstopped: the hose slipped\n'))
    await until('the stopped run', async () => (await stamps(`runs/${ID}/`)).includes('stopped'))
    expect(await stamps(`runs/${ID}/`)).toContain('undetermined')
    console.info(`a save was shown after ${((Date.now() - began) / 1000).toFixed(1)} s`)

    printed = ''
    writeFileSync(RUN, text.replace('---\n', '---\nby: [\n'))
    await until('the problem on the terminal', () => printed.includes(`${ID}.md:`))
    await until('the problem on the front page', async () => (await page('')).includes('Files with errors'))
    expect(await page('handbook/problems/')).toContain(`${ID}.md`)
    expect(await page(`runs/${ID}/`)).not.toMatch(/\n\s+at .*:\d+:\d+/)
    expect(printed).not.toMatch(/^\s+at .*:\d+:\d+\)?$/m)

    writeFileSync(RUN, text)
    await until('the pass again', async () => (await stamps(`runs/${ID}/`)).includes('pass'))
    expect(running.exitCode).toBeNull()
  },
  4 * LONGEST_MS,
)
