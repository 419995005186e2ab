/** Propagation of distributions (JCGM 101:2008): every source is drawn once a trial and shared by all inputs. */
import { type Generator, normal, random, rectangular, studentScale } from './random.ts'
import { mean, standardDeviation } from './statistics.ts'
import type { Quantity, Shape, Source } from './types.ts'

export type MonteCarlo = {
  readonly mean: number
  /** Standard deviation of the draws; NaN where f is not defined for all of them. */
  readonly u: number
  /** Probabilistically symmetric, 95 % (JCGM 101, 7.7). */
  readonly interval: readonly [number, number]
  /** Sorted. */
  readonly samples: Float64Array
}

export type Drawn = {
  readonly source: Source
  readonly shape: Shape
  readonly pool: string
  readonly dof: number
}

/**
 * Null where the uncertainty of an input is not known. Shapes: normal, rectangular, and t with its degrees of
 * freedom (JCGM 101, 6.4.9: scaled, so wider than u); the t-shaped sources of one pool share one scatter.
 */
export function monteCarlo(
  f: (values: number[]) => number,
  inputs: readonly Quantity[],
  draws: number,
  seed: number,
): MonteCarlo | null {
  const sources = new Map<Source, Drawn>()
  for (const input of inputs) {
    if (input.parts === null) return null
    for (const [source, part] of Object.entries(input.parts)) sources.set(source, { source, ...part })
  }
  const drawn = [...sources.values()]
  // Sparse: for each input the sources that move it, by their place among the drawn.
  const moves = inputs.map((input) =>
    drawn.flatMap(({ source }, at) => {
      const u = input.parts?.[source]?.u ?? 0
      return u === 0 ? [] : [{ at, u }]
    }),
  )
  const generator = random(seed)
  const z = new Float64Array(drawn.length)
  const samples = new Float64Array(draws)
  for (let trial = 0; trial < draws; trial++) {
    drawSources(drawn, z, generator)
    const values = inputs.map((input, i) =>
      (moves[i] ?? []).reduce((value, { at, u }) => value + u * (z[at] ?? 0), input.value),
    )
    samples[trial] = f(values)
  }
  samples.sort()
  return { mean: mean(samples), u: standardDeviation(samples), interval: coverage(samples, 0.95), samples }
}

/** Fills `z`: one draw a source, of zero mean and unit standard uncertainty. */
export function drawSources(drawn: readonly Drawn[], z: Float64Array, generator: Generator) {
  const scales = new Map<string, number>()
  drawn.forEach(({ shape, pool, dof }, i) => {
    if (shape === 'rectangular') {
      z[i] = rectangular(generator)
      return
    }
    z[i] = normal(generator)
    if (shape !== 't') return
    const scale = scales.get(pool) ?? studentScale(generator, dof)
    scales.set(pool, scale)
    z[i] *= scale
  })
}

/** The middle part of sorted draws, with equally many left out on both sides. */
export function coverage(sorted: Float64Array, p: number): readonly [number, number] {
  const inside = Math.round(p * sorted.length)
  const low = Math.floor((sorted.length - inside) / 2)
  return [sorted[low] ?? Number.NaN, sorted[Math.min(sorted.length - 1, low + inside)] ?? Number.NaN]
}
