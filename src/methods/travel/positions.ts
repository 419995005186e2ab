/** The positions of a card: drawn angle and how far it may be off. SI. */
import type { Plain } from '../../format/types.ts'
import { KINDS } from '../../quantity/kinds.ts'
import { parseStated } from '../../quantity/quantity-text.ts'
import type { Fault, Result } from '../../quantity/types.ts'

export type Position = {
  readonly name: string
  /** Signed as the readings are. */
  readonly nominal: number
  /** How far beyond the nominal, and how far short of it, is still in order; absent: no tolerance is given. */
  readonly plus?: number
  readonly minus?: number
}

type PathFault = Fault & { path: readonly (string | number)[] }

export const NEUTRAL = 'neutral'
const NAME = /^[a-z][a-z0-9_]*$/
const TAKEN = ['asymmetry', 'friction_force', 'neutral_offset', 'worst']
const FIELDS = ['nominal', 'tolerance', 'plus', 'minus']
const HINT = '{up: {nominal: 25 deg, tolerance: 2 deg}, down: {nominal: -20 deg, plus: 0 deg, minus: 2 deg}}'

/** As read; an empty list where the card's field was not. */
export const positionsOf = (fields: Readonly<Record<string, unknown>>): readonly Position[] =>
  Array.isArray(fields.positions) ? (fields.positions as Position[]) : []

const fault = (path: readonly string[], message: string, more: Partial<Fault> = {}): PathFault => ({
  code: 'travel/positions',
  message,
  start: 0,
  end: 1,
  path,
  ...more,
})

const isMap = (raw: Plain | undefined): raw is { readonly [key: string]: Plain } =>
  typeof raw === 'object' && !Array.isArray(raw)

const readAngle = (raw: Plain, path: readonly string[]): Result<number, PathFault[]> => {
  if (typeof raw !== 'string')
    return { ok: false, error: [fault(path, 'here stands one angle, as `25 deg`')] }
  const stated = parseStated(raw)
  if (!stated.ok) return { ok: false, error: stated.error.map((one) => ({ ...one, path })) }
  if (stated.value.unit.dim.every((x, i) => x === KINDS.angle.dim[i]))
    return { ok: true, value: stated.value.value }
  return {
    ok: false,
    error: [fault(path, `\`${raw}\` is not an angle`, { end: raw.length, hint: 'as `25 deg`' })],
  }
}

const readPosition = (name: string, raw: Plain): Result<Position, PathFault[]> => {
  if (!NAME.test(name) || TAKEN.includes(name) || /_(error|margin|left|right)$/.test(name)) {
    const message = `\`${name}\` cannot be the name of a position`
    const hint = 'lower case letters, digits and `_`, without an ending that measures have: up, down, flap_30'
    return { ok: false, error: [fault([name], message, { end: name.length, hint })] }
  }
  if (!isMap(raw))
    return { ok: false, error: [fault([name], 'a position has a `nominal` angle', { hint: HINT })] }
  const faults = Object.keys(raw)
    .filter((key) => !FIELDS.includes(key))
    .map((key) => fault([name, key], `a position has no \`${key}\``, { end: key.length, expected: FIELDS }))
  const numbers: Record<string, number> = name === NEUTRAL ? { nominal: 0 } : {}
  for (const key of FIELDS) {
    const text = raw[key]
    if (text === undefined) continue
    const angle = readAngle(text, [name, key])
    if (!angle.ok) faults.push(...angle.error)
    else if (key !== 'nominal' && angle.value < 0)
      faults.push(fault([name, key], `\`${key}\` is counted without a sign`, { end: String(text).length }))
    else numbers[key] = angle.value
  }
  const { nominal, tolerance, plus = tolerance, minus = tolerance } = numbers
  if (nominal === undefined && faults.length === 0)
    faults.push(fault([name], `\`${name}\` has no \`nominal\` angle`, { hint: HINT }))
  if ((plus === undefined) !== (minus === undefined))
    faults.push(
      fault([name], `\`${name}\` has one side of its tolerance only`, {
        hint: '`plus` and `minus`, or `tolerance`',
      }),
    )
  if (faults.length > 0 || nominal === undefined) return { ok: false, error: faults }
  return {
    ok: true,
    value: { name, nominal, ...(plus !== undefined && minus !== undefined ? { plus, minus } : {}) },
  }
}

export const readPositions = (raw: Plain): Result<readonly Position[], PathFault[]> => {
  if (!isMap(raw) || Object.keys(raw).length === 0)
    return { ok: false, error: [fault([], '`positions` names the positions of the surface', { hint: HINT })] }
  const read = Object.entries(raw).map(([name, one]) => readPosition(name, one))
  const faults = read.flatMap((one) => (one.ok ? [] : one.error))
  if (faults.length > 0) return { ok: false, error: faults }
  return { ok: true, value: read.flatMap((one) => (one.ok ? [one.value] : [])) }
}

/** Neutral may be read without being on the card. */
export const positionNamed = (positions: readonly Position[], name: string): Position | undefined =>
  positions.find((position) => position.name === name) ??
  (name === NEUTRAL ? { name: NEUTRAL, nominal: 0 } : undefined)

/** How far beyond its nominal an angle goes: positive too far, negative short; at a nominal of 0 as read. */
export const beyond = (position: Position, angle: number): number =>
  (angle - position.nominal) * (position.nominal < 0 ? -1 : 1)

/** What is left to the nearer end of the tolerance; NaN where none is given. */
export const marginOf = ({ plus, minus }: Position, error: number, end: 'plus' | 'minus'): number =>
  end === 'plus' ? (plus ?? Number.NaN) - error : (minus ?? Number.NaN) + error
