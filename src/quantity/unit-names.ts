/** Looking up one unit by its name. */
import type { Dimension } from './types.ts'
import { PREFIXES, UNITS } from './units.ts'

export type NamedUnit = {
  readonly name: string
  /** The factor as a fraction: one rounding at the very end instead of one a step. */
  readonly numerator: number
  readonly denominator: number
  readonly dim: Dimension
  readonly offset: number
  readonly energetic: boolean
}

/** `0.0254` → 254 / 10000. Numbers with more digits than a double holds as an integer stay as they are. */
export function decimalFraction(factor: number): readonly [number, number] {
  const [digits = '', exponent = '0'] = factor.toExponential().split('e')
  const places = (digits.split('.')[1] ?? '').length - Number(exponent)
  const integer = Number(digits.replace('.', ''))
  if (integer > Number.MAX_SAFE_INTEGER || Math.abs(places) > 22) return [factor, 1]
  return places > 0 ? [integer, 10 ** places] : [integer * 10 ** -places, 1]
}

function buildNames(): Map<string, NamedUnit> {
  const names = new Map<string, NamedUnit>()
  for (const { names: own, factor, dim, offset, prefixes, energetic } of UNITS) {
    const [numerator, denominator] = decimalFraction(factor)
    for (const name of own) names.set(name, { name, numerator, denominator, dim, offset, energetic })
    for (const prefix of prefixes) {
      const [up, down] = PREFIXES[prefix] ?? [1, 1]
      const name = `${prefix}${own[0]}`
      const scaled = {
        name,
        numerator: numerator * up,
        denominator: denominator * down,
        dim,
        offset,
        energetic,
      }
      names.set(name, scaled)
      // `um`, `uV`: a keyboard without µ
      if (prefix === 'µ') names.set(`u${own[0]}`, scaled)
    }
  }
  return names
}

const NAMES = buildNames()

export function unitByName(name: string): NamedUnit | undefined {
  return NAMES.get(name)
}

/** True for what a formula would read as a unit: no given or measure may be called so. */
export function isUnitName(name: string): boolean {
  return NAMES.has(name)
}

/** All unit names, as the handbook lists them and as nearest names are looked for. */
export function unitNames(): string[] {
  return [...NAMES.keys()]
}
