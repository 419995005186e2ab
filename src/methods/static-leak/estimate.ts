/** Readings and givens → measures and the scatter of their fits. */
import { abscissaOf, fitLine, fitOver } from '../../quantity/fit.ts'
import { mapped } from '../../quantity/loops.ts'
import type { Part, Result } from '../../quantity/types.ts'
import { widening } from '../blocks.ts'
import { halvesOf } from '../halves.ts'
import type { Columns, Estimate, Givens, Selection } from '../method.ts'
import { airspeedOf, altitudeAt } from './air.ts'
import { type Points, pointsOf } from './points.ts'
import { slowName } from './readings.ts'
import { asHold } from './select.ts'

/** The minute of the rule, s. */
const MINUTE = 60

const part = (pool: string, name: string, u: number, dof: number): Record<string, Part> =>
  dof >= 1 && Number.isFinite(u) ? { [`${pool}/${name}`]: { u, dof, pool, shape: 't' } } : {}

/**
 * What is left of the stated pressure p_T a minute later, where the leak follows the pressure:
 * p_T·exp(60 s · Ṗ/p_T) with the rate Ṗ at p_T.
 */
const afterAMinute = (points: Points, rate: number): number =>
  points.test * Math.exp((MINUTE * rate) / points.test)

const lossOf = (givens: Givens, points: Points, rate: number): number => {
  const left = afterAMinute(points, rate)
  return givens.words.side === 'pitot'
    ? airspeedOf(points.test) - airspeedOf(left)
    : altitudeAt(points.ambient + points.test) - altitudeAt(points.ambient + left)
}

const refusal = (points: Points): string | null => {
  if (points.time.length < 2) return 'Fewer than two complete readings are left after the settle time.'
  if (!Number.isFinite(points.test) || points.test === 0)
    return 'The pressure that the test asks for cannot be told from what is given.'
  if (!(points.meanRatio > 0))
    return 'The pressure read is on the other side of ambient than the test asks for.'
  return null
}

export const estimate = (
  columns: Columns,
  givens: Givens,
  selection: Selection,
  valuesOnly = false,
): Result<Estimate, string> => {
  const hold = asHold(selection)
  const points = pointsOf(columns, givens, hold)
  const refused = refusal(points)
  if (refused) return { ok: false, error: refused }
  const { time, effective, gauge, absolute, compensated, test } = points

  const fit = fitLine(effective, compensated)
  const times = abscissaOf(time)
  const raw = fitOver(times, absolute)
  const onTime = fitOver(times, compensated)
  // A path that is not laminar does not follow τ; the name is a slow error that `sources.ts` moves.
  const rate = fit.slope * (1 + (givens.numbers[slowName('path', 'level')] ?? 0))
  const name = givens.words.side === 'pitot' ? 'airspeed_loss' : 'altitude_loss'
  const least = gauge.reduce((smallest, p) => Math.min(smallest, p / test), Number.POSITIVE_INFINITY)
  const halves = halvesOf(effective, compensated)
  const values: Record<string, number> = {
    [name]: lossOf(givens, points, rate),
    pressure_rate: rate,
    raw_rate: raw.slope,
    temperature_part: raw.slope - onTime.slope,
    start_ratio: (gauge[0] as number) / test,
    least_ratio: least,
    ...(halves ? { halves: halves.value } : {}),
  }
  if (valuesOnly) return { ok: true, value: { values, scatter: {}, residual: {} } }

  const fast = hold.rows.length > time.length
  const uRate = fit.uSlope * (fast ? widening(fit.residuals) : 1)
  const step = Math.max(uRate, 1e-6 * Math.abs(test))
  const perRate = (lossOf(givens, points, rate + step) - lossOf(givens, points, rate - step)) / (2 * step)
  const shown = fitOver(times, gauge)
  const thermal = fitOver(
    times,
    mapped(absolute, (P, k) => P - (compensated[k] as number)),
  )
  const single = shown.residual / Math.abs(test)
  const scatter: Estimate['scatter'] = {
    [name]: part('hold', 'slope', perRate * uRate, fit.dof),
    pressure_rate: part('hold', 'slope', uRate, fit.dof),
    raw_rate: part('raw', 'slope', raw.uSlope, raw.dof),
    temperature_part: part('thermal', 'slope', thermal.uSlope, thermal.dof),
    start_ratio: part('gauge', 'start', single, shown.dof),
    least_ratio: part('gauge', 'least', single, shown.dof),
    ...(halves ? { halves: part('halves', 'difference', halves.u, halves.dof) } : {}),
  }
  return { ok: true, value: { values, scatter, residual: hold.residual } }
}
