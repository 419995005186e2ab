/**
 * Block by block along the decay: amplitude and phase of what swings at the frequency of the mode. What is left of
 * it after the fit shows the noise where it matters, near that frequency, and a second mode or friction if there is.
 */

import type { Fit } from './least-squares.ts'
import { DECAY, DRIFT, OFFSET, OMEGA } from './oscillation.ts'

export type Block = {
  /** Middle of the block, s, and turns since the first fitted reading. */
  readonly time: number
  /** Amplitude at the middle, and its standard uncertainty for a scatter of 1. */
  readonly amplitude: number
  readonly unit: number
  /** Cosine and sine part of the residuals. */
  readonly cosine: number
  readonly sine: number
  /** Sum of squares of the residuals that these two explain: 2 s² for white noise. */
  readonly explained: number
}

/** Sums of a two-parameter least squares on a cosine c and a sine s. */
type Sums = { cc: number; cs: number; ss: number; cy: number; sy: number }

const nothing = (): Sums => ({ cc: 0, cs: 0, ss: 0, cy: 0, sy: 0 })

const add = (sums: Sums, c: number, s: number, y: number): void => {
  sums.cc += c * c
  sums.cs += c * s
  sums.ss += s * s
  sums.cy += c * y
  sums.sy += s * y
}

/** Coefficients, squares explained, and the inverse's trace. */
const solve = ({ cc, cs, ss, cy, sy }: Sums) => {
  const determinant = cc * ss - cs * cs
  const cosine = (ss * cy - cs * sy) / determinant
  const sine = (cc * sy - cs * cy) / determinant
  return { cosine, sine, explained: cosine * cy + sine * sy, trace: (cc + ss) / determinant }
}

export const blocksOf = (t: Float64Array, y: Float64Array, fit: Fit, starts: Int32Array): Block[] => {
  const { parameters, residuals } = fit
  const [omega, decay, offset, drift] = [OMEGA, DECAY, OFFSET, DRIFT].map(
    (place) => parameters[place] as number,
  ) as [number, number, number, number]
  return Array.from({ length: starts.length - 1 }, (_, k) => {
    const [from, to] = [starts[k] as number, starts[k + 1] as number]
    const time = ((t[from] as number) + (t[to - 1] as number)) / 2
    const [swing, left] = [nothing(), nothing()]
    for (let i = from; i < to; i += 1) {
      const at = t[i] as number
      const [c, s] = [Math.cos(omega * at), Math.sin(omega * at)]
      // The decay within the block is that of the fit, so that the amplitude is that of the middle.
      const envelope = Math.exp(-decay * (at - time))
      add(swing, envelope * c, envelope * s, (y[i] as number) - offset - drift * at)
      add(left, c, s, residuals[i] as number)
    }
    const [signal, rest] = [solve(swing), solve(left)]
    return {
      time,
      amplitude: Math.hypot(signal.cosine, signal.sine),
      unit: Math.sqrt(signal.trace / 2),
      cosine: rest.cosine,
      sine: rest.sine,
      explained: rest.explained,
    }
  })
}

export type Noise = { readonly s: number; readonly dof: number }

/**
 * Scatter of single readings that noise of the same strength at all frequencies would need to be as strong near the
 * frequency of the mode; the fit took four degrees of freedom there. Noise that stands out at that frequency
 * (hum, a wobbly stand) counts in full, and what lies elsewhere not at all. Null for three blocks or fewer.
 */
export const noiseNear = (blocks: readonly Block[], resolution: number): Noise | null => {
  const dof = 2 * blocks.length - 4
  if (dof < 4) return null
  const squares = blocks.reduce((sum, { explained }) => sum + explained, 0)
  return { s: Math.hypot(Math.sqrt(squares / dof), resolution / Math.sqrt(12)), dof }
}

/** Amplitudes that stand this far out of the noise have logarithms that are worth something. */
const CLEAR = 5

/** Number of blocks from the first on whose amplitude stands out of the noise. */
export const clearBlocks = (blocks: readonly Block[], s: number): number => {
  const end = blocks.findIndex(({ amplitude, unit }) => !(amplitude > CLEAR * unit * s))
  return end < 0 ? blocks.length : end
}

export type Decrement = { readonly value: number; readonly u: number }

/** Logarithmic decrement δ = ln(x₀/xₙ)/n by a line through the logarithms of the amplitudes; null under three. */
export const decrementOf = (clear: readonly Block[], omega: number, s: number): Decrement | null => {
  if (clear.length < 3) return null
  const weight = ({ amplitude, unit }: Block) => (amplitude / unit) ** 2
  const total = clear.reduce((sum, block) => sum + weight(block), 0)
  const middle = clear.reduce((sum, block) => sum + weight(block) * block.time, 0) / total
  const across = clear.reduce(
    (sum, block) => sum + weight(block) * (block.time - middle) * Math.log(block.amplitude),
    0,
  )
  const along = clear.reduce((sum, block) => sum + weight(block) * (block.time - middle) ** 2, 0)
  const turn = (2 * Math.PI) / omega
  return { value: (-across / along) * turn, u: (s / Math.sqrt(along)) * turn }
}
