/**
 * Expected readings of a surface whose travel is known: planning, simulation.
 *
 * Truth (SI): the angle of each position by its name, or by name and side (`up_left`); else its nominal. `sides` (0; 2:
 * both are read), `neutral` (0), `repeats` (3), `noise` of a reading (half a digit); `friction` and `centring` (0 N)
 * where an instrument is named for `force` (read in neutral only), `force_noise` (half a digit). An offset is read where an instrument is
 * named for it, else an angle.
 */
import { KINDS } from '../../quantity/kinds.ts'
import { asShown, IDEAL } from '../as-shown.ts'
import type { Column, Columns, Givens, Instruments } from '../method.ts'
import { offsetOf } from './cells.ts'
import { NEUTRAL, positionsOf } from './positions.ts'

type Row = {
  readonly position: string
  readonly side: string
  readonly angle: number
  readonly force: number
}

const text = (texts: readonly string[]): Column => ({
  values: new Float64Array(texts.length).fill(Number.NaN),
  texts,
  dim: KINDS.text.dim,
  resolution: 0,
})

export const rehearse = (
  givens: Givens,
  truth: Readonly<Record<string, number>>,
  instruments: Instruments,
  seed: number,
): Columns => {
  const positions = positionsOf(givens.fields)
  const all = positions.some(({ name }) => name === NEUTRAL)
    ? positions
    : [{ name: NEUTRAL, nominal: 0 }, ...positions]
  const sides = truth.sides === 2 ? ['left', 'right'] : ['']
  const repeats = Array.from({ length: truth.repeats ?? 3 }, (_, repeat) => repeat)
  const { friction = 0, centring = 0 } = truth
  const rows: Row[] = repeats.flatMap((repeat) =>
    sides.flatMap((side) =>
      all.map(({ name, nominal }) => {
        const angle = truth[`${name}_${side}`] ?? truth[name] ?? nominal
        const force = name === NEUTRAL ? centring + (repeat % 2 === 0 ? friction : -friction) : Number.NaN
        return { position: name, side, angle, force }
      }),
    ),
  )
  const time = rows.map((_, row) => row)
  const read = instruments.offset ? 'offset' : 'angle'
  const show = (name: 'angle' | 'offset' | 'force', values: readonly number[], n: number, noise?: number) => {
    const model = instruments[name] ?? IDEAL
    const dim = KINDS[name === 'offset' ? 'length' : name].dim
    return asShown({ truth: values, time, dim, noise: noise ?? model.resolution / 2 }, model, 31 * seed + n)
  }
  const shown = rows.map(({ angle }) => (read === 'offset' ? offsetOf(angle, givens) : angle))
  return {
    position: text(rows.map(({ position }) => position)),
    ...(sides.length > 1 ? { side: text(rows.map(({ side }) => side)) } : {}),
    [read]: show(read, shown, 1, truth.noise),
    ...(instruments.force
      ? {
          force: show(
            'force',
            rows.map(({ force }) => force),
            2,
            truth.force_noise,
          ),
        }
      : {}),
  }
}
