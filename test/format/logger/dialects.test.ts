/** A log in any dialect gives the readings that went in: exactly those of the same rows as a table in the run. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { decodePieces } from '../../../src/format/logger/decode.ts'
import { readLogger } from '../../../src/format/logger/read.ts'
import { survey } from '../../../src/format/logger/survey.ts'
import type { LoggerOptions } from '../../../src/format/logger/types.ts'
import { readReadings } from '../../../src/format/readings.ts'
import { readTable } from '../../../src/format/table.ts'
import { encode, type Row, timeText, type Way, writeLog } from './write.ts'

const number = fc
  .tuple(fc.integer({ min: -99_999, max: 99_999 }), fc.constantFrom(1, 2, 4))
  .map(([figures, places]) => (figures / 10 ** places).toFixed(places))

/** Steps of a second to 11 hours: a clock without a date passes midnight and is understood. */
const rows: fc.Arbitrary<Row[]> = fc
  .array(
    fc.record({ step: fc.integer({ min: 0, max: 39_600 }), load: fc.option(number), temperature: number }),
    { minLength: 2, maxLength: 25 },
  )
  .chain((steps) =>
    fc.integer({ min: 0, max: 86_399 }).map((first) => {
      let seconds = first
      return steps.map(({ step, load, temperature }, index): Row => {
        if (index > 0) seconds += step
        return { seconds, load, temperature }
      })
    }),
  )

const ways: fc.Arbitrary<Way> = fc.record({
  encoding: fc.constantFrom(
    'UTF-8' as const,
    'UTF-16 LE' as const,
    'UTF-16 BE' as const,
    'Windows-1252' as const,
  ),
  mark: fc.boolean(),
  delimiter: fc.constantFrom(';' as const, '\t' as const, '|' as const, ',' as const),
  decimal: fc.constantFrom('.' as const, ',' as const),
  end: fc.constantFrom('\n' as const, '\r\n' as const, '\r' as const),
  preamble: fc.constantFrom([], ['Log 7'], ['Gerät: A 12', '', 'Kanäle;2', 'Start: 04.03.2026']),
  units: fc.boolean(),
  quoted: fc.boolean(),
  trailing: fc.boolean(),
  closed: fc.boolean(),
  format: fc.constantFrom(
    'HH:mm:ss',
    'DD.MM.YYYY HH:mm:ss',
    'ISO',
    'M/D/YYYY h:mm:ss A',
    'YYYY-MM-DD HH:mm:ss',
  ),
  missing: fc.constantFrom('OL', '----', 'Overrange', '-'),
})

const optionsFor = (way: Way, said: boolean): LoggerOptions => ({
  columns: {
    time: { from: 'Zeit', format: way.format },
    load: { from: 'Kraft [N]', unit: 'N' },
    temperature: { from: 'Temp.', unit: '°C' },
    remark: { from: 'Status', unit: 'text' },
  },
  missing: [way.missing],
  ...(said ? { decimal: way.decimal, delimiter: way.delimiter, skip: way.preamble.length } : {}),
})

const asTable = (rows: readonly Row[]) => {
  const lines = rows.map(
    ({ seconds, load, temperature }) => `${timeText(seconds, 'HH:mm:ss')} ${load ?? '-'} ${temperature} ok`,
  )
  const read = readReadings(
    readTable(`time load temperature remark\nhh:mm:ss N °C text\n${lines.join('\n')}`),
  )
  if (!read.ok) throw new Error(read.error[0]?.message)
  return read.value
}

const check = (rows: readonly Row[], way: Way, said: boolean, cut: number) => {
  const bytes = encode(writeLog(rows, way), way.encoding, way.mark)
  const pieces = [bytes.subarray(0, cut), bytes.subarray(cut)]
  const read = readLogger(optionsFor(way, said), decodePieces(pieces))
  if (!read.ok) throw new Error(read.error.map((fault) => fault.message).join('; '))
  const { columns } = read.value.readings
  for (const [index, expected] of asTable(rows).columns.entries()) {
    const { name, values, missing, digit, dim, text } = expected
    expect(columns[index]).toMatchObject({ name, values, missing, digit, dim, text })
  }
  expect(columns[3]?.cells).toEqual(rows.map(() => 'ok'))
  expect(columns[0]?.cells).toEqual(rows.map(({ seconds }) => timeText(seconds, way.format)))
}

describe('written in any way and read back', () => {
  test('as the run says it is written, the bytes in two pieces cut anywhere', () => {
    fc.assert(
      fc.property(rows, ways, fc.nat(200), (log, way, cut) => {
        check(log, way, true, cut)
      }),
      { numRuns: 200 },
    )
  })

  test('found by looking, where the file settles it', () => {
    fc.assert(
      fc.property(rows, ways, (log, way) => {
        // Three figures behind every comma would be asked about; none are written here.
        check(log, way, false, 0)
      }),
      { numRuns: 200 },
    )
  })

  test('cut at each byte of a file in UTF-16 and UTF-8', () => {
    const log: Row[] = [
      { seconds: 1, load: '1.5', temperature: '2.25' },
      { seconds: 2, load: null, temperature: '-2.5' },
    ]
    const way: Way = {
      encoding: 'UTF-8',
      mark: true,
      delimiter: ';',
      decimal: ',',
      end: '\r\n',
      preamble: [],
      units: true,
      quoted: false,
      trailing: false,
      closed: true,
      format: 'HH:mm:ss',
      missing: 'OL',
    }
    for (const encoding of ['UTF-8', 'UTF-16 LE', 'UTF-16 BE'] as const) {
      const { length } = encode(writeLog(log, way), encoding, true)
      for (let cut = 0; cut <= length; cut++) check(log, { ...way, encoding }, true, cut)
    }
  })
})

test('a survey finds encoding, signs, names, units, kinds and formats', () => {
  fc.assert(
    fc.property(rows, ways, (log, way) => {
      const found = survey(decodePieces([encode(writeLog(log, way), way.encoding, way.mark)]))
      const said = way.preamble.some((line) => /[äö]/.test(line)) || way.units
      if (way.encoding !== 'Windows-1252' || said) expect(found.encoding).toBe(way.encoding)
      expect(found).toMatchObject({
        delimiter: way.delimiter,
        hasNames: true,
        hasUnits: way.units,
        questions: [],
      })
      expect(found.skip).toBe(way.preamble.length)
      const [time, load, temperature, status] = found.columns
      expect(time?.formats).toContain(way.format.replace('M/D', 'MM/DD'))
      expect([time?.kind, temperature?.kind, status?.kind]).toEqual(['time', 'number', 'words'])
      expect(load).toMatchObject({ from: 'Kraft [N]', unit: 'N' })
      if (log.some((row) => row.load !== null)) expect(found.decimal).toBe(way.decimal)
    }),
    { numRuns: 150 },
  )
})
