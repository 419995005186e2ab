/**
 * Measures and derived values by Monte Carlo, where a card asks for it (JCGM 101, 7.9): batches of 10⁴ trials until mean,
 * standard uncertainty and interval of all that the criteria speak of stay within a twentieth of the uncertainty, or
 * 10⁵ trials are done. What is left of numerical error is stated with the result, and a verdict allows for it.
 * It runs to its end where it is called, most often 2·10⁴ trials in some tenths of a second: so nobody has to wait for
 * a campaign that changes afterwards. A page that must not stand still meanwhile computes the run in a worker, as it is.
 */
import type { CardRecord } from '../format/types.ts'
import type { Measures } from '../methods/method.ts'
import { BATCH, type Draws, isStable, withDraws } from '../quantity/draws.ts'
import { evaluateDraws, namesIn } from '../quantity/formula/index.ts'
import type { Quantity } from '../quantity/types.ts'
import type { CardFormulas, Functions } from './formulas.ts'

/** Bounds what one run may cost. */
const MOST_BATCHES = 10

type Input = {
  readonly card: CardRecord
  readonly formulas: CardFormulas
  readonly functions: Functions
  /** Givens and targets. */
  readonly known: Readonly<Record<string, Quantity>>
  /** By first order. */
  readonly measures: Measures
  readonly derived: Measures
  /** Absent: nothing is drawn, and the first order stays. */
  readonly draws: ((batch: number) => Draws) | undefined
}

type Simulation = {
  readonly measures: Measures
  readonly derived: Measures
  /** For judging; empty where nothing was drawn. */
  readonly trials: { readonly draws?: Draws }
}

/** Targets and derived values of each trial, in the order in which they need each other. */
const withFormulas = (input: Input, draws: Draws): Draws => {
  const { formulas, functions, known, measures, derived } = input
  const scope = { ...known, ...measures, ...derived }
  const all: Record<string, Float64Array> = { ...draws }
  for (const [names, nodes] of [
    [Object.keys(known), formulas.targets],
    [Object.keys(derived), formulas.derive],
  ] as const) {
    for (const name of names) {
      const node = nodes.get(name)
      const values = node && !all[name] && evaluateDraws(node, all, scope, functions)
      if (values) all[name] = values
    }
  }
  return all
}

const joined = (batches: readonly Draws[]): Draws =>
  Object.fromEntries(
    Object.keys(batches[0] ?? {}).map((name) => {
      const whole = new Float64Array(batches.length * BATCH)
      batches.forEach((batch, b) => {
        whole.set(batch[name] ?? [], b * BATCH)
      })
      return [name, whole]
    }),
  )

const drawEnough = (input: Input, draw: (batch: number) => Draws): Draws => {
  const asked = [...input.formulas.criteria.values()].flatMap((node) => namesIn(node, input.functions))
  const batches: Draws[] = []
  let all: Draws = {}
  while (batches.length < MOST_BATCHES) {
    batches.push(withFormulas(input, draw(batches.length)))
    if (batches.length < 2) continue
    all = joined(batches)
    const settled = asked.every((name) => {
      const values = all[name]
      return values === undefined || isStable(values)
    })
    if (settled) break
  }
  return all
}

const drawn = (quantities: Measures, draws: Draws): Measures =>
  Object.fromEntries(Object.entries(quantities).map(([name, each]) => [name, withDraws(each, draws[name])]))

export const simulated = (input: Input): Simulation => {
  const { measures, derived, draws: draw } = input
  if (!draw) return { measures, derived, trials: {} }
  const draws = drawEnough(input, draw)
  return { measures: drawn(measures, draws), derived: drawn(derived, draws), trials: { draws } }
}
