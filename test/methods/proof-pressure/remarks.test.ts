/** Absolute readings, and dials whose stand was not read. */
import { describe, expect, test } from 'vitest'
import type { Column, Columns } from '../../../src/methods/method.ts'
import { barsOf, measured, rehearsed, remarksOf } from '../bench.ts'
import { DIGIT, setupOf } from './setups.ts'

const setup = setupOf(['station_1', 'station_2'])
const columns = rehearsed(setup, { bulge: 300 * DIGIT }, 3)
const withPressure = (by: (value: number) => number): Columns => {
  const pressure = columns.pressure as Column
  return { ...columns, pressure: { ...pressure, values: pressure.values.map(by) } }
}
const notes = (of: Columns) =>
  remarksOf(setup, measured(setup, of))
    .filter(({ effect }) => effect === 'note')
    .map(({ text }) => text)
    .join(' ')

describe('an absolute pressure written as gauge pressure', () => {
  test('is no pass, though the target seems to be held: by the sea and on a mountain', () => {
    for (const air of [101_325, 70_000])
      expect(
        barsOf(
          setup,
          withPressure((value) => value + air),
        ),
      ).toContain('an absolute pressure')
  })
  test('nothing was put on at all, and the air alone lies above the target', () => {
    expect(
      barsOf(
        setup,
        withPressure(() => 101_325),
      ),
    ).toContain('an absolute pressure')
  })
  test('a sound run is not barred', () => expect(barsOf(setup, columns)).toBe(''))
})

test('dials whose stand was not read are named, those with a base are not', () => {
  expect(notes(columns)).toContain('`station_1`, `station_2` stands on was not read')
  const still = columns.station_1 as Column
  const base: Columns = { ...columns, base_1: { ...still, values: still.values.map(() => 0) } }
  expect(notes(base)).toContain('dial of `station_2` stands on was not read')
  expect(notes(base)).not.toContain('station_1')
})
