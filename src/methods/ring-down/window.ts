/** Which part of the record is the free decay: from its largest swing until it has died down. */
import type { Fit } from './least-squares.ts'
import { DECAY, dampingRatio, fitOscillation, OFFSET, OMEGA } from './oscillation.ts'
import { type Band, strongestFrequency } from './spectrum.ts'

/** After four time constants 1.8 % of the amplitude is left: nothing more is learned, and all else is noise. */
export const TIME_CONSTANTS = 4
/** At least as many turns, however strong the damping. */
export const LEAST_TURNS = 5

export type Window = {
  /** First point and, behind the last one, the end. */
  readonly from: number
  readonly to: number
  readonly fit: Fit
}

/** Index of the first time at or after `time`. */
export const firstAt = (t: Float64Array, time: number): number => {
  let [low, high] = [0, t.length]
  while (low < high) {
    const middle = (low + high) >> 1
    if ((t[middle] as number) < time) low = middle + 1
    else high = middle
  }
  return low
}

/** Point of the largest swing about the mean over one turn: offset and drift drop out. */
const largestSwing = (t: Float64Array, y: Float64Array, turn: number): number => {
  const sums = new Float64Array(y.length + 1)
  const origin = y[0] as number
  for (let i = 0; i < y.length; i += 1) sums[i + 1] = (sums[i] as number) + (y[i] as number) - origin
  let [best, most, from, to] = [0, -1, 0, 0]
  for (let i = 0; i < y.length; i += 1) {
    while ((t[from] as number) < (t[i] as number) - turn / 2) from += 1
    while (to < y.length && (t[to] as number) <= (t[i] as number) + turn / 2) to += 1
    const middle = origin + ((sums[to] as number) - (sums[from] as number)) / (to - from)
    const swing = Math.abs((y[i] as number) - middle)
    if (swing > most) [best, most] = [i, swing]
  }
  return best
}

/**
 * Amplitudes over stretches of two turns by projection on cosine and sine, and from their logarithms, weighted by
 * the square of the amplitude, the rate of decay.
 */
const firstGuess = (t: Float64Array, y: Float64Array, frequency: number): Float64Array => {
  const omega = 2 * Math.PI * frequency
  const duration = (t[t.length - 1] as number) - (t[0] as number)
  const stretches = Math.max(1, Math.min(60, Math.floor((duration * frequency) / 2)))
  const amplitudes: { time: number; log: number; weight: number }[] = []
  const first = [0, 0, 0]
  for (let k = 0; k < stretches; k += 1) {
    const from = firstAt(t, (k * duration) / stretches)
    const to = k === stretches - 1 ? t.length : firstAt(t, ((k + 1) * duration) / stretches)
    let [sum, cosine, sine] = [0, 0, 0]
    for (let i = from; i < to; i += 1) sum += y[i] as number
    const middle = sum / (to - from)
    for (let i = from; i < to; i += 1) {
      const rest = (y[i] as number) - middle
      cosine += rest * Math.cos(omega * (t[i] as number))
      sine += rest * Math.sin(omega * (t[i] as number))
    }
    const [a, b] = [(2 * cosine) / (to - from), (2 * sine) / (to - from)]
    if (k === 0) first.splice(0, 3, a, b, middle)
    const square = a * a + b * b
    if (square > 0)
      amplitudes.push({ time: ((k + 0.5) * duration) / stretches, log: Math.log(square) / 2, weight: square })
  }
  const weights = amplitudes.reduce((sum, { weight }) => sum + weight, 0)
  const timeMean = amplitudes.reduce((sum, { time, weight }) => sum + weight * time, 0) / weights
  let [across, along] = [0, 0]
  for (const { time, log, weight } of amplitudes) {
    across += weight * (time - timeMean) * log
    along += weight * (time - timeMean) ** 2
  }
  const decay = along > 0 ? Math.max(0, -across / along) : 0
  const [a = 0, b = 0, middle = 0] = first
  return Float64Array.of(a, b, Math.min(decay, omega), omega, middle, 0)
}

/** The best of fits from several rates of decay: only the guess of the decay can be far off. */
const fitFrom = (t: Float64Array, y: Float64Array, frequency: number) => {
  const guess = firstGuess(t, y, frequency)
  const decay = guess[DECAY] as number
  const fits = [decay, 0.02 * (guess[OMEGA] as number)].map((rate) =>
    fitOscillation(t, y, guess.with(DECAY, rate)),
  )
  return fits.reduce((best, fit) => (fit && (!best || fit.squares < best.squares) ? fit : best), null)
}

const cut = (t: Float64Array, from: number, to: number): Float64Array => {
  const origin = t[from] as number
  return t.slice(from, to).map((time) => time - origin)
}

/**
 * The window in a record of times and signals, both without gaps; `settle` (s) after the largest swing is left out.
 * Null where no oscillation is found.
 */
export const findWindow = (t: Float64Array, y: Float64Array, settle: number, band?: Band): Window | null => {
  const frequency = strongestFrequency(t, y, band)
  if (frequency === null) return null
  const swing = largestSwing(t, y, 1 / frequency)
  const from = settle > 0 ? firstAt(t, (t[swing] as number) + settle) : swing
  if (t.length - from <= OFFSET + 2) return null
  const rest = cut(t, from, t.length)
  const whole = fitFrom(rest, y.slice(from), frequency)
  if (!whole) return null
  const omega = whole.parameters[OMEGA] as number
  const decay = whole.parameters[DECAY] as number
  const length = Math.max(
    dampingRatio(decay, omega) > 0 ? TIME_CONSTANTS / decay : Number.POSITIVE_INFINITY,
    (LEAST_TURNS * 2 * Math.PI) / omega,
  )
  const to = from + firstAt(rest, length)
  const fit = to < t.length ? fitOscillation(cut(t, from, to), y.slice(from, to), whole.parameters) : whole
  return fit && { from, to, fit }
}
