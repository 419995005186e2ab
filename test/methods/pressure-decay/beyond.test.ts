/**
 * Pressures far beyond the test pressure. Most often an absolute pressure was written as gauge pressure: 14.7 psi too
 * much, and a leak that is scaled down to the test pressure would look tight (by hand: with p the gauge pressure read,
 * the rate counts p_T/p of itself).
 */
import { describe, expect, test } from 'vitest'
import type { Column, Columns } from '../../../src/methods/method.ts'
import { method } from '../../../src/methods/pressure-decay/index.ts'
import { CCM, hangar, tank, withNumbers } from './setups.ts'
import { givensOf, judged } from './simulate.ts'

const LIMIT = 6 * CCM
const AIR = 101_325
/** Seven kilopascals of pressure instead of suction. */
const pressed = withNumbers(tank, { test_pressure: 7000 })
const readings = (leak: number): Columns =>
  method.rehearse(
    givensOf(pressed),
    { ...hangar, start_pressure: 8000, leak_rate: leak },
    pressed.instruments,
    3,
  )
const moved = (columns: Columns, by: (value: number) => number): Columns => {
  const pressure = columns.pressure as Column
  return { ...columns, pressure: { ...pressure, values: pressure.values.map(by) } }
}

describe('an absolute pressure written as gauge pressure', () => {
  const absolute = moved(readings(1.5 * LIMIT), (value) => value + AIR)
  const outcome = judged(pressed, absolute, LIMIT)
  test('would look tight, though it leaks 1.5 times the limit', () => {
    expect(judged(pressed, readings(1.5 * LIMIT), LIMIT).measures.leak_rate?.value).toBeGreaterThan(LIMIT)
    expect(outcome.measures.leak_rate?.value).toBeLessThan(LIMIT / 2)
  })
  test('is no pass', () => {
    expect(outcome.bars.join(' ')).toContain('more than twice the test pressure')
    expect(outcome.pass).toBe(false)
  })
})

test('a pressure somewhat above the test pressure is not barred', () => {
  const bars = judged(pressed, readings(LIMIT / 2), LIMIT).bars.join(' ')
  expect(bars).not.toContain('twice')
})

test('neither is suction, which counts from the other side', () => {
  const columns = method.rehearse(givensOf(tank), { ...hangar, leak_rate: 1 * CCM }, tank.instruments, 3)
  expect(judged(tank, columns, LIMIT).bars.join(' ')).not.toContain('twice')
  const triple = moved(columns, (value) => 3 * value)
  expect(judged(tank, triple, LIMIT).bars.join(' ')).toContain('more than twice the test pressure')
})
