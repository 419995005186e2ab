/**
 * Readings as instruments would show them of a line whose leak is known: planning, simulation, coverage.
 *
 * Truth, SI: `altitude_loss` or `airspeed_loss` in the minute after the stated pressure (0); `path_exponent` (1
 * laminar, 0.5 orifice); `start_ratio` (1.06) of the gauge pressure at the first reading; `hold_time` (settle and
 * hold of the givens); `every` (10 s); `temperature` (293.15 K); `warming` (0 K) of gas and sensor to the end;
 * `gas_less_sensor` (0 K) of the gas beyond that, `gas_less_sensor_bend` (0 K) in mid-test, gone at the end; `ambient` (of `field_altitude`, else sea level) and
 * `ambient_change` (0 Pa) to the end; `noise` (0, in the unit of the column) fresh at each reading,
 * `temperature_noise` (0 K).
 *
 * Columns: `altitude`, `airspeed` or `pressure` as an instrument is named for; else the indicator of the side.
 */
import { KINDS } from '../../quantity/kinds.ts'
import { normal, random, rectangular } from '../../quantity/random.ts'
import { IDEAL } from '../as-shown.ts'
import type { Column, Columns, Givens, Instruments } from '../method.ts'
import { airspeedOf, altitudeAt, impactPressure, pressureAt, SEA_LEVEL_PRESSURE } from './air.ts'
import { LINE, testPressure } from './readings.ts'

type Truth = Readonly<Record<string, number>>

const STEPS = 20

/** Relative rate of loss (1/s) at the stated pressure that makes the stated loss in the minute after it. */
const rateOf = (truth: Truth, pitot: boolean, ambient: number, test: number): number => {
  const left = pitot
    ? impactPressure(airspeedOf(test) - (truth.airspeed_loss ?? 0))
    : pressureAt(altitudeAt(ambient + test) - (truth.altitude_loss ?? 0)) - ambient
  return -Math.log(left / test) / 60
}

export const rehearse = (givens: Givens, truth: Truth, instruments: Instruments, seed: number): Columns => {
  const generator = random(seed)
  const { numbers, words } = givens
  const pitot = words.side === 'pitot'
  const setting = altitudeAt(numbers.altimeter_setting ?? SEA_LEVEL_PRESSURE)
  const ambient = truth.ambient ?? pressureAt((numbers.field_altitude ?? 0) + setting)
  const test = testPressure(givens, ambient)
  const rate = rateOf(truth, pitot, ambient, test)
  const exponent = truth.path_exponent ?? 1
  const total = truth.hold_time ?? (numbers.settle ?? 0) + (numbers.hold ?? 60)
  const every = truth.every ?? 10
  const start = truth.temperature ?? 293.15
  const count = Math.floor(total / every + 1e-9) + 1
  const time = Float64Array.from({ length: count }, (_, k) => k * every)

  const ambientAt = (t: number) => ambient + ((truth.ambient_change ?? 0) * t) / total
  const sensorAt = (t: number) => start + ((truth.warming ?? 0) * t) / total
  const bend = (t: number) => (truth.gas_less_sensor_bend ?? 0) * (1 - Math.abs((2 * t) / total - 1))
  const gasAt = (t: number) => sensorAt(t) + ((truth.gas_less_sensor ?? 0) * t) / total + bend(t)
  // Amount of gas as P T₀/T; the leak follows the gauge pressure to the power of its path.
  const gaugeOf = (amount: number, t: number) => (amount * gasAt(t)) / start - ambientAt(t)
  const flow = (amount: number, t: number) => {
    const ratio = gaugeOf(amount, t) / test
    return -rate * test * Math.sign(ratio) * Math.abs(ratio) ** exponent
  }
  let amount = ambient + test * (truth.start_ratio ?? 1.06)
  const gauge = time.map((t, k) => {
    const step = k === 0 ? 0 : every / STEPS
    for (let s = 0; s < STEPS; s += 1) {
      const at = t - every + s * step
      const half = amount + (flow(amount, at) * step) / 2
      amount += flow(half, at + step / 2) * step
    }
    return gaugeOf(amount, t)
  })

  const shown = (name: string, kind: Column['dim'], values: Float64Array, noise = 0): Column => {
    const model = instruments[name] ?? IDEAL
    const draw = (u: number | null | undefined) =>
      (u ?? 0) * (model.shape === 'rectangular' ? rectangular : normal)(generator)
    const [gain, offset, drift] = [draw(model.gain), draw(model.offset), draw(model.drift)]
    const zero = name === 'temperature' ? 273.15 : 0
    const r = model.resolution
    const read = values.map((value, k) => {
      const error = gain * (value - zero) + offset + drift * (time[k] as number)
      const exact = value + error + noise * normal(generator)
      return r > 0 ? zero + Math.round((exact - zero) / r) * r : exact
    })
    return { values: read, dim: kind, resolution: r, instrument: model.id }
  }
  const line = LINE.find((name) => instruments[name]) ?? (pitot ? 'airspeed' : 'altitude')
  const onLine = {
    altitude: () =>
      shown(
        'altitude',
        KINDS.length.dim,
        gauge.map((p, k) => altitudeAt(p + ambientAt(time[k] as number)) - setting),
        truth.noise,
      ),
    airspeed: () => shown('airspeed', KINDS.speed.dim, gauge.map(airspeedOf), truth.noise),
    pressure: () => shown('pressure', KINDS.pressure.dim, gauge, truth.noise),
  }
  return {
    time: { values: time, dim: KINDS.time.dim, resolution: 0 },
    [line]: onLine[line](),
    ...(instruments.temperature
      ? {
          temperature: shown(
            'temperature',
            KINDS.temperature.dim,
            time.map(sensorAt),
            truth.temperature_noise,
          ),
        }
      : {}),
    ...(instruments.baro ? { baro: shown('baro', KINDS.pressure.dim, time.map(ambientAt)) } : {}),
  }
}
