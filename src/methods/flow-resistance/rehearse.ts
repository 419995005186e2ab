/**
 * Expected readings of a vent or line whose curve is known: planning, simulation.
 *
 * Truth (SI): `laminar_coefficient` (0) and `turbulent_coefficient` (that of 200 Pa at the required flow) outwards,
 * `direction_ratio` (1) of the drop inwards over it, `highest_flow` (1.2 times the larger required flow, else 1 L/s),
 * `readings` each way (8), `ways` (2: with `direction`; 1: without), `opens_at` (0 Pa) of a flap, `noise` of the drop
 * (half a digit) and `flow_noise` (half a digit), fresh at each reading.
 */
import { KINDS } from '../../quantity/kinds.ts'
import { asShown, IDEAL } from '../as-shown.ts'
import type { Columns, Givens, Instruments } from '../method.ts'
import { askedOf } from './select.ts'

export const rehearse = (
  givens: Givens,
  truth: Readonly<Record<string, number>>,
  instruments: Instruments,
  seed: number,
): Columns => {
  const asked = askedOf(givens, 'any')
  const highest = truth.highest_flow ?? (asked === undefined ? 1e-3 : 1.2 * asked)
  const a = truth.laminar_coefficient ?? 0
  const b = truth.turbulent_coefficient ?? 200 / (asked ?? highest) ** 2
  const count = truth.readings ?? 8
  const ways = truth.ways === 1 ? (['any'] as const) : (['in', 'out'] as const)
  const points = ways.flatMap((way) =>
    Array.from({ length: count }, (_, i) => {
      const flow = (highest * (i + 1)) / count
      const factor = way === 'in' ? (truth.direction_ratio ?? 1) : 1
      return { way, flow, drop: factor * (a * flow + b * flow * flow) + (truth.opens_at ?? 0) }
    }),
  )
  const time = points.map((_, row) => row)
  const show = (
    name: 'flow' | 'pressure_drop',
    values: readonly number[],
    noise: number | undefined,
    n: number,
  ) => {
    const model = instruments[name] ?? IDEAL
    const dim = KINDS[name === 'flow' ? 'volume-flow' : 'pressure'].dim
    return asShown({ truth: values, time, dim, noise: noise ?? model.resolution / 2 }, model, 31 * seed + n)
  }
  const columns: Columns = {
    flow: show(
      'flow',
      points.map(({ flow }) => flow),
      truth.flow_noise,
      1,
    ),
    pressure_drop: show(
      'pressure_drop',
      points.map(({ drop }) => drop),
      truth.noise,
      2,
    ),
  }
  if (truth.ways === 1) return columns
  const direction = {
    values: new Float64Array(points.length).fill(Number.NaN),
    texts: points.map(({ way }) => way),
    dim: KINDS.text.dim,
    resolution: 0,
  }
  return { ...columns, direction }
}
