/**
 * The same measures by Monte Carlo (JCGM 101): each source is drawn from its own distribution, all its actions are
 * moved together, and the method's `estimate` is called anew. The scatter of fits is drawn from Student's t.
 */
import { BATCH, type Draws, simulatedOf, streamsOf } from '../quantity/draws.ts'
import type { Drawn } from '../quantity/monte-carlo.ts'
import type { Simulated } from '../quantity/types.ts'
import type { Measured, MeasureInput } from './measure.ts'
import type { Columns } from './method.ts'
import type { Inputs } from './movements.ts'
import type { Action } from './perturb.ts'

/** Moves by one unit of the source at place `at` among the drawn. */
type ColumnPush = { readonly at: number; readonly by: Float64Array }
type GivenPush = { readonly at: number; readonly by: number }
type OtherPush = { readonly at: number; readonly action: Action }

type Pushes = {
  readonly columns: ReadonlyMap<string, readonly ColumnPush[]>
  readonly givens: ReadonlyMap<string, readonly GivenPush[]>
  readonly others: readonly OtherPush[]
}

const into = <T>(map: Map<string, T[]>, key: string, push: T): void => {
  const same = map.get(key)
  if (same) same.push(push)
  else map.set(key, [push])
}

/** What each source does to each column and given. All are in proportion, so they are worked out once and add up. */
const pushesOf = (start: Inputs, sources: readonly (readonly Action[])[]): Pushes => {
  const columns = new Map<string, ColumnPush[]>()
  const givens = new Map<string, GivenPush[]>()
  const others: OtherPush[] = []
  sources.forEach((actions, at) => {
    for (const action of actions) {
      const { moves, apply } = action.movement
      if (moves && 'given' in moves) into(givens, moves.given, { at, by: action.size })
      else if (moves) {
        const base = start.columns[moves.column]?.values
        const moved = apply(start, action.size).columns[moves.column]?.values
        if (base && moved)
          into(columns, moves.column, { at, by: moved.map((value, row) => value - (base[row] as number)) })
      } else others.push({ at, action })
    }
  })
  return { columns, givens, others }
}

const movedColumns = (start: Columns, pushes: Pushes['columns'], z: Float64Array): Columns => {
  const columns: Record<string, Columns[string]> = { ...start }
  for (const [name, own] of pushes) {
    const column = start[name]
    if (!column) continue
    const values = new Float64Array(column.values)
    for (let k = 0; k < own.length; k += 1) {
      const { at, by } = own[k] as ColumnPush
      const amount = z[at] as number
      for (let row = 0; row < by.length; row += 1)
        values[row] = (values[row] as number) + amount * (by[row] as number)
    }
    columns[name] = { ...column, values }
  }
  return columns
}

const movedNumbers = (
  start: Readonly<Record<string, number>>,
  pushes: Pushes['givens'],
  z: Float64Array,
): Record<string, number> => {
  const numbers = { ...start }
  for (const [name, own] of pushes)
    for (const { at, by } of own) numbers[name] = (numbers[name] ?? Number.NaN) + (z[at] as number) * by
  return numbers
}

type Fit = { readonly at: number; readonly u: number }

/**
 * Draws of one run, batch by batch: measures with a known budget, and the givens that move with them. A trial in which
 * nothing can be estimated is NaN.
 */
export const drawsOf = (
  { method }: Pick<MeasureInput, 'method'>,
  measured: Measured,
): ((batch: number, trials?: number) => Draws) => {
  const known = Object.entries(measured.measures).flatMap(([name, { parts }]) =>
    parts && Object.keys(parts).length > 0 && measured.estimate.values[name] !== undefined
      ? [{ name, parts }]
      : [],
  )
  const sources = [...measured.sources.values()].filter((actions) => actions[0] && !actions[0].unknown)
  const fits = new Map(
    known.flatMap(({ parts }) => Object.entries(parts).filter(([source]) => source.startsWith('fit:'))),
  )
  // What came in with a given is among the sources already.
  for (const actions of sources) fits.delete((actions[0] as Action).source)
  const drawn: Drawn[] = [
    ...sources.map((actions) => actions[0] as Action),
    ...[...fits].map(([source, part]) => ({ source, ...part })),
  ]
  const place = new Map([...fits.keys()].map((source, k) => [source, sources.length + k]))
  const scatter = known.map(({ parts }) =>
    Object.entries(parts).flatMap(([source, { u }]): Fit[] => {
      const at = place.get(source)
      return at === undefined ? [] : [{ at, u }]
    }),
  )
  const start: Inputs = { columns: measured.columns, givens: measured.givens }
  const pushes = pushesOf(start, sources)

  return (batch, trials = BATCH) => {
    const next = streamsOf(drawn, batch)
    const z = new Float64Array(drawn.length)
    const measures = known.map(() => new Float64Array(trials))
    const givens = [...pushes.givens.keys()].map((name) => ({ name, values: new Float64Array(trials) }))
    for (let trial = 0; trial < trials; trial += 1) {
      next(z)
      const numbers = movedNumbers(start.givens.numbers, pushes.givens, z)
      for (const { name, values } of givens) values[trial] = numbers[name] as number
      const simple = {
        columns: movedColumns(start.columns, pushes.columns, z),
        givens: { ...start.givens, numbers },
      }
      const inputs = pushes.others.reduce(
        (state, { at, action }) => action.movement.apply(state, (z[at] as number) * action.size),
        simple as Inputs,
      )
      const result = method.estimate(inputs.columns, inputs.givens, measured.selection, true)
      for (let k = 0; k < known.length; k += 1) {
        let value = (result.ok ? result.value.values[known[k]?.name as string] : undefined) ?? Number.NaN
        for (const { at, u } of scatter[k] as Fit[]) value += u * (z[at] as number)
        const samples = measures[k] as Float64Array
        samples[trial] = Number.isFinite(value) ? value : Number.NaN
      }
    }
    return Object.fromEntries([
      ...givens.map(({ name, values }) => [name, values] as const),
      ...known.map(({ name }, k) => [name, measures[k] as Float64Array] as const),
    ])
  }
}

/** Mean, standard uncertainty and probabilistically symmetric 95 % interval of each measure with a known budget. */
export const simulateMeasures = (
  input: Pick<MeasureInput, 'method'>,
  measured: Measured,
  draws: number,
  seed: number,
): Readonly<Record<string, Simulated>> =>
  Object.fromEntries(
    Object.entries(drawsOf(input, measured)(seed, draws)).flatMap(([name, values]) =>
      name in measured.measures ? [[name, simulatedOf(values)]] : [],
    ),
  )
