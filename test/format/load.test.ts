import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { afterAll, expect, test } from 'vitest'
import { loadRecords } from '../../src/format/node/load.ts'
import { readRecords } from '../../src/format/records.ts'
import { BASE, campaign, changed, RUN, SCHEMAS } from './base.ts'

const root = mkdtempSync(join(tmpdir(), 'campaign-'))
afterAll(() => rmSync(root, { recursive: true }))

const write = (path: string, content: string | Uint8Array) => {
  mkdirSync(dirname(join(root, path)), { recursive: true })
  writeFileSync(join(root, path), content)
}

for (const [path, text] of Object.entries(BASE)) write(path, text)

test('a campaign on disk reads as it does from memory', () => {
  const loaded = loadRecords(root, SCHEMAS)
  expect(loaded.problems).toEqual([])
  expect(Object.keys(loaded.records.runs)).toEqual(Object.keys(readRecords(campaign(), SCHEMAS).records.runs))
  expect(loaded.exists.has(RUN)).toBe(true)
})

test('bytes that are not UTF-8 and links to nowhere are problems of their own', () => {
  write('records/items/latin.md', Uint8Array.from([45, 45, 45, 10, 116, 58, 32, 0xb0, 10, 45, 45, 45, 10]))
  symlinkSync(join(root, 'gone.md'), join(root, 'records/items/link.md'))
  const { problems, records } = loadRecords(root, SCHEMAS)
  expect(problems.map(({ code, at }) => `${at.file}:${at.line}:${at.column} ${code}`)).toEqual([
    'records/items/latin.md:2:4 file/encoding',
    'records/items/link.md:1:1 file/unreadable',
  ])
  expect(Object.keys(records.runs)).toHaveLength(1)
})

test('a folder without records gives a problem and no throw', () => {
  const { problems } = loadRecords(join(root, 'nowhere'), SCHEMAS)
  expect(problems.map((problem) => problem.code)).toEqual(['file/not-there', 'file/not-there'])
})

test('what refers to a broken file is kept and not blamed', () => {
  const card = changed('shared/cards/spring-pull.md', 'method: spring', 'method: sprig')
  const { records, problems } = readRecords(campaign(card), SCHEMAS)
  expect(problems).toHaveLength(1)
  expect(Object.keys(records.cards)).toEqual(['spring-proof'])
  expect(Object.keys(records.runs)).toHaveLength(1)
  expect(records.seen.filter((file) => file.broken).map((file) => file.path)).toEqual([
    'shared/cards/spring-pull.md',
  ])
})

test('all mistakes of all files come in one go', () => {
  const wrong = {
    ...changed(RUN, 'T09:12+01:00', ''),
    ...changed('shared/people.yaml', 'roles: [record]', 'roles: [recorder]'),
    ...changed('shared/gates/taxi.md', 'order: 2', 'order: two'),
  }
  const twice = { ...wrong, [RUN]: (wrong[RUN] ?? '').replace('by: [moduya]', 'by: []') }
  const codes = readRecords(campaign(twice), SCHEMAS).problems.map((problem) => problem.code)
  expect(codes.sort()).toEqual(['field/choice', 'field/empty', 'field/number', 'time/bare-date'])
})

test('`begins` of the campaign is any text, and need not be there', () => {
  const settings = (to: string) =>
    readRecords(campaign(changed('shared/campaign.yaml', 'main: main', `main: main${to}`)), SCHEMAS)
  expect(settings('').records.settings.begins).toBeUndefined()
  expect(settings('\nbegins: 2026-11-25').records.settings.begins).toBe('2026-11-25')
  expect(settings('\nbegins: with the second wing').problems).toEqual([])
  expect(settings('\nbegins: []').problems.map(({ code }) => code)).toEqual(['field/shape'])
})

test('1,000 runs are read and checked in well under 1.5 s of a quiet machine', () => {
  const files = campaign()
  const text = (BASE[RUN] ?? '').replace('fitted: [{id: pin, what: rigging pin}]\n', '')
  for (let i = 0; i < 1000; i++) {
    const when = new Date(Date.UTC(2027, 0, 1, i)).toISOString()
    const path = `records/runs/${when.slice(0, 7)}/${when.slice(0, 10)}-${when.slice(11, 13)}12-spring-pull.md`
    files.push({ path, text: text.replace('2026-03-04T09', when.slice(0, 13)) })
  }
  const start = performance.now()
  const { problems, records } = readRecords(files, SCHEMAS)
  expect(problems).toEqual([])
  expect(Object.keys(records.runs)).toHaveLength(1001)
  // Other tests run beside this one: the bound is loose, `npm run bench` measures.
  expect(performance.now() - start).toBeLessThan(6000)
})
