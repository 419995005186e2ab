/** From readings to the points that are fitted: one a row, or one a block where logged fast. */
import { cellMeans } from '../blocks.ts'
import type { Columns, Givens } from '../method.ts'
import { columnsUsed, readingsOf } from './readings.ts'
import type { Hold } from './select.ts'
import { type Volume, volumeOf } from './volume.ts'

export type Points = {
  /** Seconds since the first fitted reading. */
  readonly time: Float64Array
  /** Effective time τ, s: what plain time would have been had the test pressure stood all along. */
  readonly effective: Float64Array
  /** Gauge pressure, Pa. */
  readonly gauge: Float64Array
  /** P V/V₀, Pa: walls allowed for, temperature not. */
  readonly walls: Float64Array
  /** P*, Pa: walls and temperature allowed for. */
  readonly compensated: Float64Array
  readonly volume: Volume
  /** Temperature of the gas at the first fitted reading, K, to which P* refers. */
  readonly temperature: number
  /** Mean pressure of the air around, Pa. */
  readonly ambient: number
  /** Mean of p/test_pressure over the hold, by time. */
  readonly meanRatio: number
}

/** The columns of the hold, cell by cell. Within a cell of a long log nothing bends. */
const inCells = (columns: Columns, rows: Int32Array, cells: Int32Array): Columns =>
  Object.fromEntries(
    ['time', ...columnsUsed(columns)].flatMap((name) => {
      const column = columns[name]
      return column ? [[name, { ...column, values: cellMeans(column.values, rows, cells) }]] : []
    }),
  )

/**
 * P* = P (V/V₀) (T₀/T) (1 + 3 α ΔT), which is V₀⁻¹ T₀ times the amount of gas times R: constant while nothing
 * leaks. τ = ∫ p/p_T dt by trapezia: dn/dt of a laminar leak is proportional to p, so n is straight on τ.
 */
export const pointsOf = (columns: Columns, givens: Givens, hold: Hold): Points => {
  const { rows, cells, starts, span } = hold
  const readings = readingsOf(inCells(columns, rows, cells), givens, span)
  const testPressure = givens.numbers.test_pressure ?? Number.NaN
  const expansion = 3 * (givens.numbers.thermal_expansion ?? 0)
  const first = 0
  const gaugeFirst = readings.gauge(first)
  const temperature = readings.temperature(first)
  const volume = volumeOf(givens, gaugeFirst, gaugeFirst + readings.ambient(first))
  const give = volume.compliance / volume.zero

  const count = starts.length - 1
  const make = () => new Float64Array(count)
  const [time, effective, gauge, walls, compensated] = [make(), make(), make(), make(), make()]
  let tau = 0
  let ambient = 0
  let lastTime = readings.time(first)
  let lastRatio = gaugeFirst / testPressure
  for (let block = 0; block < count; block += 1) {
    const from = starts[block] as number
    const to = starts[block + 1] as number
    let [sumTime, sumTau, sumGauge, sumWalls, sumCompensated] = [0, 0, 0, 0, 0]
    for (let k = from; k < to; k += 1) {
      const t = readings.time(k)
      const p = readings.gauge(k)
      const b = readings.ambient(k)
      const T = readings.temperature(k)
      const ratio = p / testPressure
      tau += ((ratio + lastRatio) / 2) * (t - lastTime)
      lastTime = t
      lastRatio = ratio
      const inWalls = (p + b) * (1 + give * p)
      sumTime += t - span.start
      sumTau += tau
      sumGauge += p
      sumWalls += inWalls
      sumCompensated += inWalls * (temperature / T) * (1 + expansion * (T - temperature))
      ambient += b
    }
    const size = to - from
    time[block] = sumTime / size
    effective[block] = sumTau / size
    gauge[block] = sumGauge / size
    walls[block] = sumWalls / size
    compensated[block] = sumCompensated / size
  }
  const length = lastTime - readings.time(first)
  return {
    time,
    effective,
    gauge,
    walls,
    compensated,
    volume,
    temperature,
    ambient: ambient / (cells.length - 1),
    meanRatio: length > 0 ? tau / length : Number.NaN,
  }
}
