/** The gas in the article over time: warming, weather, giving walls and a leak that follows the pressure. */
import type { Givens } from '../method.ts'
import { referencePressure, referenceTemperature, testSign } from './constants.ts'
import { volumeOf } from './volume.ts'

export type GasHistory = {
  readonly time: Float64Array
  readonly gauge: Float64Array
  readonly ambient: Float64Array
  /** What a perfect sensor would read where the sensor sits, K. */
  readonly sensor: Float64Array
}

/** Gauge pressure of so much gas, amount · R in Pa m³/K: (p + b)(V₀ + C p)(1 + 3 α ΔT) = amount · T for p. */
const gaugeOf = (
  amount: number,
  temperature: number,
  ambient: number,
  zero: number,
  give: number,
  swell: number,
) => {
  const product = (amount * temperature) / (zero * swell)
  const c = give / zero
  if (c === 0) return product - ambient
  const half = (1 + c * ambient) / 2
  // The root near product − b, in the form that does not cancel.
  return (product - ambient) / (half + Math.sqrt(half * half + c * (product - ambient)))
}

export const gasHistory = (givens: Givens, truth: Readonly<Record<string, number>>): GasHistory => {
  const testPressure = givens.numbers.test_pressure ?? Number.NaN
  const start = truth.start_pressure ?? 1.06 * testPressure
  const ambientStart = truth.ambient ?? 101_325
  const first = truth.temperature ?? 293.15
  const { zero, compliance } = volumeOf(givens, start, start + ambientStart)
  const every = truth.every ?? 60
  const length = truth.hold_time ?? (givens.numbers.settle ?? 0) + (givens.numbers.hold ?? 0)
  const rows = Math.max(2, Math.floor(length / every + 1e-9) + 1)
  const expansion = 3 * (givens.numbers.thermal_expansion ?? 0)
  const exponent = truth.path_exponent ?? 1
  // Amount of gas per second at the test pressure, in Pa m³/K per second.
  const leak =
    (-testSign(givens) * (truth.leak_rate ?? 0) * referencePressure(givens)) / referenceTemperature(givens)

  const time = Float64Array.from({ length: rows }, (_, row) => row * every)
  const at = (share: number) => ({
    ambient: ambientStart + (truth.ambient_change ?? 0) * share,
    sensor: first + (truth.warming ?? 0) * share + (truth.bow ?? 0) * 4 * share * (1 - share),
    ahead:
      (truth.gas_less_sensor ?? 0) * share +
      (truth.gas_less_sensor_bend ?? 0) * (1 - Math.abs(2 * share - 1)),
  })
  const pressure = (amount: number, share: number): number => {
    const { ambient, sensor, ahead } = at(share)
    const temperature = sensor + ahead
    return gaugeOf(amount, temperature, ambient, zero, compliance, 1 + expansion * (temperature - first))
  }
  const flow = (amount: number, share: number): number => {
    const ratio = pressure(amount, share) / testPressure
    return leak * Math.sign(ratio) * Math.abs(ratio) ** exponent
  }

  let amount = ((start + ambientStart) * (zero + compliance * start)) / first
  const total = Math.max(every * (rows - 1), every)
  const gauge = new Float64Array(rows)
  for (let row = 0; row < rows; row += 1) {
    const share = (row * every) / total
    gauge[row] = pressure(amount, share)
    // Midpoint rule: the pressure changes little from reading to reading.
    const half = amount + (flow(amount, share) * every) / 2
    amount += flow(half, share + every / (2 * total)) * every
  }
  const shares = time.map((t) => t / total)
  return {
    time,
    gauge,
    ambient: shares.map((share) => at(share).ambient),
    sensor: shares.map((share) => at(share).sensor),
  }
}
