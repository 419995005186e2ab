/** The button that stamps, pressed by a hand in a glove, and on a device whose clock is put right in the middle of a test. */
import { describe, expect, it } from 'vitest'
import { type Stamped, stampRow } from '../../src/form/stamp.ts'
import { emptyRun } from '../../src/form/state.ts'
import { column } from './columns.ts'

const fields = [column('time', 'time'), column('pressure', 'number')]
const START = Date.parse('2026-03-04T08:00:00Z')
const fresh: Stamped = {
  state: {
    ...emptyRun('tank-leak'),
    when: '2026-03-04T09:00+01:00',
    columns: [
      { name: 'time', unit: 's' },
      { name: 'pressure', unit: 'Pa' },
    ],
  },
  stamps: null,
}
/** Presses at so many seconds after the start; `read` types a pressure into each row. */
const pressed = (seconds: readonly number[], read: boolean): string[][] => {
  const end = seconds.reduce<Stamped>((before, second) => {
    const { state, stamps } = stampRow(before, fields, { epoch: START + second * 1000, offset: 60 }, '')
    const rows = read ? state.rows.map(([time = '']) => [time, '-2260']) : state.rows
    return { state: { ...state, rows }, stamps }
  }, fresh)
  return end.state.rows.map((row) => [...row])
}

describe('two presses within a second', () => {
  it('are one, where nothing was read in between', () => {
    expect(pressed([0, 60, 60.4], false)).toHaveLength(2)
  })
  it('are two, where something was read, or more time went by', () => {
    expect(pressed([0, 60, 60.4], true)).toHaveLength(3)
    expect(pressed([0, 60, 62], false)).toHaveLength(3)
  })
  it('stay at the entry that was stamped, and leave the next one of a list alone', () => {
    const entries = [column('entry', 'words', { rows: ['a', 'b'] }), column('time', 'time')]
    const columns = [
      { name: 'entry', unit: 'text' },
      { name: 'time', unit: 's' },
    ]
    const rows = [
      ['a', ''],
      ['b', ''],
    ]
    const run = { state: { ...fresh.state, columns, rows }, stamps: null }
    const first = stampRow(run, entries, { epoch: START, offset: 60 }, '')
    const second = stampRow(first, entries, { epoch: START + 300, offset: 60 }, '')
    expect([first.row, second.row]).toEqual([0, 0])
    expect(second.state.rows).toEqual(first.state.rows)
  })
})

it('once the clock went back, nothing tells how long ago the first reading was: the person writes the times', () => {
  // Put back by 30 s between the second and the third reading: 120 s and 180 s would be 90 and 150.
  expect(pressed([0, 60, 50, 150], true).map(([time]) => time)).toEqual(['0', '60', '', ''])
})
