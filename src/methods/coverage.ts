/**
 * Coverage: in how many simulated runs the 95 % interval that is shown holds the true value. In each run the truth is
 * drawn as uncertain as the givens say, the instruments err as uncertain as they are, and the run is told neither.
 */
import type { Plain } from '../format/types.ts'
import { KINDS } from '../quantity/kinds.ts'
import { expanded } from '../quantity/quantity.ts'
import { type Generator, normal, random, rectangular } from '../quantity/random.ts'
import type { Quantity } from '../quantity/types.ts'
import { IDEAL } from './as-shown.ts'
import { fieldsFrom, givensFrom } from './check-values.ts'
import { measureRun } from './measure.ts'
import type { Columns, Givens, InstrumentModel, Instruments, Method } from './method.ts'

type Truth = Readonly<Record<string, number>>

export type CoverageSetup = {
  readonly title: string
  readonly readings: 'few' | 'many'
  /** As on a card. The true value of what carries ± is drawn anew in each run. */
  readonly givens: Readonly<Record<string, string>>
  readonly fields?: Readonly<Record<string, Plain>>
  readonly instruments: Instruments
  /** What is true of the article and the day, by the names of `rehearse`, SI. */
  readonly truth: Truth
  /** What of it differs from run to run, by its standard deviation: normal about `truth`, or about 0. */
  readonly varies?: Truth
  /** Noise by the names of `rehearse`: perfect instruments have none of it. */
  readonly noise: Truth
  /** True values of measures, worked out from what was put in. */
  readonly expected: (truth: Truth, givens: Givens) => Truth
  /** Measures whose true value is what perfect instruments would have given in the same run. */
  readonly perfect?: readonly string[]
  /** Perfect instruments are also in the right place: what `rehearse` shows them, put right. */
  readonly inPlace?: (columns: Columns, truth: Truth) => Columns
  /** Measures whose interval is wider than 95 % on purpose here, and why. */
  readonly wide?: Readonly<Record<string, string>>
  /** Measures whose interval is known to be a little too narrow here, and why. */
  readonly narrow?: Readonly<Record<string, string>>
}

export type Coverage = {
  readonly setups: readonly CoverageSetup[]
  /** Measures of the schema that have no true value to hold, and why. */
  readonly without?: Readonly<Record<string, string>>
  /** Why there is no set-up with many readings. */
  readonly onlyFew?: string
  /** Measures whose interval is not asked of few readings, and why. */
  readonly onlyMany?: Readonly<Record<string, string>>
}

export type CoverageRow = {
  readonly setup: string
  readonly readings: 'few' | 'many'
  readonly measure: string
  /** Runs that gave the measure with its uncertainty, and those of them whose interval held the truth. */
  readonly runs: number
  readonly inside: number
  /** Mean expanded uncertainty, in `unit`. */
  readonly U: number
  readonly unit: string
  readonly wide?: string
  readonly narrow?: string
}

/** The figures as they are kept for the handbook, in `coverage.json` of the method. */
export type StoredCoverage = {
  readonly made: string
  readonly runs: number
  readonly seed: number
  readonly rows: readonly CoverageRow[]
  /** Measures that no row, or no row of few readings, shows, and why. */
  readonly not: Readonly<Record<string, string>>
}

/** Of runs at 95 % within these shares the interval says what it promises: the bounds that the project has set itself. */
export const SHARES = { least: 0.93, most: 0.975 } as const
/** What is known to be narrow holds the truth at least so often. */
const LEAST_OF_NARROW = 0.915

/** An instrument with a certificate: its errors are normal, and none where nothing else is said. */
export const certified = (id: string, more: Partial<InstrumentModel> = {}): InstrumentModel => ({
  ...IDEAL,
  id,
  label: id,
  ...more,
})

/** Part of the runs whose interval held the truth. */
export const shareOf = ({ runs, inside }: Pick<CoverageRow, 'runs' | 'inside'>): number => inside / runs

/** Beyond the bounds: for a reason that is stated, or not. */
export const verdictOf = (row: CoverageRow): 'within' | 'wide' | 'narrow' | 'outside' => {
  const share = shareOf(row)
  if (share >= SHARES.least && share <= SHARES.most) return 'within'
  if (share > SHARES.most && row.wide) return 'wide'
  return share < SHARES.least && share >= LEAST_OF_NARROW && row.narrow ? 'narrow' : 'outside'
}

export const notShown = ({ without = {}, onlyMany = {} }: Coverage): StoredCoverage['not'] => ({
  ...without,
  ...onlyMany,
})

const none = (names: Truth): Truth => Object.fromEntries(Object.keys(names).map((name) => [name, 0]))

