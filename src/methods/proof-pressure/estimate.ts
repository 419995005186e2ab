/** Columns and givens → numbers. What rows they rest on was chosen by `select`. */
import type { Result } from '../../quantity/types.ts'
import type { Columns, Estimate, Givens, Selection } from '../method.ts'
import type { Choice } from './choice.ts'
import { gasEnergy, standoffDistance } from './energy.ts'
import { at, targetOf } from './readings.ts'
import { part, type Scatter, times } from './scatter.ts'
import { estimateStation, type Station } from './station.ts'

const lasts = (columns: Columns, rows: { from: number; to: number } | null): number =>
  rows ? at(columns.time, rows.to) - at(columns.time, rows.from) : 0

/**
 * The hold began between the reading before the first and the first, and ended between the last and the next:
 * two rectangular widths.
 */
const sampling = (columns: Columns, { held }: Choice): Scatter => {
  if (!held) return {}
  const gap = (a: number, b: number) => Math.abs(at(columns.time, b) - at(columns.time, a)) || 0
  const u = Math.hypot(gap(held.from - 1, held.from), gap(held.to, held.to + 1)) / Math.sqrt(12)
  const known = { u, dof: Number.POSITIVE_INFINITY, pool: 'sampling', shape: 'rectangular' } as const
  return u > 0 ? { sampling: known } : {}
}

/** Energy at the target or the highest reading, whichever is more: before the test there is only the target. */
const energyOf = (columns: Columns, givens: Givens): number => {
  const target = targetOf(givens)
  // Under suction the energy is that of the air outside.
  if (target < 0) return Number.NaN
  let highest = target
  for (const value of columns.pressure?.values ?? []) if (value > highest) highest = value
  return gasEnergy(highest, givens.numbers.volume ?? Number.NaN)
}

type Draft = { readonly values: Record<string, number>; readonly scatter: Record<string, () => Scatter> }

const none = (): Scatter => ({})

const put = ({ values, scatter }: Draft, name: string, value: number, of: () => Scatter = none): void => {
  if (!Number.isFinite(value)) return
  values[name] = value
  scatter[name] = of
}

const putPressure = (draft: Draft, columns: Columns, givens: Givens, choice: Choice): void => {
  const { peak, held, possible, guarded, sign, pressureSpread } = choice
  const size = Math.abs(targetOf(givens))
  if (peak) {
    const spread = () => part('pressure', 'peak', pressureSpread.s, pressureSpread)
    const value = sign * at(columns.pressure, peak.lowest)
    put(draft, 'sustained_peak', sign * value, () => times(spread(), sign))
    put(draft, 'peak_ratio', value / size, () => times(spread(), 1 / size))
  }
  const hold = givens.numbers.hold ?? 0
  const sure = lasts(columns, held)
  // Between the two the gauge cannot tell whether the pressure was held as long as asked: then it is not known.
  if (guarded && (sure >= hold || lasts(columns, possible) < hold))
    put(draft, 'hold_time', sure, () => sampling(columns, choice))
  const energy = energyOf(columns, givens)
  put(draft, 'stored_energy', energy)
  const distance = standoffDistance(givens.words.edition ?? 'pcc2_501', energy)
  put(draft, 'standoff', Math.max(distance, givens.numbers.own_distance ?? 0))
}

/** Suffixed names for every station, and bare ones of the worst. */
const putStations = (draft: Draft, choice: Choice, stations: readonly Station[]): void => {
  stations.forEach((station, k) => {
    for (const [measure, value] of Object.entries(station.values)) {
      put(draft, `${measure}_${choice.channels[k]?.suffix}`, value, station.scatter[measure])
      if (k === choice.worst[measure]) put(draft, measure, value, station.scatter[measure])
    }
  })
}

export const estimate = (
  columns: Columns,
  givens: Givens,
  selection: Selection,
  valuesOnly = false,
): Result<Estimate, string> => {
  const choice = selection as Choice
  const target = targetOf(givens)
  if (!(Math.abs(target) > 0))
    return {
      ok: false,
      error:
        'No target pressure: give `target`, or `density`, `load_factor` and `column` from which it follows.',
    }
  if (columns.time?.values.some((time, row) => time < at(columns.time, row - 1)))
    return { ok: false, error: 'The time goes back from one row to the next, so no hold can be counted.' }
  const draft: Draft = { values: {}, scatter: {} }
  putPressure(draft, columns, givens, choice)
  putStations(
    draft,
    choice,
    choice.channels.map((channel) => estimateStation(columns, givens, choice, channel)),
  )
  if (Object.keys(draft.values).length === 0)
    return { ok: false, error: 'No reading of the pressure lasts as long as the hold that is asked.' }
  const { values } = draft
  if (valuesOnly) return { ok: true, value: { values, scatter: {}, residual: {} } }
  const scatter = Object.fromEntries(Object.entries(draft.scatter).map(([name, of]) => [name, of()]))
  const residual = Object.fromEntries(choice.channels.map(({ name, spread }) => [name, spread.s]))
  return {
    ok: true,
    value: { values, scatter, residual: { ...residual, pressure: choice.pressureSpread.s } },
  }
}
