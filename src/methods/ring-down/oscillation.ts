/** One damped sinusoid: its model for the fit, and what its parameters mean. */
import { type Fit, leastSquares, type Model } from './least-squares.ts'

/** Places among the parameters: cosine and sine at time 0, decay rate σ (1/s), ω (rad/s), offset, drift (per s). */
export const [COSINE, SINE, DECAY, OMEGA, OFFSET, DRIFT] = [0, 1, 2, 3, 4, 5] as const

/** y = e^(−σt)·(a cos ωt + b sin ωt), and the offset and drift where the parameters have them. */
export const oscillation: Model = (t, parameters, slopes) => {
  const omega = parameters[OMEGA] as number
  const a = parameters[COSINE] as number
  const b = parameters[SINE] as number
  const envelope = Math.exp(-(parameters[DECAY] as number) * t)
  const cosine = envelope * Math.cos(omega * t)
  const sine = envelope * Math.sin(omega * t)
  const value = a * cosine + b * sine
  slopes[COSINE] = cosine
  slopes[SINE] = sine
  slopes[DECAY] = -t * value
  slopes[OMEGA] = t * (b * cosine - a * sine)
  if (parameters.length <= OFFSET) return value
  slopes[OFFSET] = 1
  slopes[DRIFT] = t
  return value + (parameters[OFFSET] as number) + (parameters[DRIFT] as number) * t
}

/** Fits of time (s from its first value) and signal; null where no oscillation can be fitted. */
export const fitOscillation = (t: Float64Array, y: Float64Array, start: Float64Array): Fit | null => {
  const fit = leastSquares(oscillation, t, y, start)
  return fit && (fit.parameters[OMEGA] as number) > 0 ? fit : null
}

/** ζ = σ/√(σ² + ω²): σ = ζωₙ and ω = ωₙ√(1 − ζ²) of one degree of freedom with viscous damping. */
export const dampingRatio = (decay: number, omega: number): number => decay / Math.hypot(decay, omega)

/** A value that is a function of the fit, with its derivatives by the parameters. */
export type Derived = { readonly value: number; readonly gradient: readonly number[] }

const numbers = (fit: Fit) => ({
  a: fit.parameters[COSINE] as number,
  b: fit.parameters[SINE] as number,
  decay: fit.parameters[DECAY] as number,
  omega: fit.parameters[OMEGA] as number,
})

/** Hz, of the oscillation as it rings. */
export const frequencyOf = (fit: Fit): Derived => ({
  value: numbers(fit).omega / (2 * Math.PI),
  gradient: [0, 0, 0, 1 / (2 * Math.PI)],
})

/** Hz, as it would ring without damping. */
export const naturalFrequencyOf = (fit: Fit): Derived => {
  const { decay, omega } = numbers(fit)
  const natural = Math.hypot(decay, omega)
  const scale = 1 / (2 * Math.PI)
  return { value: natural * scale, gradient: [0, 0, (decay / natural) * scale, (omega / natural) * scale] }
}

export const dampingOf = (fit: Fit): Derived => {
  const { decay, omega } = numbers(fit)
  const cube = Math.hypot(decay, omega) ** 3
  return {
    value: dampingRatio(decay, omega),
    gradient: [0, 0, omega ** 2 / cube, (-decay * omega) / cube],
  }
}

/** Amplitude at the first fitted reading. */
export const amplitudeOf = (fit: Fit): Derived => {
  const { a, b } = numbers(fit)
  const value = Math.hypot(a, b)
  return { value, gradient: [a / value, b / value] }
}

/** Orthogonal parts of a derived value, for a scatter of single readings s. */
export const partsOf = (fit: Fit, { gradient }: Derived, s: number): number[] =>
  fit.factor.map((_, k) => gradient.reduce((sum, slope, j) => sum + slope * (fit.factor[j]?.[k] ?? 0) * s, 0))
