/** From a unit to SI and back. */
import type { Unit } from './types.ts'
import { decimalFraction } from './unit-names.ts'

/**
 * The factor as a fraction of two integers where it is one: 1.5 in is 1.5 · 254 / 10000 = 0.0381 m to the last
 * bit, where 1.5 · 0.0254 is not, and a reading on the limit must not fail by a float's tail.
 */
function fraction(factor: number): readonly [number, number] {
  const inverse = Math.round(1 / factor)
  if (inverse > 1 && inverse < 1e15 && 1 / inverse === factor) return [1, inverse]
  return decimalFraction(factor)
}

/** A function from values in the unit to SI: made once a column. */
export function converter(unit: Unit): (value: number) => number {
  const [numerator, denominator] = fraction(unit.factor)
  const { offset } = unit
  return (value) => (value * numerator) / denominator + offset
}

export function toSI(value: number, unit: Unit): number {
  return converter(unit)(value)
}

/** A difference, an uncertainty or a digit: the zero of a temperature scale does not count. */
export function differenceToSI(value: number, unit: Unit): number {
  return converter({ ...unit, offset: 0 })(value)
}

export function toUnit(value: number, unit: Unit): number {
  const [numerator, denominator] = fraction(unit.factor)
  return ((value - unit.offset) * denominator) / numerator
}

/** A difference or an uncertainty in a unit: without the zero of a temperature scale. */
export function toUnitDifference(u: number, unit: Unit): number {
  return toUnit(u, { ...unit, offset: 0 })
}

/** Equal but for the tail that the arithmetic of floats leaves: relative 1e-12. */
export function closeTo(a: number, b: number): boolean {
  return a === b || Math.abs(a - b) <= 1e-12 * Math.max(Math.abs(a), Math.abs(b))
}
