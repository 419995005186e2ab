/** Bad input is named, with what to do instead; input in order gives nothing. */
import { describe, expect, test } from 'vitest'
import type { Columns, Givens } from '../../../src/methods/method.ts'
import { method } from '../../../src/methods/static-leak/index.ts'
import { record, staticLine } from './bench.ts'

const columns = record(staticLine, {}, 1)
const givens: Givens = { numbers: staticLine.numbers, words: { side: 'static' }, fields: {} }
const codes = (c: Columns, g: Givens = givens) => (method.validate?.(c, g) ?? []).map(({ code }) => code)
const { altitude, temperature: _, ...rest } = columns
const values = columns.altitude?.values ?? new Float64Array(0)
const line = (name: string, by: (value: number) => number): Columns =>
  altitude ? { ...columns, [name]: { ...altitude, values: values.map(by) } } : {}
const without = (c: Columns, name: string): Columns =>
  Object.fromEntries(Object.entries(c).filter(([each, column]) => each !== name && column))

describe('findings', () => {
  test('in order: none', () => expect(codes(columns)).toEqual([]))
  test('no temperature', () => {
    expect(codes(without(columns, 'temperature'))).toEqual(['static-leak/no-temperature'])
    const fields = { temperature: 'not measured' }
    expect(codes(without(columns, 'temperature'), { ...givens, fields })).toEqual([])
  })
  test('two indicators', () => {
    const pressure = { ...rest.time, values: values.map(() => -3700) } as Columns[string]
    expect(codes({ ...columns, pressure } as Columns)).toEqual(['static-leak/two-indicators'])
  })
  test('lost minus sign', () => {
    expect(
      codes(
        without(
          line('pressure', () => 3700),
          'altitude',
        ),
      ),
    ).toEqual(['static-leak/other-side'])
  })
  test('an indicator of the other line', () => {
    expect(
      codes(
        without(
          line('airspeed', () => 77),
          'altitude',
        ),
      ),
    ).toEqual(['static-leak/other-line'])
  })
  test('nothing to draw to, or two ways', () => {
    const { test_climb: climb, ...numbers } = staticLine.numbers
    expect(codes(columns, { ...givens, numbers })).toEqual(['static-leak/no-test-pressure'])
    const both = { ...numbers, test_climb: climb ?? 0, test_suction: 3386 }
    expect(codes(columns, { ...givens, numbers: both })).toEqual(['static-leak/no-test-pressure'])
  })
  test('no ambient', () => {
    const { field_altitude: __, ...numbers } = staticLine.numbers
    expect(codes(columns, { ...givens, numbers })).toEqual(['static-leak/no-ambient'])
  })
  test('a clock that stands', () => {
    const time = { ...rest.time, values: Float64Array.of(0, 10, 10, 30, 40, 50, 60) } as Columns[string]
    expect(codes({ ...columns, time } as Columns)).toEqual(['static-leak/time-order'])
  })
})
