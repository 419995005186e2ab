/** What a weighing card brings of its own: names of points and items, and the envelope. */
import type { Plain } from '../../format/types.ts'
import { KINDS } from '../../quantity/kinds.ts'
import { parseStated } from '../../quantity/quantity-text.ts'
import type { Dimension, Fault, Result } from '../../quantity/types.ts'
import type { CardField } from '../method.ts'
import { crossing, type Envelope } from './envelope.ts'

type PathFault = Fault & { path: readonly (string | number)[] }
type Path = PathFault['path']

const NAME = /^[a-z][a-z0-9_]*$/
const TAKEN = ['weighed']

const fault = (code: string, message: string, path: Path, more: Partial<Fault> = {}): PathFault => ({
  code: `weighing/${code}`,
  message,
  start: 0,
  end: 1,
  path,
  ...more,
})

const readNames =
  (field: string, hint: string) =>
  (raw: Plain): Result<readonly string[], PathFault[]> => {
    if (!Array.isArray(raw) || raw.length === 0)
      return { ok: false, error: [fault('names', `\`${field}\` is a list of names`, [], { hint })] }
    const faults = raw.flatMap((name, i): PathFault[] => {
      const end = typeof name === 'string' ? name.length : 1
      if (typeof name !== 'string' || !NAME.test(name) || TAKEN.includes(name)) {
        const message =
          'a name is made of lower case letters, digits and `_`, begins with a letter, and is not `weighed`'
        return [fault('names', message, [i], { end, hint })]
      }
      if (raw.indexOf(name) !== i) return [fault('names', `\`${name}\` is there twice`, [i], { end })]
      return []
    })
    return faults.length > 0 ? { ok: false, error: faults } : { ok: true, value: raw.map(String) }
  }

const same = (a: Dimension, b: Dimension): boolean => a.every((x, i) => x === b[i])

const readEnd = (
  raw: Plain | undefined,
  path: Path,
  kind: 'mass' | 'length',
): Result<number, PathFault[]> => {
  const example = kind === 'mass' ? '600 kg' : '1.92 m'
  if (typeof raw !== 'string')
    return { ok: false, error: [fault('envelope', `here stands a ${kind}, as \`${example}\``, path)] }
  const stated = parseStated(raw)
  if (!stated.ok) return { ok: false, error: stated.error.map((one) => ({ ...one, path })) }
  if (same(stated.value.unit.dim, KINDS[kind].dim)) return { ok: true, value: stated.value.value }
  const message = `\`${raw}\` is not a ${kind}`
  const hint = 'a corner is mass and arm, in this order: [600 kg, 1.92 m]'
  return { ok: false, error: [fault('envelope', message, path, { end: raw.length, hint })] }
}

const readEnvelope = (raw: Plain): Result<Envelope, PathFault[]> => {
  const hint =
    'go round the corners: [[400 kg, 1.80 m], [600 kg, 1.86 m], [600 kg, 1.98 m], [400 kg, 1.98 m]]'
  if (!Array.isArray(raw) || raw.length < 3)
    return { ok: false, error: [fault('envelope', 'an envelope has three corners or more', [], { hint })] }
  const faults: PathFault[] = []
  const corners = raw.flatMap((corner, i) => {
    if (!Array.isArray(corner) || corner.length !== 2) {
      faults.push(fault('envelope', 'a corner is a pair of mass and arm', [i], { hint }))
      return []
    }
    const mass = readEnd(corner[0], [i, 0], 'mass')
    const arm = readEnd(corner[1], [i, 1], 'length')
    if (!mass.ok) faults.push(...mass.error)
    if (!arm.ok) faults.push(...arm.error)
    return mass.ok && arm.ok ? [{ mass: mass.value, arm: arm.value }] : []
  })
  if (faults.length > 0) return { ok: false, error: faults }
  const crossed = crossing(corners)
  if (crossed !== null) {
    const message = `the side from corner ${crossed + 1} crosses another side: the corners are not in order`
    return { ok: false, error: [fault('envelope', message, [crossed], { hint })] }
  }
  return { ok: true, value: corners }
}

export const cardFields: readonly CardField[] = [
  {
    name: 'points',
    meaning: 'names of the points of support, each with a scale under it in the weighing',
    required: true,
    read: readNames('points', 'write `points: [left_main, right_main, nose]`'),
  },
  {
    name: 'items',
    meaning: 'names of what is added or taken off by calculation: fuel, ballast, a missing seat',
    required: false,
    read: readNames('items', 'write `items: [fuel, unusable_fuel]`'),
  },
  {
    name: 'envelope',
    meaning: 'corners of the allowed masses and arms of the centre of gravity, going round: [[mass, arm], …]',
    required: false,
    read: readEnvelope,
  },
]
