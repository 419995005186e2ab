/**
 * Expected columns of a tabulated test whose truth is known: planning, simulation.
 *
 * Truth (SI): a column by its name sets its level, a measure by its name is reached by moving the columns that it is
 * made of; `noise_<column>` is the standard deviation of a reading, `rows` how many there are (10; with a column of
 * words or counts that `at` looks into, one for each), `span` how far the columns go that others are taken over (the
 * range of their instrument, else 60 s or 1).
 */
import { evaluate } from '../../quantity/formula/index.ts'
import { KINDS } from '../../quantity/kinds.ts'
import { type Generator, normal, random, rectangular } from '../../quantity/random.ts'
import type { Column, Columns, Givens, InstrumentModel, Instruments } from '../method.ts'
import { isLabel } from './aggregates.ts'
import type { DeclaredColumn } from './columns.ts'
import { estimate } from './estimate.ts'
import { type Plan, type PlannedMeasure, planOf } from './plan.ts'
import { select } from './select.ts'

type Truth = Readonly<Record<string, number>>

const ROWS = 10

/** Values of `at` over a column: numbers that its rows must reach. */
const placesOf = (plan: Plan, column: DeclaredColumn, givens: Givens): number[] =>
  plan.aggregates.flatMap(({ x, place }) => {
    if (x?.name !== column.name || !place || !('node' in place)) return []
    const value = evaluate(place.node, givens.numbers)
    return value.ok ? [value.value] : []
  })

const labelsOf = (plan: Plan, givens: Givens): DeclaredColumn[] =>
  plan.columns.filter(
    (column) =>
      isLabel(column) &&
      plan.aggregates.some(({ x }) => x?.name === column.name) &&
      labelCount(plan, column, givens) > 0,
  )

const labelCount = (plan: Plan, column: DeclaredColumn, givens: Givens): number =>
  column.words?.length ?? Math.max(0, ...placesOf(plan, column, givens))

const textColumn = (words: readonly string[], rows: number): Column => ({
  values: new Float64Array(rows).fill(Number.NaN),
  texts: Array.from({ length: rows }, (_, row) => words[row % words.length] ?? ''),
  dim: KINDS.text.dim,
  resolution: 0,
})

const evenly = (low: number, high: number, rows: number): Float64Array =>
  Float64Array.from({ length: rows }, (_, row) => low + ((high - low) * row) / Math.max(1, rows - 1))

/** The table before anything was said of its measures: what others are taken over rises, the rest is level. */
const startOf = (plan: Plan, givens: Givens, truth: Truth, instruments: Instruments): Columns => {
  const labels = labelsOf(plan, givens)
  const most = Math.max(0, ...labels.map((column) => labelCount(plan, column, givens)))
  const rows = truth.rows ?? (most > 0 ? most : ROWS)
  return Object.fromEntries(
    plan.columns.map((column): [string, Column] => {
      const { name, kind, words } = column
      if (kind === 'text') return [name, textColumn(words ?? ['-'], rows)]
      const dim = KINDS[kind].dim
      const range = instruments[name]?.range
      if (kind === 'count')
        return [
          name,
          { values: Float64Array.from({ length: rows }, (_, row) => row + 1), dim, resolution: 0 },
        ]
      const places = placesOf(plan, column, givens)
      const isOver = name === 'time' || plan.aggregates.some(({ x }) => x?.name === name)
      if (isOver) {
        const high = truth.span ?? range?.high ?? Math.max(kind === 'time' ? 60 : 1, ...places)
        return [
          name,
          { values: evenly(Math.min(range?.low ?? 0, ...places), high, rows), dim, resolution: 0 },
        ]
      }
      const level = truth[name] ?? (range ? (range.low + range.high) / 2 : 1)
      return [name, { values: new Float64Array(rows).fill(level), dim, resolution: 0 }]
    }),
  )
}

