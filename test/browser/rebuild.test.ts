/** The set of pages is the set of files, caches or not; and the same records give the same bytes in any time zone. */
import { createHash } from 'node:crypto'
import { cpSync, mkdtempSync, readdirSync, readFileSync, renameSync, rmSync, statSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { basename, join, resolve } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { buildSite } from './build.ts'
import { PLAIN } from './sites.ts'

const home = resolve(import.meta.dirname, '../..')
const root = mkdtempSync(join(tmpdir(), 'records-'))
const out = mkdtempSync(join(tmpdir(), 'site-'))
const site = join(out, 'site')
const views = join(out, 'views.json')

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

const runFiles = (records: string): string[] =>
  filesBelow(join(records, 'runs')).filter((file) => file.endsWith('.md'))

const idsOf = (files: readonly string[]): string[] => files.map((file) => basename(file, '.md')).sort()

beforeAll(() => buildSite(home, site, 'Asia/Tokyo', views), 120_000)

afterAll(() => {
  for (const folder of [root, out]) rmSync(folder, { recursive: true, force: true })
})

describe('the built site', () => {
  it('has the same bytes when it is built east of Greenwich as when it is built west of it', () => {
    expect(fingerprint(site).length).toBeGreaterThan(300)
    expect(fingerprint(site)).toEqual(fingerprint(PLAIN))
  })

  it('has a page for each run, and none more after most were deleted and one was renamed', () => {
    const records = join(home, 'records')
    expect(runFiles(records).length).toBeGreaterThan(50)
    expect(runPages(site)).toEqual(idsOf(runFiles(records)))

    for (const folder of ['records/runs', 'shared'])
      cpSync(join(home, folder), join(root, folder), { recursive: true })
    const copied = join(root, 'records')
    for (const file of runFiles(copied).filter((each) => !each.includes('hull-bay-leak')))
      rmSync(join(copied, 'runs', file))
    const [first = ''] = runFiles(copied).sort()
    renameSync(join(copied, 'runs', first), join(copied, 'runs', first.replace(/\.md$/, '-again.md')))
    buildSite(root, site, 'UTC', views)
    expect(runPages(site)).toEqual(idsOf(runFiles(copied)))
    expect(runPages(site)).toContain(`${basename(first, '.md')}-again`)
    expect(runPages(site).length).toBeLessThan(20)
  }, 120_000)
})
