/**
 * The record of a free decay whose truth is known: planning, simulation, coverage.
 *
 * Truth (SI): `frequency` at which it rings (10 Hz), `damping_ratio` (0.02; or `log_decrement`), `amplitude` (1),
 * `phase` (0 rad), `offset` (0), `drift` (0, per s), `noise` (half a digit, else 0.2 % of the amplitude; standard
 * deviation, fresh at each reading), `noise_memory` (0 s: correlation time of that noise), `rate` (50 readings a
 * turn), `duration` (5 time constants, at least 12 turns), `before` (0 s of rest before the release), `clock_rate` (0) by
 * which the clock of the logger gains, as a part of the time.
 * A second mode: `second_frequency`, `second_damping` (that of the first), `second_amplitude` (0), `second_phase` (0).
 * Dry friction: `friction` (0), by how much it shifts the middle of the swing, in units of the signal.
 */
import { KINDS } from '../../quantity/kinds.ts'
import { type Generator, normal, random, rectangular } from '../../quantity/random.ts'
import { IDEAL } from '../as-shown.ts'
import type { Columns, Givens, Instruments } from '../method.ts'
import { signalKinds } from './schema.ts'

type Truth = Readonly<Record<string, number>>

const mode = (frequency: number, damping: number, amplitude: number, phase: number) => {
  const omega = 2 * Math.PI * frequency
  const decay = (damping * omega) / Math.sqrt(1 - damping * damping)
  return (t: number) => amplitude * Math.exp(-decay * t) * Math.cos(omega * t + phase)
}

/**
 * Viscous damping and dry friction, from rest at the amplitude: between two turning points a free oscillation about
 * a middle that the friction shifts against the motion, until a turning point lies inside the shift and it sticks.
 */
const rubbing = (frequency: number, damping: number, amplitude: number, shift: number) => {
  const halfTurn = 1 / (2 * frequency)
  const omega = 2 * Math.PI * frequency
  const decay = (damping * omega) / Math.sqrt(1 - damping * damping)
  const turning = [amplitude]
  for (let last = amplitude; Math.abs(last) > shift && turning.length < 1e5; ) {
    const middle = Math.sign(last) * shift
    last = middle - (last - middle) * Math.exp(-decay * halfTurn)
    turning.push(last)
  }
  return (t: number) => {
    const k = Math.min(Math.floor(t / halfTurn), turning.length - 1)
    const from = turning[k] as number
    if (k === turning.length - 1) return from
    const since = t - k * halfTurn
    const middle = Math.sign(from) * shift
    const swing = Math.cos(omega * since) + (decay / omega) * Math.sin(omega * since)
    return middle + (from - middle) * Math.exp(-decay * since) * swing
  }
}

/** Noise of one standard deviation, fresh or with a memory (first-order). */
const noiseFrom = (generator: Generator, keep: number) => {
  let last = normal(generator)
  return () => {
    last = keep * last + Math.sqrt(1 - keep * keep) * normal(generator)
    return last
  }
}

const dampingOf = ({ damping_ratio, log_decrement }: Truth): number =>
  damping_ratio ??
  (log_decrement === undefined ? 0.02 : log_decrement / Math.hypot(2 * Math.PI, log_decrement))

export const rehearse = (_: Givens, truth: Truth, instruments: Instruments, seed: number): Columns => {
  const generator = random(seed)
  const { frequency = 10, amplitude = 1, phase = 0, offset = 0, drift = 0, before = 0, friction = 0 } = truth
  const damping = dampingOf(truth)
  const rate = truth.rate ?? 50 * frequency
  const constant = 1 / (2 * Math.PI * frequency * Math.max(damping, 1e-4))
  const duration = truth.duration ?? Math.max(5 * constant, 12 / frequency)
  const sensor = instruments.signal ?? IDEAL
  const noise = truth.noise ?? (sensor.resolution > 0 ? sensor.resolution / 2 : 0.002 * amplitude)
  const memory = truth.noise_memory ?? 0
  const noisy = noiseFrom(generator, memory > 0 ? Math.exp(-1 / (rate * memory)) : 0)

  const first =
    friction > 0
      ? rubbing(frequency, damping, amplitude, friction)
      : mode(frequency, damping, amplitude, phase)
  const second = mode(
    truth.second_frequency ?? frequency,
    truth.second_damping ?? damping,
    truth.second_amplitude ?? 0,
    truth.second_phase ?? 0,
  )
  const error = (u: number | null) =>
    (u ?? 0) * (sensor.shape === 'rectangular' ? rectangular : normal)(generator)
  const [gain, zero, wander] = [error(sensor.gain), error(sensor.offset), error(sensor.drift)]

  const time = Float64Array.from({ length: Math.floor(duration * rate) + 1 }, (_u, i) => i / rate)
  const values = time.map((t) => {
    const swing = t < before ? 0 : first(t - before) + second(t - before)
    const shown = (swing + offset + drift * t) * (1 + gain) + zero + wander * t + noise * noisy()
    return sensor.resolution > 0 ? Math.round(shown / sensor.resolution) * sensor.resolution + 0 : shown
  })
  const dim = KINDS[signalKinds[0]].dim
  const shownTime = time.map((t) => t * (1 + (truth.clock_rate ?? 0)))
  return {
    time: { values: shownTime, dim: KINDS.time.dim, resolution: 0 },
    signal: { values, dim, resolution: sensor.resolution, instrument: sensor.id },
  }
}
