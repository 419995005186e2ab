/**
 * Joint draws (JCGM 101): many trials of the same sources for several quantities at once.
 *
 * Each source has a stream of its own, begun by its name and the number of the batch. So trial i of one source is the
 * same wherever it is drawn — in another measure, another run, another browser — and what shares a source moves
 * together there as well. There is no other seed: the same records give the same draws.
 */
import { coverage, type Drawn } from './monte-carlo.ts'
import { type Generator, normal, random, rectangular, seedOf, studentScale } from './random.ts'
import { mean, standardDeviation } from './statistics.ts'
import type { Quantity, Simulated } from './types.ts'

/** Trials of one batch (7.9.4 c). */
export const BATCH = 10_000

/** Values by name, one a trial; a name that is not there has no uncertainty. */
export type Draws = Readonly<Record<string, Float64Array>>

/** Next trial of every source: zero mean and unit standard uncertainty, t-shaped ones as in 6.4.9. */
export const streamsOf = (drawn: readonly Drawn[], batch: number): ((z: Float64Array) => void) => {
  const begin = (name: string): Generator => random(seedOf(`${batch} ${name}`))
  const own = drawn.map(({ source }) => begin(source))
  const pools = new Map<string, { readonly generator: Generator; readonly dof: number; scale: number }>()
  for (const { shape, pool, dof } of drawn)
    if (shape === 't' && !pools.has(pool))
      pools.set(pool, { generator: begin(`scatter of ${pool}`), dof, scale: 1 })
  return (z) => {
    for (const pool of pools.values()) pool.scale = studentScale(pool.generator, pool.dof)
    for (let i = 0; i < drawn.length; i += 1) {
      const { shape, pool } = drawn[i] as Drawn
      const generator = own[i] as Generator
      if (shape === 'rectangular') z[i] = rectangular(generator)
      else z[i] = normal(generator) * (shape === 't' ? (pools.get(pool)?.scale ?? 1) : 1)
    }
  }
}

type Summary = Omit<Simulated, 'draws' | 'tolerance'>

const summaryOf = (values: Float64Array): Summary => {
  const sorted = values.filter((value) => !Number.isNaN(value)).sort()
  const [low, high] = coverage(sorted, 0.95)
  const bound = sorted[Math.min(sorted.length - 1, Math.floor(0.95 * sorted.length))] ?? Number.NaN
  return { mean: mean(sorted), u: standardDeviation(sorted), low, high, bound }
}

const batches = (values: Float64Array): Float64Array[] =>
  Array.from({ length: Math.ceil(values.length / BATCH) }, (_, b) =>
    values.subarray(b * BATCH, (b + 1) * BATCH),
  )

/** Twice the standard deviation, from batch to batch, of the mean over batches (7.9.4 g and h), for the worst of four. */
const toleranceOf = (each: readonly Summary[]): number => {
  const of = (what: keyof Summary) =>
    (2 * standardDeviation(each.map((summary) => summary[what]))) / Math.sqrt(each.length)
  return Math.max(of('mean'), of('u'), of('low'), of('high'))
}

export const simulatedOf = (values: Float64Array): Simulated => ({
  ...summaryOf(values),
  draws: values.length,
  tolerance: toleranceOf(batches(values).map(summaryOf)),
})

/** Share of u that is fine enough: less than half a unit of its first digit, whatever that is (7.9.2). */
const FINE = 0.05

/** Whether one significant digit of u, and so of the ends of the interval, will stay (7.9.4 i). */
export const isStable = (values: Float64Array): boolean => {
  // One batch shows nothing of that.
  if (values.length < 2 * BATCH) return false
  const each = batches(values).map(summaryOf)
  return toleranceOf(each) <= FINE * mean(each.map(({ u }) => u))
}

/** The quantity with what its draws say; unchanged where its uncertainty is none or not known. */
export const withDraws = (quantity: Quantity, values: Float64Array | undefined): Quantity => {
  if (!values || !quantity.parts) return quantity
  const simulated = simulatedOf(values)
  return simulated.u > 0 ? { ...quantity, simulated } : quantity
}
