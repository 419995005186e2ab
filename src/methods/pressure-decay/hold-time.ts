/** Before the test: how long to hold so that these instruments can decide. */
import type { Givens, InstrumentModel, Instruments } from '../method.ts'
import { referencePressure, referenceTemperature } from './constants.ts'
import { nominalAmbient } from './readings.ts'
import { unreadBarometer } from './sources.ts'
import { volumeOf } from './volume.ts'

export type HoldPlan =
  /** `hold` in seconds, after settling; `U` is what the leak will then carry, m³/s for 95 % (k = 2). */
  | { readonly decidable: true; readonly hold: number; readonly U: number }
  | { readonly decidable: false; readonly why: string }

const SHORTEST = 60
const LONGEST = 7 * 86_400

export const gaugeOf = (instruments: Instruments): InstrumentModel | undefined =>
  instruments.pressure ?? instruments.absolute_pressure ?? instruments.vacuum ?? instruments.leg_article

/** Factor from a length of column to a pressure, for U-tubes; 1 for gauges. */
const pascalsPerDigit = (instruments: Instruments): number =>
  gaugeOf(instruments) === instruments.leg_article
    ? Math.SQRT2 * (instruments.leg_article?.density ?? Number.NaN) * 9.80665
    : 1

/**
 * Expanded uncertainty (k = 2) of a leak of the size of `limit` after a hold in seconds, m³/s at reference
 * conditions: digits r/√6 end to end and r/√12 fresh at each reading (slope of N equal steps,
 * u = (s/T)√(12(N−1)/(N(N+1)))), change of the gas temperature, barometer, drift, and the gauge's scale error.
 * The uncertainty of the volume is proportional to the leak and not in here. NaN where the gauge states too little.
 */
export const expectedU = (
  givens: Givens,
  instruments: Instruments,
  limit: number,
  hold: number,
  every: number,
): number => {
  const testPressure = givens.numbers.test_pressure ?? Number.NaN
  const ambient = nominalAmbient(givens)
  const absolute = ambient + testPressure
  const kelvin = referenceTemperature(givens)
  const { zero, compliance } = volumeOf(givens, testPressure, absolute)
  const effective = zero + (testPressure + absolute) * compliance
  const gauge = gaugeOf(instruments)
  const { temperature, baro } = instruments
  const perKelvin = absolute / kelvin
  const digit = (gauge?.resolution ?? Number.NaN) * pascalsPerDigit(instruments)
  const count = Math.max(2, Math.floor(hold / every) + 1)
  const fresh = (digit / Math.sqrt(12)) * Math.sqrt((12 * (count - 1)) / (count * (count + 1)))
  const ends = [
    digit / Math.sqrt(6),
    fresh,
    (givens.numbers.temperature_error ?? Number.NaN) * perKelvin,
    ((temperature?.resolution ?? 0) / Math.sqrt(6)) * perKelvin,
    baro ? baro.resolution / Math.sqrt(6) : instruments.absolute_pressure ? 0 : unreadBarometer(hold),
  ].map((change) => change / hold)
  const needsDrift = gauge !== instruments.leg_article
  const drifts = [needsDrift ? (gauge?.drift ?? Number.NaN) : 0, baro ? (baro.drift ?? Number.NaN) : 0]
  const toLeak = (effective * referenceTemperature(givens)) / (kelvin * referencePressure(givens))
  const rate = toLeak * Math.hypot(...ends, ...drifts)
  return 2 * Math.hypot(rate, limit * (gauge?.gain ?? Number.NaN))
}

/**
 * The hold after which the expanded uncertainty of the leak is a quarter of the limit, or why there is none.
 * `limit` in m³/s at reference conditions; `every` is the time between readings, s.
 */
export const planHold = (givens: Givens, instruments: Instruments, limit: number, every = 60): HoldPlan => {
  const expected = (hold: number) => expectedU(givens, instruments, limit, hold, every)
  const atBest = expected(LONGEST)
  if (Number.isNaN(atBest)) {
    return {
      decidable: false,
      why: 'whether it can be decided is not known: the gauge must state resolution, accuracy and drift, and the volume must be given.',
    }
  }
  if (atBest > limit / 4) {
    const share = Math.round((atBest / limit) * 100)
    return {
      decidable: false,
      why:
        share < 100
          ? `no hold brings U down to a quarter of the limit with such instruments; even after a week it is ${share} % of it, so that a result near the limit will stay undetermined.`
          : `it cannot be decided with such instruments: even after a week U is ${share} % of the limit.`,
    }
  }
  if (expected(SHORTEST) <= limit / 4) return { decidable: true, hold: SHORTEST, U: expected(SHORTEST) }
  // Every term falls with the length of the hold or stays, so there is one crossing.
  let [low, high] = [SHORTEST, LONGEST]
  while (high - low > 1) {
    const middle = (low + high) / 2
    if (expected(middle) > limit / 4) low = middle
    else high = middle
  }
  return { decidable: true, hold: high, U: expected(high) }
}
