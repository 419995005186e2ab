/**
 * Every run of the demo that has its readings in a table gives the same to the last digit when a logger has them: other
 * names, semicolons, decimal commas, UTF-16, lines above. What is compared with is the table itself.
 */
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { openCampaign } from '../../src/campaign/node/open.ts'
import type { Campaign } from '../../src/campaign/types.ts'
import { campaign as asWritten, expected, root } from './harness.ts'

const folder = mkdtempSync(join(tmpdir(), 'logger-'))
afterAll(() => rmSync(folder, { recursive: true, force: true }))

const tables = asWritten.runs.filter((run) => run.record.readings.file === undefined)

const utf16 = (text: string): Buffer => Buffer.from(`\uFEFF${text}`, 'utf16le')

/** The run with its table replaced by the options of a data file, and that file. */
const asLogger = (text: string, id: string, names: readonly string[], units: readonly string[]) => {
  const lines = text.split('\n')
  const start = lines.findIndex((line) => line.startsWith('readings: |'))
  const end = lines.findIndex((line, index) => index > start && line.trim() !== '' && !line.startsWith('  '))
  const columns = names.map(
    (name, at) => `    ${name}: {from: "Kanal ${at} (${name})", unit: "${units[at]}"}`,
  )
  const block = ['readings:', `  file: ${id}.txt`, '  columns:', ...columns, '  decimal: ","', '  skip: 3']
  return [...lines.slice(0, start), ...block, ...lines.slice(end)].join('\n')
}

const dataOf = (run: (typeof tables)[number]): string => {
  const { columns, rows } = run.record.readings
  const cell = (text: string, words: boolean) =>
    words ? `"${text.replaceAll('"', '""')}"` : text.replace('.', ',')
  const table = Array.from({ length: rows }, (_, row) =>
    columns.map((column) => cell(column.cells[row] ?? '', column.text)).join(';'),
  )
  const head = columns.map(({ name }, at) => `Kanal ${at} (${name})`).join(';')
  return ['Datenlogger, erfunden', 'Anlage;7', '', head, ...table, ''].join('\r\n')
}

let logged: Campaign

beforeAll(async () => {
  for (const each of ['records', 'shared']) cpSync(join(root, each), join(folder, each), { recursive: true })
  for (const run of tables) {
    const { path } = run.record.source
    const { columns } = run.record.readings
    const names = columns.map(({ name }) => name)
    const units = columns.map(({ unit }) => unit)
    const text = readFileSync(join(folder, path), 'utf8')
    writeFileSync(join(folder, path), asLogger(text, run.id, names, units))
    writeFileSync(join(folder, path.replace(/\.md$/, '.txt')), utf16(dataOf(run)))
  }
  logged = (await openCampaign(folder, 'test', expected.asOf, { history: false })).campaign
})

it('reads them without a problem', () => {
  expect(tables.length).toBeGreaterThan(50)
  expect(logged.problems).toEqual(asWritten.problems)
})

it.each(tables.map(({ id }) => id))('%s', (id) => {
  const before = asWritten.runs.find((run) => run.id === id)
  const after = logged.runs.find((run) => run.id === id)
  expect(after?.record.readings.file).toBe(`${id}.txt`)
  expect(after?.computed?.measures).toEqual(before?.computed?.measures)
  expect(after?.computed?.derived).toEqual(before?.computed?.derived)
  expect(after?.verdict).toBe(before?.verdict)
  expect(after?.reasons).toEqual(before?.reasons)
})
