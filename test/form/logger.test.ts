/** A logger file taken in the form: the run says of it what the reader needs, and the same comes out as typed. */
import { describe, expect, it } from 'vitest'
import { plannedSchema } from '../../src/campaign/schema.ts'
import { dataEnding, dataFields, fileLines, foundAgain, lookAt, readAll } from '../../src/form/logger.ts'
import { runId } from '../../src/form/name.ts'
import { previewRun } from '../../src/form/preview.ts'
import { reopenRun } from '../../src/form/reopen.ts'
import { runText } from '../../src/form/write.ts'
import { decodePieces } from '../../src/format/logger/decode.ts'
import type { KeptScans } from '../../src/format/logger/kept.ts'
import { campaign } from '../demo/harness.ts'
import { methods, pack, textOf } from './demo.ts'

const ID = '2026-02-05-0935-hull-bay-leak-bay-1'
const typed = reopenRun(textOf(`records/runs/2026-02/${ID}.md`))
if (!typed.ok) throw new Error(typed.message)
const { state } = typed
const card = campaign.records.cards[state.card]
const method = card && methods[card.method]
if (!card || !method) throw new Error('no card')
const fields = plannedSchema(method, card).columns

/** The same readings as an export with a preamble, semicolons, decimal commas and a mark for what is missing. */
const file = [
  'Logger 7;Halle 2',
  '',
  'time;pressure;temperature;baro',
  'min;Pa;°C;hPa',
  ...state.rows.map((row) =>
    row
      .slice(0, 4)
      .map((cell) => cell.replace('.', ','))
      .join(';'),
  ),
].join('\r\n')

describe('an export of the readings of a run', () => {
  const text = decodePieces([new TextEncoder().encode(file)])
  const found = lookAt(text, fields)
  const name = `${runId(state)}.csv`
  const withFile = { ...state, data: dataFields(name, found, found.chosen) }
  const beside = { ...text, name }

  it('is understood without a question', () => {
    expect(found.questions).toEqual([])
    expect(found).toMatchObject({ decimal: ',', delimiter: ';', skip: 2 })
    expect(Object.keys(found.chosen)).toEqual(['time', 'pressure', 'temperature', 'baro'])
  })
  it('keeps what the run says beside the columns, when they are chosen again', () => {
    const { pressure } = found.chosen
    const written = {
      ...dataFields(name, found, found.chosen),
      columns: { pressure: { from: 'pressure', unit: 'hPa', scale: '2' } },
      decimal: '.',
      missing: ['OL'],
      use: { from: '10 min' },
    }
    const again = foundAgain(found, written)
    expect(again.chosen).toEqual({ ...found.chosen, pressure: { ...pressure, unit: 'hPa' } })
    const fields = dataFields(name, again, again.chosen, written)
    expect(fields).toMatchObject({ decimal: '.', missing: ['OL'], use: { from: '10 min' } })
    expect(fields.columns).toMatchObject({ pressure: { from: 'pressure', unit: 'hPa', scale: '2' } })
    // A scale belongs to the column of the file that it was written for.
    const other = dataFields(name, again, { pressure: { from: 'baro', unit: 'hPa', format: '' } }, written)
    expect(other.columns).toEqual({ pressure: { from: 'baro', unit: 'hPa' } })
  })
  it('gives what the typed readings give', () => {
    const fromFile = previewRun(pack, methods, withFile, [], beside)
    const fromTable = previewRun(pack, methods, state, [])
    expect(fromFile.findings).toEqual([])
    expect(fromFile.measures).toEqual(fromTable.measures)
    expect(fromFile.measures.length).toBeGreaterThan(4)
    expect(fromFile.verdict).toBe(fromTable.verdict)
  })
  it('gives the same where its columns were read before, and leaves them as they were', () => {
    const keeping = { ...text, kept: new Map() as KeptScans }
    readAll(keeping)
    const before = structuredClone(keeping.kept)
    const withKept = { ...beside, kept: keeping.kept }
    const bare = previewRun(pack, methods, withFile, [], beside)
    expect(previewRun(pack, methods, withFile, [], withKept)).toEqual(bare)
    expect(previewRun(pack, methods, withFile, [], withKept)).toEqual(bare)
    expect(keeping.kept).toEqual(before)
    expect([...before.values()].map(({ columns }) => columns.size)).toEqual([4])
  })
  it('is told line by line, of all its rows', () => {
    const lines = fileLines(text)
    expect(lines[0]).toBe(`UTF-8, ${state.rows.length} rows`)
    const pressure = state.rows[0]?.[1] ?? ''
    expect(pressure).not.toBe('')
    expect(lines.find((line) => /^2 .*pressure/.test(line))).toContain(pressure.replace('.', ','))
  })
  it('stands in the file with a line for each column, and comes back', () => {
    const written = runText(withFile)
    expect(written).toContain(
      '\n  columns:\n    time: {from: time, unit: min}\n    pressure: {from: pressure, unit: Pa}\n',
    )
    const again = reopenRun(written)
    expect(again.ok && again.losses).toEqual([])
    expect(again.ok && runText(again.state)).toBe(written)
  })
  it('without its file, or with a column that is not there, says so at its control', () => {
    expect(previewRun(pack, methods, withFile, []).findings.map(({ spot }) => spot)).toEqual([
      'readings.file',
    ])
    const wrong = {
      ...withFile,
      data: dataFields(name, found, { ...found.chosen, pressure: { from: 'P9', unit: 'Pa', format: '' } }),
    }
    expect(previewRun(pack, methods, wrong, [], beside).findings.map(({ spot }) => spot)).toEqual([
      'readings.columns.pressure',
    ])
  })
})

it('what is no text of readings is said in words', () => {
  const found = lookAt(decodePieces([new Uint8Array([0x50, 0x4b, 3, 4, 0, 0, 0, 1, 2, 3])]), fields)
  expect(found.columns).toEqual([])
  expect(found.questions.length).toBeGreaterThan(0)
  expect(fileLines(decodePieces(['']))).toEqual([])
})

it('keeps an ending that readers take', () => {
  expect(['a.TXT', 'b.dat', 'c.xlsx', 'd'].map(dataEnding)).toEqual(['txt', 'dat', 'csv', 'csv'])
})
