/** Whether a unit fits what is asked for, and which units do. */
import { sameDimension } from '../quantity/dimension.ts'
import { KINDS, type Kind } from '../quantity/kinds.ts'
import type { Unit } from '../quantity/types.ts'

/** Units of the trade to name in a hint; where none are listed, the SI unit is named. */
export const USUAL_UNITS: Partial<Record<Kind, readonly string[]>> = {
  length: ['mm', 'm', 'in'],
  area: ['cm²', 'm²'],
  volume: ['L', 'm³', 'USgal'],
  mass: ['kg', 'lb'],
  time: ['s', 'min', 'h'],
  angle: ['deg', 'rad'],
  temperature: ['°C', 'K', '°F'],
  'temperature-difference': ['K'],
  frequency: ['Hz'],
  speed: ['m/s', 'km/h', 'kt'],
  force: ['N', 'kgf', 'lbf'],
  moment: ['N·m', 'lbf·in'],
  energy: ['J'],
  pressure: ['Pa', 'kPa', 'mbar', 'inH2O', 'psi'],
  density: ['kg/m³', 'g/cm³'],
  'volume-flow': ['cm³/min', 'L/min'],
  'mass-flow': ['kg/h', 'kg/s'],
  'volume-compliance': ['L/kPa', 'm³/Pa'],
  'linear-stiffness': ['N/mm', 'N/m', 'lbf/in'],
  'angular-stiffness': ['N·m/deg', 'N·m/rad', 'lbf·in/deg'],
}

/** Units to name for any of the kinds, without doubles. */
export function unitsFor(kinds: readonly Kind[]): string[] {
  return [...new Set(kinds.flatMap((kind) => USUAL_UNITS[kind] ?? [KINDS[kind].unit]))]
}

/** `volume`, `force or moment`. */
export function namesOf(kinds: readonly Kind[]): string {
  return [...new Set(kinds.map((kind) => KINDS[kind].name))].join(' or ')
}

/**
 * How a unit misses all of the kinds. `meaning`: the dimension is right, but the unit says something else: an
 * energy where a moment is asked for, a temperature where a difference of temperatures is.
 */
export function misfit(
  unit: Unit,
  kinds: readonly Kind[],
): 'missing' | 'wrong-dimension' | 'meaning' | undefined {
  const alike = kinds.filter((kind) => sameDimension(KINDS[kind].dim, unit.dim))
  if (alike.length === 0) return unit.text === '1' ? 'missing' : 'wrong-dimension'
  return alike.some((kind) => means(unit, kind)) ? undefined : 'meaning'
}

function means(unit: Unit, kind: Kind): boolean {
  if (kind === 'moment') return !unit.energy
  if (kind === 'energy') return unit.energy
  if (kind === 'temperature-difference') return unit.offset === 0
  if (kind === 'temperature') return !/delta/.test(unit.text)
  return true
}
