/** What a line at its limit does to the pressure, and how long it must be held to be told from one that is tight. */
import type { Givens, Instruments } from '../method.ts'
import { airspeedOf, altitudeAt, impactPressure, pressureAt, SEA_LEVEL_PRESSURE } from './air.ts'
import { type LINE, testPressure } from './readings.ts'
import { unreadBarometer } from './sources.ts'

export type Line = (typeof LINE)[number]

/** The minute of the rule, s. */
const MINUTE = 60
/** Temperature of the gas for planning, K. */
export const KELVIN = 293.15

/** A line under test as planning sees it; readings count from `zero`, which is what shows with the line open. */
export type Setting = {
  readonly line: Line
  readonly pitot: boolean
  /** Absolute pressure around, and the gauge pressure that the test asks for, Pa. */
  readonly ambient: number
  readonly test: number
  /** What the instrument of the line shows at a gauge pressure, and the other way round. */
  readonly toReading: (gauge: number) => number
  readonly toGauge: (reading: number) => number
}

/** Without a field altitude (known on the day only) altitudes count from the field, at sea level. */
export const settingOf = (givens: Givens, line: Line): Setting => {
  const { field_altitude, altimeter_setting = SEA_LEVEL_PRESSURE } = givens.numbers
  const shift = field_altitude === undefined ? 0 : altitudeAt(altimeter_setting)
  const ambient = pressureAt((field_altitude ?? 0) + shift)
  const scale = {
    altitude: [
      (gauge: number) => altitudeAt(ambient + gauge) - shift,
      (altitude: number) => pressureAt(altitude + shift) - ambient,
    ],
    airspeed: [airspeedOf, impactPressure],
    pressure: [(gauge: number) => gauge, (gauge: number) => gauge],
  } as const
  const [toReading, toGauge] = scale[line]
  return {
    line,
    pitot: givens.words.side === 'pitot',
    ambient,
    test: testPressure(givens, ambient),
    toReading,
    toGauge,
  }
}

/** Relative rate of loss, 1/s, of a line that just loses `loss` in the minute after the stated pressure: p = p_T e^(−kt). */
export const rateAt = ({ pitot, ambient, test }: Setting, loss: number): number => {
  const left = pitot
    ? impactPressure(airspeedOf(test) - loss)
    : pressureAt(altitudeAt(ambient + test) - loss) - ambient
  return -Math.log(left / test) / MINUTE
}

/** Pa for each unit of the loss (m or m/s) at the stated pressure. */
const perLoss = ({ pitot, ambient, test }: Setting): number => {
  const step = pitot ? 0.1 : 1
  const at = (by: number) =>
    pitot ? impactPressure(airspeedOf(test) + by) : pressureAt(altitudeAt(ambient + test) + by)
  return Math.abs(at(step) - at(-step)) / (2 * step)
}

/**
 * Expanded uncertainty (k = 2) of the loss in a minute after a hold in seconds, m or m/s: digits r/√6 from end to end,
 * change of the gas temperature P u(ΔT)/T, the barometer that nobody reads against a gauge, drift. Scatter comes on top.
 * NaN where the indicator states no drift.
 */
export const expectedU = (
  setting: Setting,
  givens: Givens,
  instruments: Instruments,
  hold: number,
): number => {
  const { line, test, ambient, toReading, toGauge } = setting
  const model = instruments[line]
  const { temperature, baro } = instruments
  const at = toReading(test)
  const step = Math.max(1e-6 * Math.abs(at), 1e-6)
  const perReading = Math.abs(toGauge(at + step) - toGauge(at - step)) / (2 * step)
  const perKelvin = (ambient + test) / KELVIN
  const unread = line !== 'altitude' && !baro ? unreadBarometer(hold) : 0
  const change = Math.hypot(
    ((model?.resolution ?? Number.NaN) / Math.sqrt(6)) * perReading,
    (givens.numbers.temperature_error ?? Number.NaN) * perKelvin,
    ((temperature?.resolution ?? 0) / Math.sqrt(6)) * perKelvin,
    (baro?.resolution ?? 0) / Math.sqrt(6),
    unread,
    (model?.drift ?? Number.NaN) * hold * perReading,
  )
  return (2 * change * MINUTE) / hold / perLoss(setting)
}

const SHORTEST = 10
const LONGEST = 3600

/** Shortest hold, s, after which the uncertainty of the loss is a quarter of the limit; null where even an hour is too short, or it is not known. */
export const holdFor = (
  setting: Setting,
  givens: Givens,
  instruments: Instruments,
  limit: number,
): number | null => {
  const enough = (hold: number) => expectedU(setting, givens, instruments, hold) <= limit / 4
  if (!enough(LONGEST)) return null
  // Every term falls with the hold or stays, so there is one crossing.
  let [low, high] = [SHORTEST, LONGEST]
  while (high - low > 1) {
    const middle = (low + high) / 2
    if (enough(middle)) high = middle
    else low = middle
  }
  return high
}
