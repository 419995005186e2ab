/**
 * Expected readings of a weighing whose truth is known: planning, simulation.
 *
 * Truth (SI): `weight` (600 kg) and `cg` (mean of the arms of the points) after what is added and removed,
 * `repeats` of each point (3), `noise` of a reading (half a digit), and for each item `add_<item>` or `remove_<item>`
 * (1: a row for it is written; its mass is the given's). Arms are the givens of the card.
 * Scales: the instruments named `reading_…`, changed round between the points from repeat to repeat; else `reading`.
 * The load is shared between the points so that it gives the moment with the least unevenness.
 */
import { KINDS } from '../../quantity/kinds.ts'
import { asShown, IDEAL } from '../as-shown.ts'
import type { Column, Columns, Givens, Instruments } from '../method.ts'
import { itemMass } from './balance.ts'
import { gravityFactor } from './gravity.ts'
import { type Action, itemsOf, pointsOf } from './names.ts'

type Row = {
  readonly point: string
  readonly action: Action
  readonly scale: string | null
  readonly load: number
}

const text = (texts: readonly string[]): Column => ({
  values: new Float64Array(texts.length).fill(Number.NaN),
  texts,
  dim: KINDS.text.dim,
  resolution: 0,
})

/** Loads that add up to mass and moment, as even as the arms allow. */
const shared = (arms: readonly number[], mass: number, moment: number): number[] => {
  const middle = arms.reduce((sum, arm) => sum + arm, 0) / arms.length
  const squares = arms.reduce((sum, arm) => sum + (arm - middle) ** 2, 0)
  const slope = squares > 0 ? (moment - mass * middle) / squares : 0
  return arms.map((arm) => mass / arms.length + slope * (arm - middle))
}

export const rehearse = (
  givens: Givens,
  truth: Readonly<Record<string, number>>,
  instruments: Instruments,
  seed: number,
): Columns => {
  const { numbers } = givens
  const points = pointsOf(givens)
  const arms = points.map((point) => numbers[`arm_${point}`] ?? 0)
  const moved = itemsOf(givens).flatMap((item) =>
    (['add', 'remove'] as const).flatMap((action) => {
      if (!truth[`${action}_${item}`]) return []
      const mass = itemMass({}, givens, { item, action, row: 0, column: null })
      return [{ item, action, signed: action === 'add' ? mass : -mass, arm: numbers[`arm_${item}`] ?? 0 }]
    }),
  )
  const weight = truth.weight ?? 600
  const cg = truth.cg ?? arms.reduce((sum, arm) => sum + arm, 0) / arms.length
  const weighed = weight - moved.reduce((sum, { signed }) => sum + signed, 0)
  const level = weighed * (numbers.cg_height ?? 0) * Math.tan(numbers.pitch ?? 0)
  const moment = weight * cg - moved.reduce((sum, { signed, arm }) => sum + signed * arm, 0) + level
  const loads = shared(arms, weighed, moment).map((load) => load / gravityFactor(givens))

  const named = Object.keys(instruments).filter((name) => name.startsWith('reading_'))
  const scales = named.length > 0 ? named : ['reading']
  const repeats = Array.from({ length: truth.repeats ?? 3 }, (_, repeat) => repeat)
  const rows: Row[] = [
    ...repeats.flatMap((repeat) =>
      points.map((point, k): Row => {
        const scale = scales[(k + repeat) % scales.length] ?? 'reading'
        return { point, action: 'weigh', scale, load: loads[k] ?? 0 }
      }),
    ),
    ...moved.map(({ item, action }): Row => ({ point: item, action, scale: null, load: 0 })),
  ]
  const show = (scale: string, n: number): Column => {
    const model = instruments[scale] ?? IDEAL
    const own = rows.flatMap((row, k) => (row.scale === scale ? [k] : []))
    const course = {
      truth: own.map((k) => rows[k]?.load ?? 0),
      time: own,
      dim: KINDS.mass.dim,
      noise: truth.noise ?? model.resolution / 2,
    }
    const shown = asShown(course, model, 31 * seed + n)
    const values = new Float64Array(rows.length).fill(Number.NaN)
    own.forEach((k, i) => {
      values[k] = shown.values[i] ?? Number.NaN
    })
    return { ...shown, values }
  }
  return {
    point: text(rows.map(({ point }) => point)),
    ...(moved.length > 0 ? { action: text(rows.map(({ action }) => action)) } : {}),
    ...Object.fromEntries(scales.map((scale, n) => [scale, show(scale, n + 1)])),
  }
}
