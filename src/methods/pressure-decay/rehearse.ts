/**
 * Readings as instruments would show them of an article whose leak is known: for planning, simulation and
 * coverage. The article has the walls, volume and expansion that the givens state.
 *
 * Truth, SI, with what stands for it where it is left out:
 * `leak_rate` (0), at the test pressure, positive where it is being lost; `path_exponent` (1 laminar, 0.5 orifice);
 * `start_pressure` (1.06 test pressure), gauge at the first reading; `hold_time` (settle and hold of the givens);
 * `every` (60 s); `temperature` (293.15 K) of the gas at the start; `warming` (0 K) of gas and sensor to the end;
 * `gas_less_sensor` (0 K): further warming of the gas that the sensor does not see, `gas_less_sensor_bend` (0 K): that
 * in mid-test, gone again at the end; `bow` (0 K) of both in mid-test;
 * `ambient` (101 325 Pa) and `ambient_change` (0 Pa) to the end; `noise` (0 Pa), `temperature_noise` (0 K),
 * `ambient_noise` (0 Pa): fresh at each reading; `wander` (0 Pa) with `wander_time` (120 s): noise of the gauge
 * that is correlated over that time (first-order).
 */
import { normal, random } from '../../quantity/random.ts'
import { IDEAL } from '../as-shown.ts'
import type { Columns, Givens, InstrumentModel, Instruments } from '../method.ts'
import { gasHistory } from './gas.ts'
import { observe } from './observe.ts'

export const rehearse = (
  givens: Givens,
  truth: Readonly<Record<string, number>>,
  instruments: Instruments,
  seed: number,
): Columns => {
  const generator = random(seed)
  const gauss = () => normal(generator)
  const gas = gasHistory(givens, truth)
  const instrument = (name: string): InstrumentModel =>
    instruments[name] ?? { ...IDEAL, id: name, label: name }
  const shown = (name: string, kind: 'pressure' | 'temperature' | 'length', true_: Float64Array, noise = 0) =>
    observe(true_, gas.time, instrument(name), { kind, noise, generator })

  const wander = truth.wander ?? 0
  const keep = Math.exp(-(truth.every ?? 60) / (truth.wander_time ?? 120))
  let drifting = wander * gauss()
  const wandering = gas.gauge.map((pressure) => {
    const value = pressure + drifting
    drifting = keep * drifting + wander * Math.sqrt(1 - keep * keep) * gauss()
    return value
  })

  const pressure = (): Columns => {
    const noise = truth.noise ?? 0
    if (instruments.vacuum)
      return {
        vacuum: shown(
          'vacuum',
          'pressure',
          wandering.map((p) => -p),
          noise,
        ),
      }
    if (instruments.absolute_pressure) {
      const absolute = wandering.map((p, row) => p + (gas.ambient[row] as number))
      return { absolute_pressure: shown('absolute_pressure', 'pressure', absolute, noise) }
    }
    if (instruments.leg_article) {
      const density = instruments.leg_article.density ?? 998.2
      const height = wandering.map((p) => p / (density * 9.80665))
      const legNoise = noise / (density * 9.80665)
      const half = height.map((h) => h / 2)
      const article = shown(
        'leg_article',
        'length',
        half.map((h) => -h),
        legNoise,
      )
      return { leg_article: { ...article, density }, leg_open: shown('leg_open', 'length', half, legNoise) }
    }
    return { pressure: shown('pressure', 'pressure', wandering, noise) }
  }
  return {
    time: { values: gas.time, dim: [0, 0, 1, 0, 0, 0], resolution: 0 },
    ...pressure(),
    ...(instruments.temperature
      ? { temperature: shown('temperature', 'temperature', gas.sensor, truth.temperature_noise) }
      : {}),
    ...(instruments.baro ? { baro: shown('baro', 'pressure', gas.ambient, truth.ambient_noise) } : {}),
  }
}