/** Ways to move a column: all of it, from start to end, or one row. */
const directionsOf = (measure: PlannedMeasure, columns: Columns): { name: string; by: Float64Array }[] =>
  [...measure.own, ...measure.all].flatMap(({ name: how, y, place, x }) => {
    const rows = columns[y.name]?.values.length ?? 0
    const level = new Float64Array(rows).fill(1)
    const rising = evenly(0, 1, rows)
    const word = place && 'word' in place ? place.word : undefined
    const marked = columns[x?.name ?? '']?.texts?.map((text) => (text === word ? 1 : 0))
    const first = word && marked ? [Float64Array.from(marked)] : []
    const both = how === 'slope' || how === 'range' ? [rising, level] : [level, rising]
    return [...first, ...both].map((by) => ({ name: y.name, by }))
  })

const shifted = (columns: Columns, name: string, by: Float64Array, amount: number): Columns => {
  const column = columns[name]
  if (!column) return columns
  const values = column.values.map((value, row) => value + amount * (by[row] ?? 0))
  return { ...columns, [name]: { ...column, values } }
}

/** Moves a column until the measure comes out as wanted (secant steps); as it is where no movement gets there. */
const reached = (columns: Columns, givens: Givens, measure: PlannedMeasure, wanted: number): Columns => {
  const valueAt = (at: Columns): number => {
    const result = estimate(at, givens, select(at, givens))
    return result.ok ? (result.value.values[measure.name] ?? Number.NaN) : Number.NaN
  }
  const close = 1e-9 * Math.max(Math.abs(wanted), Math.abs(valueAt(columns)), 1e-12)
  for (const { name, by } of directionsOf(measure, columns)) {
    const off = (amount: number) => valueAt(shifted(columns, name, by, amount)) - wanted
    let [a, b] = [0, 0.1 * Math.max(1e-6, ...(columns[name]?.values ?? []).map(Math.abs))]
    let [fa, fb] = [off(a), off(b)]
    for (let step = 0; step < 40 && Number.isFinite(fb) && fb !== fa && Math.abs(fb) > close; step += 1) {
      const next = b - (fb * (b - a)) / (fb - fa)
      ;[a, fa, b, fb] = [b, fb, next, off(next)]
    }
    if (Math.abs(fb) <= close) return shifted(columns, name, by, b)
  }
  return columns
}

/** What an instrument shows of it: its errors, noise and digits. */
const read = (
  column: Column,
  zero: number,
  model: InstrumentModel | undefined,
  noise: number,
  generator: Generator,
): Column => {
  const error = (u: number | null | undefined) =>
    (u ?? 0) * (model?.shape === 'normal' ? normal(generator) : rectangular(generator))
  const [gain, offset, calibration] = [
    error(model?.gain),
    error(model?.offset),
    (model?.calibration ?? 0) * normal(generator),
  ]
  const digit = model?.resolution ?? 0
  const values = column.values.map((value) => {
    const shown = value + gain * (value - zero) + offset + calibration + noise * normal(generator)
    return digit > 0 ? Math.round(shown / digit) * digit : shown
  })
  return { ...column, values, resolution: digit }
}

export const rehearse = (givens: Givens, truth: Truth, instruments: Instruments, seed: number): Columns => {
  const plan = planOf(givens.fields)
  const start = startOf(plan, givens, truth, instruments)
  const expected = plan.measures.reduce((columns, measure) => {
    const wanted = truth[measure.name]
    return wanted === undefined ? columns : reached(columns, givens, measure, wanted)
  }, start)
  // A percentage of a temperature is one of degrees Celsius.
  const zeroOf = (name: string) =>
    plan.columns.find((each) => each.name === name)?.kind === 'temperature' ? 273.15 : 0
  const generator = random(seed)
  return Object.fromEntries(
    Object.entries(expected).map(([name, column]) => [
      name,
      column.texts || column.values.length === 0
        ? column
        : read(column, zeroOf(name), instruments[name], truth[`noise_${name}`] ?? 0, generator),
    ]),
  )
}
