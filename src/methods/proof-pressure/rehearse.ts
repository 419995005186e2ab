/**
 * Expected readings of a pressurised structure whose truth is known: planning, simulation.
 *
 * Truth (SI, by the names of the measures): `sustained_peak` (else `peak_ratio`, 1.05, times the target), `hold_time`
 * (twice the hold), `bulge` at the target (5 mm), `set` (0), `creep` over the hold (0), `softening` (1) of the second
 * loading from `softens_from` (0) of the target upwards, at station number `soft_station` (0: all of them).
 * Beside them: `loadings` (2), `steps` (6), `repeats` at each step (1), `zeros` before and after each loading (3),
 * `interval` (10 s), `membrane` (0 straight … 1 as the cube root of the pressure), `seating` (0 m: moves in the first
 * third of the first loading and stays), `base` (0 m at the target), `noise` of a dial and `pressure_noise` (half a
 * digit each), fresh at each reading.
 *
 * Columns: time, pressure, and every `station_…` and `base_…` that an instrument is named for (else `station_1`).
 */
import { KINDS } from '../../quantity/kinds.ts'
import { asShown, IDEAL } from '../as-shown.ts'
import type { Column, Columns, Givens, Instruments } from '../method.ts'
import { stationsOf, targetOf } from './readings.ts'

type Truth = Readonly<Record<string, number>>
type Row = {
  readonly share: number
  readonly loading: number
  readonly creep: number
  readonly rests: boolean
}

const range = (count: number): number[] => Array.from({ length: count }, (_, i) => i)

const rowsOf = (givens: Givens, truth: Truth, peak: number): Row[] => {
  const interval = truth.interval ?? 10
  const holding = Math.max(3, Math.round((truth.hold_time ?? 2 * (givens.numbers.hold ?? 0)) / interval) + 1)
  const steps = truth.steps ?? 6
  const loadings = truth.loadings ?? 2
  const row = (share: number, loading: number, creep = 0): Row => ({
    share,
    loading,
    creep,
    rests: share === 0,
  })
  const zeros = (loading: number) => range(truth.zeros ?? 3).map(() => row(0, loading))
  return [
    ...range(loadings).flatMap((loading) => [
      ...zeros(loading),
      ...range(steps - 1).flatMap((step) =>
        range(truth.repeats ?? 1).map(() => row((peak * (step + 1)) / steps, loading)),
      ),
      ...range(holding).map((i) => row(peak, loading, i / (holding - 1))),
      row(peak / 2, loading, 1),
    ]),
    ...zeros(loadings),
  ]
}

/** Share of the bulge at a share of the target. */
const lawOf =
  ({ membrane = 0 }: Truth) =>
  (share: number): number =>
    (1 - membrane) * share + membrane * Math.cbrt(share)

const movementsOf = (rows: readonly Row[], truth: Truth, isSoft: boolean): number[] => {
  const law = lawOf(truth)
  const softening = isSoft ? (truth.softening ?? 1) : 1
  const from = law(truth.softens_from ?? 0)
  const last = Math.max(...rows.map(({ loading }) => loading))
  let seated = 0
  return rows.map(({ share, loading, creep, rests }) => {
    seated = Math.max(seated, Math.min(1, 3 * share))
    const elastic = law(share)
    const softer = loading === 1 ? (softening - 1) * Math.max(0, elastic - from) : 0
    const stays = loading === last && rests ? (truth.set ?? 0) : 0
    return (
      (truth.bulge ?? 5e-3) * (elastic + softer) +
      (truth.seating ?? 0) * seated +
      (rests ? 0 : (truth.creep ?? 0) * creep) +
      stays
    )
  })
}

export const rehearse = (givens: Givens, truth: Truth, instruments: Instruments, seed: number): Columns => {
  const target = targetOf(givens)
  const peak = truth.sustained_peak === undefined ? (truth.peak_ratio ?? 1.05) : truth.sustained_peak / target
  const rows = rowsOf(givens, truth, peak)
  const time = rows.map((_, row) => row * (truth.interval ?? 10))
  const show = (
    name: string,
    values: readonly number[],
    kind: 'pressure' | 'length',
    noise: number | undefined,
    n: number,
  ) => {
    const model = instruments[name] ?? IDEAL
    return asShown(
      { truth: values, time, dim: KINDS[kind].dim, noise: noise ?? model.resolution / 2 },
      model,
      97 * seed + n,
    )
  }
  const named = stationsOf(Object.keys(instruments))
  const stations = named.length > 0 ? named : ['station_1']
  const clock: Column = { values: Float64Array.from(time), dim: KINDS.time.dim, resolution: 0 }
  const columns: Record<string, Column> = {
    time: clock,
    pressure: show(
      'pressure',
      rows.map(({ share }) => share * target),
      'pressure',
      truth.pressure_noise,
      1,
    ),
  }
  const sign = target < 0 ? -1 : 1
  stations.forEach((name, k) => {
    const soft = truth.soft_station ?? 0
    const base = rows.map(({ share }) => sign * (truth.base ?? 0) * share)
    const skin = movementsOf(rows, truth, soft === 0 || soft === k + 1).map((value) => sign * value)
    columns[name] = show(
      name,
      skin.map((value, row) => value + (base[row] ?? 0)),
      'length',
      truth.noise,
      2 * k + 2,
    )
    const under = name.replace('station_', 'base_')
    if (instruments[under]) columns[under] = show(under, base, 'length', truth.noise, 2 * k + 3)
  })
  return columns
}
