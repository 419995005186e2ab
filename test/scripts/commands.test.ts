/** The commands: what they print, where, and their exit status; of each way at least one as a process of its own. */
import { spawnSync } from 'node:child_process'
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import expected from '../demo/expected.json' with { type: 'json' }
import { callWarm } from './warm.ts'

const home = resolve(import.meta.dirname, '../..')
const root = mkdtempSync(join(tmpdir(), 'commands-'))

const environment = { ...process.env, GITHUB_ACTIONS: '', NO_COLOR: '1' }
const call = (command: string, ...args: string[]) => callWarm(command, ['--root', root, ...args], environment)

/** The same as people call it: a process of its own. */
const program = (command: string, ...args: string[]) => {
  const { status, stdout, stderr } = spawnSync(
    process.execPath,
    ['scripts/run.mjs', command, '--root', root, ...args],
    { cwd: home, encoding: 'utf8', env: environment },
  )
  return { status, stdout, stderr }
}

const day = ['--as-of', '2026-04-15']
const bad = join(root, 'shared/instruments/pg-99.md')

beforeAll(() => {
  for (const folder of ['records', 'shared'])
    cpSync(join(home, folder), join(root, folder), { recursive: true })
})
afterAll(() => rmSync(root, { recursive: true, force: true }))

describe('a command that reads a campaign says where none is', () => {
  it.each([['check'], ['approve', '--list'], ['reviews'], ['overtakes', 'wing-left'], ['new', 'x']])(
    '%s',
    (command, ...args) => {
      const { status, stderr } = call(command, ...args, '--root', join(root, 'nowhere'))
      expect(status).toBe(2)
      expect(stderr).toContain('nowhere holds neither records/ nor shared/.')
    },
  )
})

describe('check', () => {
  it('prints one JSON object and nothing else, and a failing verdict is no error', () => {
    const { status, stdout, stderr } = program('check', '--json', ...day)
    expect(stderr).toBe('')
    expect(status).toBe(0)
    expect(JSON.parse(stdout)).toMatchObject({
      schema: 1,
      // The copy lies in no repository.
      problems: [{ code: 'history/unknown', severity: 'warning' }],
    })
  })
  it('asks about one gate with its exit status', () => {
    expect(call('check', '--gate', 'first-water', ...day).status).toBe(0)
    expect(call('check', '--gate', 'first-flight', ...day).status).toBe(3)
  })
  it('complains about a wrong call on the error output, with status 2', () => {
    for (const args of [['--jsn'], ['--gate', 'nowhere'], ['--as-of', '2026-02-30'], ['something']]) {
      const { status, stdout, stderr } = call('check', ...args)
      expect(status, args.join(' ')).toBe(2)
      expect(stdout).toBe('')
      expect(stderr).not.toMatch(/^\s+at /m)
      expect(stderr.length).toBeGreaterThan(20)
    }
  })
  it('says what is wrong in a file with status 1, and still gives all other results', () => {
    writeFileSync(bad, '---\ntitle: Gauge\nkind: gauge\nserial: X\nresolutoin: 1 Pa\n---\n')
    const { status, stdout } = call('check', ...day)
    rmSync(bad)
    expect(status).toBe(1)
    expect(stdout).toContain('shared/instruments/pg-99.md:5:1  error  field/unknown')
    const { runs } = expected
    const passes = Object.values(runs).filter((run) => run.verdict === 'pass').length
    expect(stdout).toContain(`${Object.keys(runs).length} runs: ${passes} pass`)
  })
  it('explains itself', () => {
    const { status, stdout } = program('check', '--help')
    expect(status).toBe(0)
    expect(stdout).toContain('--gate')
  })
})

describe('new', () => {
  const at = ['--at', '2026-04-16T09:10+02:00']
  it('writes a run in its place and never over another', () => {
    const first = program('new', 'tank-leak', '--article', 'wing-left/tank', '--by', 'mlindqvist', ...at)
    expect(first.status).toBe(0)
    const file = join(root, 'records/runs/2026-04/2026-04-16-0910-tank-leak-wing-left-tank.md')
    const text = readFileSync(file, 'utf8')
    expect(text).toContain('card: tank-leak')
    expect(text).toMatch(/time +pressure +temperature +baro/)
    const again = call('new', 'tank-leak', '--article', 'wing-left/tank', ...at)
    expect(again.status).toBe(2)
    expect(readFileSync(file, 'utf8')).toBe(text)
    rmSync(file)
  })
  it('helps with a card that is not known, and with an article that is not named', () => {
    expect(call('new', 'tank-leek', ...at).stderr).toContain('tank-leak')
    expect(call('new', 'tank-leak', ...at).stderr).toContain('--article')
    expect(call('new', ...at).status).toBe(2)
  })
})
