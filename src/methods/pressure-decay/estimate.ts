/** Readings and givens → measures and the scatter of their fits. */
import { abscissaOf, fitOver, straightOver } from '../../quantity/fit.ts'
import { mapped } from '../../quantity/loops.ts'
import type { Part, Result } from '../../quantity/types.ts'
import { widening } from '../blocks.ts'
import { changeOfSlope, halvesOf } from '../halves.ts'
import type { Columns, Estimate, Givens, Selection } from '../method.ts'
import { airViscosity, referencePressure, referenceTemperature, testSign } from './constants.ts'
import { type Points, pointsOf } from './points.ts'
import { slowName } from './readings.ts'
import { asHold, type Hold } from './select.ts'

type Scatter = Record<string, Record<string, Part>>

/** One orthogonal part of a fit; none where fewer than three points show no scatter. */
const part = (pool: string, name: string, u: number, dof: number): Record<string, Part> =>
  dof >= 1 && Number.isFinite(u) ? { [`${pool}/${name}`]: { u, dof, pool, shape: 't' } } : {}

/** Index of the point with least of the test pressure left. */
const leastOf = (gauge: Float64Array, sign: number): number => {
  let least = 0
  for (let k = 1; k < gauge.length; k += 1)
    if (sign * (gauge[k] as number) < sign * (gauge[least] as number)) least = k
  return least
}

/** Liquid per throughput of air, m³/s per Pa m³/s: both flows of one laminar path, their geometry eliminated. */
const liquidPerAir = (givens: Givens, points: Points): number => {
  const { liquid_viscosity, liquid_head, test_pressure } = givens.numbers
  if (liquid_viscosity === undefined || liquid_head === undefined || test_pressure === undefined) {
    return Number.NaN
  }
  const squares = Math.abs((points.ambient + test_pressure) ** 2 - points.ambient ** 2)
  return (2 * airViscosity(points.temperature) * liquid_head) / (liquid_viscosity * squares)
}

const refusal = (points: Points, hold: Hold): string | null => {
  if (hold.refused) return hold.refused
  if (points.time.length < 2) return 'Fewer than two complete readings are left after the settle time.'
  if (!(points.volume.zero > 0)) return 'The volume of the gas cannot be told from what is given.'
  if (!(points.meanRatio > 0)) return 'The pressure read is on the other side of ambient than test_pressure.'
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
  const refused = refusal(points, hold)
  if (refused) return { ok: false, error: refused }

  const { time, effective, gauge, walls, compensated, volume, temperature } = points
  const times = abscissaOf(time)
  const along = abscissaOf(effective)
  const onTime = straightOver(times, compensated)
  const onEffective = straightOver(along, compensated)
  const raw = straightOver(times, gauge)
  const uncompensated = straightOver(times, walls)
  // Under vacuum the amount of gas grows where it leaks, under pressure it shrinks.
  const losing = -testSign(givens)
  const toThroughput = losing * volume.zero
  const toVolume = referenceTemperature(givens) / (temperature * referencePressure(givens))
  // A path that is not laminar does not follow τ; the name is a slow error that `sources.ts` moves.
  const unlike = 1 + (givens.numbers[slowName('path', 'level')] ?? 0)
  const leak = toThroughput * onEffective.slope * unlike * toVolume - (givens.numbers.blank ?? 0)
  const throughput = leak / toVolume
  const liquid = liquidPerAir(givens, points)
  // d(P V)/dP over V₀: by how much more gas the walls take up than stiff ones.
  const stiff = 1 + ((2 * raw.atMean + points.ambient) * volume.compliance) / volume.zero
  const length = hold.span.end - hold.span.start
  const least = leastOf(gauge, -losing)
  const change = changeOfSlope(effective, compensated)

  const values: Record<string, number> = {
    mean_pressure: raw.atMean,
    pressure_at_start: gauge[0] as number,
    pressure_least: gauge[least] as number,
    pressure_rate: onTime.slope,
    raw_rate: raw.slope,
    temperature_part: (uncompensated.slope - onTime.slope) / stiff,
    leak_rate: leak,
    leak_throughput: throughput,
    loss_fraction: (losing * onTime.slope * length) / onTime.intercept,
    ...(change === null ? {} : { halves: change }),
    ...(Number.isFinite(liquid) ? { liquid_leak: throughput * liquid } : {}),
  }
  const { residual } = hold
  if (valuesOnly) return { ok: true, value: { values, scatter: {}, residual } }

  const fast = hold.cells.length > hold.starts.length
  const fits = {
    onTime: fitOver(times, compensated),
    onEffective: fitOver(along, compensated),
    raw: fitOver(times, gauge),
  }
  const halves = halvesOf(effective, compensated)
  const uSlope = fits.onEffective.uSlope * (fast ? widening(fits.onEffective.residuals) : 1)
  const thermal = fitOver(
    times,
    mapped(walls, (value, k) => value - (compensated[k] as number)),
  )
  const slope = (factor: number) => part('hold', 'slope', factor * uSlope, fits.onEffective.dof)
  const scatter: Scatter = {
    mean_pressure: part('gauge', 'mean', fits.raw.uMean, fits.raw.dof),
    pressure_at_start: part('gauge', 'start', fits.raw.residual, fits.raw.dof),
    pressure_least: part('gauge', 'least', fits.raw.residual, fits.raw.dof),
    pressure_rate: slope(fits.onTime.uSlope / fits.onEffective.uSlope),
    raw_rate: part('gauge', 'slope', fits.raw.uSlope, fits.raw.dof),
    temperature_part: part('thermal', 'slope', thermal.uSlope / stiff, thermal.dof),
    leak_rate: slope(toThroughput * unlike * toVolume),
    leak_throughput: slope(toThroughput * unlike),
    loss_fraction: slope(
      (((losing * fits.onTime.uSlope) / fits.onEffective.uSlope) * length) / onTime.intercept,
    ),
    ...(halves ? { halves: part('halves', 'difference', halves.u, halves.dof) } : {}),
    ...(Number.isFinite(liquid) ? { liquid_leak: slope(toThroughput * unlike * liquid) } : {}),
  }
  return { ok: true, value: { values, scatter, residual } }
}
