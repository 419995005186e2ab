/** Each code of the method is provoked once, and its example page exists. */
import { readdirSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import type { Column, Columns } from '../../../src/methods/method.ts'
import { method } from '../../../src/methods/pressure-decay/index.ts'
import { hangar, tank } from './setups.ts'
import { givensOf } from './simulate.ts'

const columns = method.rehearse(givensOf(tank), hangar, tank.instruments, 1)
const without = (...names: string[]): Columns =>
  Object.fromEntries(Object.entries(columns).filter(([name]) => !names.includes(name)))
const pressure = columns.pressure as Column
const codesOf = (read: Columns, givens = givensOf(tank)) =>
  (method.validate?.(read, givens) ?? []).map((finding) => finding.code.split('/')[1] ?? '')
const { volume: _, ...noVolume } = givensOf(tank).numbers
const time = columns.time as Column
const provoked: Record<string, string[]> = {
  'no-temperature': codesOf(without('temperature')),
  'no-barometer': codesOf(without('baro')),
  'two-pressures': codesOf({ ...columns, vacuum: { ...pressure, values: pressure.values.map((p) => -p) } }),
  'no-density': codesOf({
    ...without('pressure'),
    leg_article: { ...pressure, values: pressure.values.map(() => 0.1) },
    leg_open: { ...pressure, values: pressure.values.map(() => -0.1) },
  }),
  'reduced-barometer': codesOf(columns, {
    ...givensOf(tank),
    numbers: { ...givensOf(tank).numbers, elevation: 1200 },
  }),
  'no-test-pressure': codesOf(columns, {
    ...givensOf(tank),
    numbers: { ...givensOf(tank).numbers, test_pressure: 0 },
  }),
  'volume-unknown': codesOf(columns, { ...givensOf(tank), numbers: noVolume }),
  'time-order': codesOf({
    ...columns,
    time: { ...time, values: time.values.map((t, k) => (k === 5 ? 0 : t)) },
  }),
  'other-side': codesOf({ ...columns, pressure: { ...pressure, values: pressure.values.map((p) => -p) } }),
}

test('readings in order give no finding', () => {
  expect(codesOf(columns)).toEqual([])
})

describe.each(Object.entries(provoked))('%s', (name, codes) => {
  test('is found, once and alone', () => {
    expect(codes).toEqual([name])
  })
})

test('every code has its page, and every page its code', () => {
  const folder = new URL('../../../src/methods/pressure-decay/codes/', import.meta.url)
  const pages = readdirSync(folder).map((file) => file.replace('.ts', ''))
  expect(pages.sort()).toEqual([...Object.keys(provoked), 'temperature-field'].sort())
  expect(method.schema.cardFields[0]?.read('no')).toMatchObject({ ok: false })
  expect(method.schema.cardFields[0]?.read('not measured')).toEqual({ ok: true, value: 'not measured' })
})
