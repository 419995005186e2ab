/**
 * Expected readings of a surface whose unbalance is known: planning, simulation.
 *
 * Truth (SI): `unbalance` (0.05 of mass times chord, else of mass times 0.3 m), `arm` of the one scale (0.3 m, negative
 * for a surface that is nose-heavy), `test_weight` laid over the scale (0: no tare), `repeats` (5), `noise` of a
 * reading, hinge friction included (half a digit). The tape's errors and digits are those of the instrument `arm`.
 */
import { KINDS, type Kind } from '../../quantity/kinds.ts'
import { asShown, IDEAL } from '../as-shown.ts'
import type { Columns, Givens, Instruments } from '../method.ts'

export const rehearse = (
  givens: Givens,
  truth: Readonly<Record<string, number>>,
  instruments: Instruments,
  seed: number,
): Columns => {
  const { mass = 1, chord = 0.3, tilt = 0, cg_height: height = 0 } = givens.numbers
  const unbalance = truth.unbalance ?? 0.05 * mass * chord
  const arm = truth.arm ?? (unbalance < 0 ? -0.3 : 0.3)
  const weight = truth.test_weight ?? 0
  const count = truth.repeats ?? 5
  const load = (unbalance + mass * height * Math.tan(tilt)) / arm + weight
  const rows = Array.from({ length: count }, (_, row) => row)
  const show = (name: string, kind: Kind, value: number, noise: number, n: number) => {
    const course = { truth: rows.map(() => value), time: rows, dim: KINDS[kind].dim, noise }
    return asShown(course, instruments[name] ?? IDEAL, 31 * seed + n)
  }
  const digit = instruments.reading?.resolution ?? 0
  const one = show('arm', 'length', arm, 0, 2)
  return {
    point: {
      values: new Float64Array(count).fill(Number.NaN),
      texts: rows.map(() => (arm < 0 ? 'leading_edge' : 'trailing_edge')),
      dim: KINDS.text.dim,
      resolution: 0,
    },
    reading: show('reading', 'mass', load, truth.noise ?? digit / 2, 1),
    arm: one,
    ...(weight > 0 ? { tare: show('tare', 'mass', weight, 0, 3) } : {}),
  }
}
