/**
 * Expected readings of a proof load whose truth is known: planning, simulation.
 *
 * Truth (SI, by the names of the measures): `sustained_peak` (else `peak_ratio` times the target, else 1.05 times it),
 * `hold_time` (else twice the hold), `permanent_set` (0), `stiffness_before` (target over 10 mm or 0.1 rad).
 * Beside them: `free_play`, `friction` (a load; with either, small cycles in both directions are read before and
 * after; `cycles: 0` leaves them out), `small_load` of these cycles (0.3 of the target), `steps` up to the peak (6), `interval` between readings
 * (1 s), `noise` of a movement reading (half a digit), `load_noise` (half a digit), `moment` (1: moment and angle
 * instead of force and length).
 *
 * Columns: time, load, phase, and `deflection` or every `station_…` that an instrument is named for.
 */
import { KINDS } from '../../quantity/kinds.ts'
import { asShown, IDEAL } from '../as-shown.ts'
import type { Column, Columns, Givens, Instruments } from '../method.ts'
import { channelsOf } from './describe.ts'
import { holdOf } from './readings.ts'

type Truth = Readonly<Record<string, number>>
type Row = { readonly load: number; readonly phase: string; readonly set: number }

const range = (count: number): number[] => Array.from({ length: count }, (_, i) => i)

/** Zero readings, or small cycles both ways where there is play or friction. */
const around = (phase: string, small: number, cycles: boolean, set: number): Row[] => {
  const quarter = [1, 2, 3, 4].map((step) => (small * step) / 4)
  const back = quarter.slice(0, -1).reverse()
  const half = [...quarter, ...back, 0]
  const loads = cycles
    ? [0, ...half, ...half.map((load) => -load), ...half, ...half.map((load) => -load)]
    : [0, 0, 0]
  return loads.map((load) => ({ load: load + 0, phase, set }))
}

/** Coulomb friction f and play g on a spring: movement stays while the pull of the spring is inside its play. */
const movementOf = (rows: readonly Row[], stiffness: number, play: number, friction: number): number[] => {
  let at = 0
  return rows.map(({ load, set }) => {
    // With the load rising the spring takes load − f, with it falling load + f; play is passed at its sign.
    const low = (load - friction) / stiffness + (Math.sign(load - friction) * play) / 2
    const high = (load + friction) / stiffness + (Math.sign(load + friction) * play) / 2
    at = Math.min(Math.max(at, low), high)
    return at + set
  })
}

export const rehearse = (givens: Givens, truth: Truth, instruments: Instruments, seed: number): Columns => {
  const target = givens.numbers.target ?? 0
  const sign = target < 0 ? -1 : 1
  const size = Math.abs(target)
  const peak = sign * (truth.sustained_peak ?? size * (truth.peak_ratio ?? 1.05))
  const set = sign * (truth.permanent_set ?? 0)
  const angular = truth.moment === 1
  const stiffness = truth.stiffness_before ?? size / (angular ? 0.1 : 0.01)
  const [play, friction] = [truth.free_play ?? 0, truth.friction ?? 0]
  const loose = play > 0 || friction > 0 || givens.words.play === 'present'
  const cycles = truth.cycles === undefined ? loose : truth.cycles > 0
  const small = sign * (truth.small_load ?? 0.3 * size)
  const interval = truth.interval ?? 1
  const steps = truth.steps ?? 6
  const holding = Math.max(2, Math.round((truth.hold_time ?? 2 * holdOf(givens)) / interval) + 1)

  const up = range(steps - 1).map((i) => ({ load: (peak * (i + 1)) / steps, phase: 'loading', set: 0 }))
  const down = up.map(({ load }) => ({ load, phase: 'unloading', set })).reverse()
  const hold = range(holding).map(() => ({ load: peak, phase: 'hold', set }))
  const rows = [
    ...around('before', small, cycles, 0),
    ...up,
    ...hold,
    ...down,
    ...around('after', small, cycles, set),
  ]
  const time = rows.map((_, row) => row * interval)
  const moved = movementOf(rows, stiffness, play, friction)
  const show = (
    name: string,
    values: readonly number[],
    kind: 'force' | 'moment' | 'length' | 'angle',
    noise?: number,
    n = 0,
  ) => {
    const model = instruments[name] ?? IDEAL
    const course = { truth: values, time, dim: KINDS[kind].dim, noise: noise ?? model.resolution / 2 }
    return asShown(course, model, seed * 31 + n)
  }
  const clock: Column = { values: Float64Array.from(time), dim: KINDS.time.dim, resolution: 0 }
  const phase: Column = {
    values: new Float64Array(rows.length).fill(Number.NaN),
    texts: rows.map((row) => row.phase),
    dim: KINDS.text.dim,
    resolution: 0,
  }
  const named = channelsOf(Object.keys(instruments))
  const channels = (named.length > 0 ? named : ['deflection']).map((name, i) => [
    name,
    show(name, moved, angular ? 'angle' : 'length', truth.noise, i + 2),
  ])
  return {
    time: clock,
    load: show(
      'load',
      rows.map((row) => row.load),
      angular ? 'moment' : 'force',
      truth.load_noise,
      1,
    ),
    phase,
    ...Object.fromEntries(channels),
  }
}
