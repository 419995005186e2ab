/**
 * Joint draws (JCGM 101): many trials of the same sources for several quantities at once.
 *
 * Each source has a stream of its own, begun by its name and the number of the batch. So trial i of one source is the
 * same wherever it is drawn — in another measure, another run, another browser — and what shares a source moves
 * together there as well. There is no other seed: the same records give the same draws.
 */
import { keptWith } from './lazily.ts'
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

const sortedOf = (values: Float64Array): Float64Array => values.filter((value) => !Number.isNaN(value)).sort()

const summaryOf = (sorted: Float64Array): Summary => {
  const [low, high] = coverage(sorted, 0.95)
  const bound = sorted[Math.min(sorted.length - 1, Math.floor(0.95 * sorted.length))] ?? Number.NaN
  const middle = mean(sorted)
  return { mean: middle, u: standardDeviation(sorted, middle), low, high, bound }
}

const merged = (a: Float64Array, b: Float64Array): Float64Array => {
  const all = new Float64Array(a.length + b.length)
  let [i, j] = [0, 0]
  for (let k = 0; k < all.length; k += 1) {
    const fromA = j >= b.length || (i < a.length && (a[i] as number) <= (b[j] as number))
    all[k] = (fromA ? a[i++] : b[j++]) as number
  }
  return all
}

type Batches = { readonly sorted: Float64Array; readonly each: readonly Summary[] }

/**
 * All draws in order, and what each batch says. Sorting is most of what drawing costs, and the same draws are asked again
 * when they are judged: so batches are sorted once, merged, and kept as long as the draws are. Nobody writes into draws.
 */
const batchesOf = keptWith((values: Float64Array): Batches => {
  const own = Array.from({ length: Math.ceil(values.length / BATCH) }, (_, b) =>
    sortedOf(values.subarray(b * BATCH, (b + 1) * BATCH)),
  )
  return { sorted: own.reduce(merged, new Float64Array(0)), each: own.map(summaryOf) }
})

/** Twice the standard deviation, from batch to batch, of the mean over batches (7.9.4 g and h), for the worst of four. */
const toleranceOf = (each: readonly Summary[]): number => {
  const of = (what: keyof Summary) =>
    (2 * standardDeviation(each.map((summary) => summary[what]))) / Math.sqrt(each.length)
  return Math.max(of('mean'), of('u'), of('low'), of('high'))
}

export const simulatedOf = (values: Float64Array): Simulated => {
  const { sorted, each } = batchesOf(values)
  return { ...summaryOf(sorted), draws: values.length, tolerance: toleranceOf(each) }
}

/** Share of u that is fine enough: less than half a unit of its first digit, whatever that is (7.9.2). */
const FINE = 0.05

/** Whether one significant digit of u, and so of the ends of the interval, will stay (7.9.4 i). */
export const isStable = (values: Float64Array): boolean => {
  // One batch shows nothing of that.
  if (values.length < 2 * BATCH) return false
  const { each } = batchesOf(values)
  return toleranceOf(each) <= FINE * mean(each.map(({ u }) => u))
}

/** The quantity with what its draws say; unchanged where its uncertainty is none or not known. */
export const withDraws = (quantity: Quantity, values: Float64Array | undefined): Quantity => {
  if (!values || !quantity.parts) return quantity
  const simulated = simulatedOf(values)
  return simulated.u > 0 ? { ...quantity, simulated } : quantity
}
