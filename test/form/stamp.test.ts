/** The button that stamps a reading: clocks that are changed, midnight, other offsets, rows that were there before. */
import { describe, expect, it } from 'vitest'
import type { Now } from '../../src/form/clock.ts'
import { type Stamped, stampRow } from '../../src/form/stamp.ts'
import { emptyRun, type RunState } from '../../src/form/state.ts'
import { readReadings } from '../../src/format/readings.ts'
import { column } from './columns.ts'

const WHEN = '2026-03-28T23:50+01:00'
const fields = [column('time', 'time'), column('pressure', 'number')]
const runWith = (unit: string, more: Partial<RunState> = {}): Stamped => ({
  state: {
    ...emptyRun('tank-leak'),
    when: WHEN,
    columns: [
      { name: 'time', unit },
      { name: 'pressure', unit: 'Pa' },
    ],
    ...more,
  },
  stamps: null,
})
const at = (iso: string, offset: number): Now => ({ epoch: Date.parse(iso), offset })
const stampAll = (run: Stamped, moments: readonly Now[]): Stamped =>
  moments.reduce((before, now) => stampRow(before, fields, now, ''), run)
const times = ({ state }: Stamped): (string | undefined)[] => state.rows.map(([time]) => time)
const withReading = (run: Stamped): Stamped => ({
  ...run,
  state: { ...run.state, rows: run.state.rows.map(([time = '']) => [time, '-2260']) },
})

describe('clock times', () => {
  // In 2026 central Europe goes from +01:00 to +02:00 on 29 March at 01:00 UTC (IANA time zone database, Europe/Oslo).
  it('over midnight and the change to summer time go on by the offset of the run, so that no hour is added', () => {
    const run = stampAll(runWith('hh:mm:ss'), [
      at('2026-03-28T22:55:00Z', 60),
      at('2026-03-29T00:59:50Z', 60),
      at('2026-03-29T01:00:10Z', 120),
    ])
    expect(times(run)).toEqual(['23:55:00', '01:59:50', '02:00:10'])
    const table = { names: ['time'], units: ['hh:mm:ss'], rows: run.state.rows.map(([time = '']) => [time]) }
    const read = readReadings({ table, faults: [] })
    const seconds = read.ok ? [...(read.value.columns[0]?.values ?? [])] : []
    expect(seconds.map((each) => each - (seconds[0] ?? 0))).toEqual([0, 7490, 7510])
  })
  it('are those of the place where the run says it was made, on a device that is set to another', () => {
    expect(times(stampAll(runWith('hh:mm'), [at('2026-03-28T22:55:00Z', 0)]))).toEqual(['23:55'])
  })
  it('are those of the device, as long as the run does not say its offset', () => {
    const run = runWith('hh:mm', { when: '' })
    expect(times(stampAll(run, [at('2026-03-28T22:55:00Z', 120)]))).toEqual(['00:55'])
  })
})

describe('elapsed times', () => {
  it('count from the first stamp, whatever the offset does', () => {
    const run = stampAll(runWith('min'), [at('2026-03-29T00:59:00Z', 60), at('2026-03-29T01:00:30Z', 120)])
    expect(times(run)).toEqual(['0', '1.50'])
  })
  it('are left to the person in every row, where rows were there before the first stamp', () => {
    const run = runWith('min', { rows: [['105', '-2260']] })
    expect(times(stampAll(run, [at('2026-03-29T01:00:00Z', 60), at('2026-03-29T01:05:00Z', 60)]))).toEqual([
      '105',
      '',
    ])
  })
  it('begin again where all rows were taken away', () => {
    const first = stampAll(runWith('s'), [at('2026-03-29T01:00:00Z', 60)])
    const emptied = { ...first, state: { ...first.state, rows: [] } }
    const again = stampAll(emptied, [at('2026-03-29T01:20:00Z', 60)])
    expect(times(again)).toEqual(['0'])
    expect(again.stamps?.first).toBe(Date.parse('2026-03-29T01:20:00Z'))
  })
  it('that would go back with the clock of the device are not written, and that is told', () => {
    const first = withReading(stampAll(runWith('s'), [at('2026-03-29T01:00:00Z', 60)]))
    const back = stampRow(first, fields, at('2026-03-29T00:58:00Z', 60), '')
    expect([times(back), back.wentBack]).toEqual([['0', ''], true])
  })
})

describe('when the test began', () => {
  const now = at('2026-03-29T09:00:00Z', 120)
  it('is the first stamp, where it was only the time at which the page was opened', () => {
    const run = stampRow(runWith('min'), fields, now, WHEN)
    expect(run.state.when).toBe('2026-03-29T11:00+02:00')
  })
  it('stays as it was typed, and as it is from the second stamp on', () => {
    expect(stampRow(runWith('min'), fields, now, '2026-03-28T23:40+01:00').state.when).toBe(WHEN)
    const first = withReading(stampRow(runWith('min'), fields, at('2026-03-28T22:50:00Z', 60), WHEN))
    expect(stampRow(first, fields, now, WHEN).state.when).toBe(WHEN)
  })
})

it('rows that are known before the test are stamped one after the other, and none is added till all are', () => {
  const entries = [column('entry', 'words', { rows: ['a', 'b'] }), column('time', 'time')]
  const columns = [
    { name: 'entry', unit: 'text' },
    { name: 'time', unit: 'min' },
  ]
  const run = runWith('min', {
    columns,
    rows: [
      ['a', ''],
      ['b', ''],
    ],
  })
  const first = stampRow(run, entries, at('2026-03-29T01:00:00Z', 60), '')
  const second = stampRow(first, entries, at('2026-03-29T01:01:00Z', 60), '')
  expect([first.row, second.row]).toEqual([0, 1])
  expect(second.state.rows).toEqual([
    ['a', '0'],
    ['b', '1.00'],
  ])
})
