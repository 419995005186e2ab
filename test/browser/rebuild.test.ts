/** The set of pages is the set of files, caches or not; and the same records give the same bytes in any time zone. */
import { spawnSync } from 'node:child_process'
import { createHash } from 'node:crypto'
import { cpSync, mkdtempSync, readdirSync, readFileSync, renameSync, rmSync, statSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'

const home = resolve(import.meta.dirname, '../..')
const root = mkdtempSync(join(tmpdir(), 'records-'))
const out = mkdtempSync(join(tmpdir(), 'site-'))

const build = (folder: string, zone: string): void => {
  const args = ['scripts/run.mjs', 'build', '--root', root, '--as-of', '2026-04-15', '--out', folder]
  const env = { ...process.env, TZ: zone, VIEWS_FILE: join(out, 'views.json') }
  const { status, stderr } = spawnSync(process.execPath, args, { cwd: home, env, encoding: 'utf8' })
  if (status !== 0) throw new Error(stderr)
}

const filesBelow = (folder: string): string[] =>
  readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((file) =>
    statSync(join(folder, file)).isFile(),
  )

/** Every file of a site by its content. */
const fingerprint = (folder: string): string[] =>
  filesBelow(folder)
    .sort()
    .map(
      (file) =>
        `${file} ${createHash('sha256')
          .update(readFileSync(join(folder, file)))
          .digest('hex')}`,
    )

const runPages = (folder: string): string[] =>
  readdirSync(join(folder, 'runs'), { withFileTypes: true })
    .filter((entry) => entry.isDirectory())
    .map((entry) => entry.name)
    // Many runs are listed by month, the months in a folder of their own.
    .filter((name) => name !== 'month')
    .sort()

const runFiles = (): string[] =>
  filesBelow(join(root, 'records/runs'))
    .filter((file) => file.endsWith('.md'))
    .map((file) => file.replace(/^.*[\\/]/, '').replace(/\.md$/, ''))
    .sort()

beforeAll(() => {
  for (const folder of ['records', 'shared'])
    cpSync(join(home, folder), join(root, folder), { recursive: true })
  build(join(out, 'utc'), 'UTC')
}, 120_000)

afterAll(() => {
  for (const folder of [root, out]) rmSync(folder, { recursive: true, force: true })
})

describe('the built site', () => {
  it.each(['America/Denver', 'Asia/Tokyo'])(
    'has the same bytes under TZ=%s as under UTC',
    (zone) => {
      const folder = join(out, zone.replace('/', '-'))
      build(folder, zone)
      expect(fingerprint(folder)).toEqual(fingerprint(join(out, 'utc')))
    },
    120_000,
  )

  it('has a page for each run, and none more after one was deleted and another renamed', () => {
    expect(runPages(join(out, 'utc'))).toEqual(runFiles())
    const folder = join(root, 'records/runs/2026-02')
    rmSync(join(folder, '2026-02-06-0900-hull-bay-leak-bay-3.md'))
    renameSync(
      join(folder, '2026-02-10-0850-hull-bay-leak-bay-3.md'),
      join(folder, '2026-02-10-0850-hull-bay-leak-bay-3-again.md'),
    )
    build(join(out, 'utc'), 'UTC')
    expect(runPages(join(out, 'utc'))).toEqual(runFiles())
    expect(runFiles()).toContain('2026-02-10-0850-hull-bay-leak-bay-3-again')
  }, 120_000)
})
