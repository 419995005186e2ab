/** The polygon of allowed mass and arm, and how far from its sides a point lies. SI. */
import type { Givens } from '../method.ts'

export type Corner = { readonly mass: number; readonly arm: number }
export type Envelope = readonly Corner[]

export const envelopeOf = ({ fields }: Pick<Givens, 'fields'>): Envelope | null =>
  Array.isArray(fields.envelope) ? (fields.envelope as Envelope) : null

const sidesOf = (envelope: Envelope): (readonly [Corner, Corner])[] =>
  envelope.map((corner, i) => [corner, envelope[(i + 1) % envelope.length] ?? corner])

/** Twice the area of the triangle, signed by its sense. */
const turn = (a: Corner, b: Corner, c: Corner): number =>
  (b.mass - a.mass) * (c.arm - a.arm) - (b.arm - a.arm) * (c.mass - a.mass)

const cross = ([a, b]: readonly [Corner, Corner], [c, d]: readonly [Corner, Corner]): boolean =>
  turn(a, b, c) * turn(a, b, d) < 0 && turn(c, d, a) * turn(c, d, b) < 0

/** The first side that crosses another one; null where none does. */
export const crossing = (envelope: Envelope): number | null => {
  const sides = sidesOf(envelope)
  const found = sides.findIndex((side, i) => sides.some((other, j) => j > i && cross(side, other)))
  return found < 0 ? null : found
}

/** Arms at which the polygon is met at this mass, rising; pairs of them are inside. */
const arms = (envelope: Envelope, mass: number): number[] =>
  sidesOf(envelope)
    .flatMap(([a, b]) => {
      // A side counts from its lower end up to, but without, its upper one: a corner is met once.
      if (a.mass <= mass === b.mass <= mass) return []
      return [a.arm + ((b.arm - a.arm) * (mass - a.mass)) / (b.mass - a.mass)]
    })
    .sort((a, b) => a - b)

export const highestMass = (envelope: Envelope): number => Math.max(...envelope.map(({ mass }) => mass))

/** Limits of the arm at this mass: those that hold `arm` between them, or the nearest ones. Null outside all masses. */
export const limitsAt = (
  envelope: Envelope,
  mass: number,
  arm: number,
): { readonly forward: number; readonly aft: number } | null => {
  // On the top edge itself the limits are those just below it.
  const top = highestMass(envelope)
  const met = arms(envelope, mass === top ? mass - 1e-12 * Math.abs(top) : mass)
  let best: { forward: number; aft: number } | null = null
  const outside = (limits: { forward: number; aft: number }) =>
    Math.max(0, limits.forward - arm, arm - limits.aft)
  for (let i = 0; i + 1 < met.length; i += 2) {
    const limits = { forward: met[i] as number, aft: met[i + 1] as number }
    if (!best || outside(limits) < outside(best)) best = limits
  }
  return best
}