const drawn = (quantity: Quantity, generator: Generator): number =>
  Object.values(quantity.parts ?? {}).reduce(
    (value, { u, shape }) => value + u * (shape === 'rectangular' ? rectangular : normal)(generator),
    quantity.value,
  )

type Told = {
  readonly inputs: Readonly<Record<string, Quantity>>
  readonly words: Readonly<Record<string, string>>
  readonly fields: Readonly<Record<string, unknown>>
}

const toldOf = (method: Method, setup: CoverageSetup): Told => {
  const fields = fieldsFrom(method.schema, setup.fields ?? {})
  const schema = method.describe?.(fields, [], undefined, Object.keys(setup.givens)) ?? method.schema
  return { fields, ...givensFrom(schema, setup.givens) }
}

/** The article and the day of one run as they truly are. */
const drawTruth = (setup: CoverageSetup, { inputs, words, fields }: Told, generator: Generator) => {
  const numbers = Object.fromEntries(
    Object.entries(inputs).map(([name, quantity]) => [name, drawn(quantity, generator)]),
  )
  const dims = Object.fromEntries(Object.entries(inputs).map(([name, { dim }]) => [name, dim]))
  const varied = Object.entries(setup.varies ?? {}).map(([name, u]) => [
    name,
    (setup.truth[name] ?? 0) + u * normal(generator),
  ])
  const truth: Truth = { ...setup.truth, ...Object.fromEntries(varied) }
  return { truth, givens: { numbers, words, fields, dims } }
}

/** What perfect instruments would have given. */
const perfectValues = (method: Method, setup: CoverageSetup, truth: Truth, givens: Givens): Truth => {
  if (!setup.perfect) return {}
  const instruments = Object.fromEntries(
    Object.entries(setup.instruments).map(([name, { id, density }]) => [
      name,
      certified(id, density === undefined ? {} : { density }),
    ]),
  )
  const read = method.rehearse(givens, { ...truth, ...none(setup.noise) }, instruments, 1)
  const right = setup.inPlace?.(read, truth) ?? read
  const columns = method.prepare?.(right, givens, instruments) ?? right
  const estimate = method.estimate(columns, givens, method.select(columns, givens))
  if (!estimate.ok) throw new Error(`${setup.title}: ${estimate.error}`)
  const { values } = estimate.value
  return Object.fromEntries(setup.perfect.map((name) => [name, values[name] ?? Number.NaN]))
}

type Tally = { runs: number; inside: number; U: number; unit: string }

/** Simulates so many runs of one set-up. Errors of the set-up itself throw: they are ours, not a user's. */
export const coverageOf = (
  method: Method,
  setup: CoverageSetup,
  runs: number,
  seed: number,
): CoverageRow[] => {
  const told = toldOf(method, setup)
  const tallies = new Map<string, Tally>()
  for (let run = 1; run <= runs; run += 1) {
    const { truth, givens } = drawTruth(setup, told, random(seed * 1_000_003 + run))
    const columns = method.rehearse(givens, { ...truth, ...setup.noise }, setup.instruments, seed + run)
    const dims = Object.fromEntries(Object.entries(columns).map(([name, { dim }]) => [name, dim]))
    const names = Object.keys(columns)
    const given = Object.keys(setup.givens)
    const schema = method.describe?.(told.fields, names, dims, given, givens.dims) ?? method.schema
    const { instruments } = setup
    const measured = measureRun({ runId: 'simulated', method, schema, columns, instruments, ...told })
    if (!measured.ok) throw new Error(`${setup.title}: ${measured.error}`)
    const { measures } = measured.value
    const expected = { ...setup.expected(truth, givens), ...perfectValues(method, setup, truth, givens) }
    for (const [name, value] of Object.entries(expected)) {
      const kind =
        measured.value.estimate.kinds?.[name] ?? schema.measures.find((field) => field.name === name)?.kind
      if (!kind) throw new Error(`${setup.title}: ${method.id} has no measure ${name}`)
      const tally = tallies.get(name) ?? { runs: 0, inside: 0, U: 0, unit: KINDS[kind].unit }
      tallies.set(name, tally)
      const quantity = measures[name]
      const U = quantity && expanded(quantity)?.U
      if (!quantity || U === undefined) continue
      tally.runs += 1
      tally.U += U
      if (Math.abs(quantity.value - value) <= U) tally.inside += 1
    }
  }
  const { title, readings, wide = {}, narrow = {} } = setup
  return [...tallies].map(([measure, { runs, inside, U, unit }]) => ({
    setup: title,
    readings,
    measure,
    runs,
    inside,
    U: runs > 0 ? Number((U / runs).toPrecision(3)) : Number.NaN,
    unit,
    ...(wide[measure] ? { wide: wide[measure] } : {}),
    ...(narrow[measure] ? { narrow: narrow[measure] } : {}),
  }))
}
