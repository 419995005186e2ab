/** The strongest oscillation of a record, from its spectrum: the start of the fit. */
import { fitLinear } from '../../quantity/fit-linear.ts'
import { median } from '../../quantity/statistics.ts'

/** Discrete Fourier transform in place (J. W. Cooley and J. W. Tukey, Math. Comp. 19 (1965) 297); length 2ⁿ. */
export const transform = (real: Float64Array, imaginary: Float64Array): void => {
  const n = real.length
  for (let i = 1, j = 0; i < n; i += 1) {
    let bit = n >> 1
    for (; j & bit; bit >>= 1) j ^= bit
    j ^= bit
    if (i < j) {
      const [r, m] = [real[i] as number, imaginary[i] as number]
      real[i] = real[j] as number
      imaginary[i] = imaginary[j] as number
      real[j] = r
      imaginary[j] = m
    }
  }
  for (let length = 2; length <= n; length *= 2) {
    const half = length / 2
    for (let k = 0; k < half; k += 1) {
      const angle = (-2 * Math.PI * k) / length
      const [c, s] = [Math.cos(angle), Math.sin(angle)]
      for (let i = k; i < n; i += length) {
        const j = i + half
        const re = (real[j] as number) * c - (imaginary[j] as number) * s
        const im = (real[j] as number) * s + (imaginary[j] as number) * c
        real[j] = (real[i] as number) - re
        imaginary[j] = (imaginary[i] as number) - im
        real[i] = (real[i] as number) + re
        imaginary[i] = (imaginary[i] as number) + im
      }
    }
  }
}

/** The record on an even grid of as many points (straight lines across what is missing), less its parabola. */
const evenGrid = (t: Float64Array, y: Float64Array): Float64Array => {
  const n = t.length
  const first = t[0] as number
  const step = ((t[n - 1] as number) - first) / (n - 1)
  let at = 0
  const grid = Float64Array.from({ length: n }, (_, i) => {
    const time = first + i * step
    while (at < n - 2 && (t[at + 1] as number) < time) at += 1
    const share = (time - (t[at] as number)) / ((t[at + 1] as number) - (t[at] as number))
    return (y[at] as number) + share * ((y[at + 1] as number) - (y[at] as number))
  })
  // Every n-th point is enough for a trend.
  const every = Math.ceil(n / 2000)
  const few = grid.filter((_, i) => i % every === 0)
  const x = few.map((_, i) => (i * every) / n - 0.5)
  const trend = fitLinear([x.map(() => 1), x, x.map((each) => each * each)], few)
  const [c = 0, b = 0, a = 0] = trend?.coefficients ?? []
  return grid.map((value, i) => {
    const place = i / n - 0.5
    return value - c - b * place - a * place * place
  })
}

export type Band = { readonly low: number; readonly high: number }

type Lines = { readonly power: Float64Array; readonly low: number; readonly perLine: number }

/** Power of the lines within a band, of the record padded with zeros to at least twice its length. */
const linesOf = (t: Float64Array, y: Float64Array, band: Band): Lines | null => {
  const n = t.length
  const duration = (t[n - 1] as number) - (t[0] as number)
  if (n < 8 || !(duration > 0)) return null
  const length = 2 ** Math.ceil(Math.log2(2 * n))
  const real = new Float64Array(length)
  real.set(evenGrid(t, y))
  const imaginary = new Float64Array(length)
  transform(real, imaginary)
  const perLine = (n - 1) / duration / length
  const low = Math.max(1, Math.ceil(band.low / perLine))
  const high = Math.min(length / 2, Math.floor(band.high / perLine))
  const power = Float64Array.from(
    { length: Math.max(0, high - low + 1) },
    (_, k) => (real[low + k] as number) ** 2 + (imaginary[low + k] as number) ** 2,
  )
  return { power, low, perLine }
}

const highest = (power: Float64Array): number =>
  power.reduce((best, each, k) => (each > (power[best] as number) ? k : best), 0)

/**
 * Frequency (Hz) of the highest line of the spectrum, from two turns in the record up; within `band` where one is
 * given. Null where the record shows none.
 */
export const strongestFrequency = (t: Float64Array, y: Float64Array, band?: Band): number | null => {
  const duration = (t[t.length - 1] as number) - (t[0] as number)
  const lines = linesOf(t, y, band ?? { low: 2 / duration, high: Number.POSITIVE_INFINITY })
  if (!lines || lines.power.length === 0) return null
  const at = highest(lines.power)
  return (lines.power[at] as number) > 0 ? (lines.low + at) * lines.perLine : null
}

/** Chance that noise alone puts a line as high anywhere in the band. */
const RISK = 0.01

/**
 * Frequency of a line within the band that stands out of the noise around it; null where none does. The power of a
 * line of noise is exponentially distributed about its mean, which is the median over ln 2.
 */
export const standingLine = (t: Float64Array, y: Float64Array, band: Band): number | null => {
  const lines = linesOf(t, y, band)
  if (!lines || lines.power.length < 8) return null
  const mean = median(lines.power) / Math.LN2
  const at = highest(lines.power)
  const stands = (lines.power[at] as number) > mean * Math.log(lines.power.length / RISK)
  return stands ? (lines.low + at) * lines.perLine : null
}
