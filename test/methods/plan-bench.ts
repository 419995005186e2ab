/** What a plan is made from, and instruments as a card asks for them. */
import type {
  Columns,
  Givens,
  InstrumentModel,
  JudgedTerm,
  Measures,
  Method,
} from '../../src/methods/method.ts'
import type { Plan, PlanContext, PlanLimit, PlanText } from '../../src/methods/plan.ts'
import { KINDS, type Kind } from '../../src/quantity/kinds.ts'
import { exact } from '../../src/quantity/quantity.ts'
import type { Quantity } from '../../src/quantity/types.ts'
import { givensOf, type Setup } from './bench.ts'

export const context = (more: Partial<PlanContext> = {}): PlanContext => ({
  stopAt: {},
  targets: {},
  gauges: {},
  limits: [],
  earlier: [],
  ...more,
})

export const limit = (measure: string, direction: 'below' | 'above', value: number): PlanLimit => ({
  criterion: 'one',
  measure,
  direction,
  value,
})

/** As `uncertainty: <= U, resolution: <= r` of a card: no linearity, hysteresis or gain is asked for. */
export const asked = (
  U: number,
  resolution: number,
  more: Partial<InstrumentModel> = {},
): InstrumentModel => ({
  id: 'asked',
  label: 'asked',
  resolution,
  gain: 0,
  offset: U / 2,
  linearity: null,
  hysteresis: null,
  drift: null,
  shape: 'normal',
  ...more,
})

export const planned = (setup: Setup, more: Partial<PlanContext> = {}): Plan => {
  const plan = setup.method.plan?.(givensOf(setup), setup.instruments, context(more))
  if (!plan) throw new Error(`${setup.method.id} has no plan`)
  return plan
}

/** Numbers in SI within the sentence. */
export const sentence = (text: PlanText): string =>
  text
    .map((piece) => (typeof piece === 'string' ? piece : `{${Number(piece.value.toPrecision(6))}}`))
    .join('')

export const sentences = ({ text }: Plan): string => text.map(sentence).join('\n')

/** Numbers of the first sentence that matches, in order. */
export const numbersIn = ({ text }: Plan, about: RegExp): number[] =>
  (text.find((one) => about.test(sentence(one))) ?? []).flatMap((piece) =>
    typeof piece === 'string' ? [] : [piece.value],
  )

/** Column of a table of the plan by its title. */
export const planColumn = (table: Plan['steps'], title: string): (string | number | null)[] => {
  const at = table?.columns.findIndex((column) => column.title === title) ?? -1
  return (table?.rows ?? []).map((row) => row[at] ?? null)
}

export const numericColumn = (table: Plan['steps'], title: string): number[] =>
  planColumn(table, title).filter((cell) => typeof cell === 'number')

export const known = (values: Readonly<Record<string, readonly [number, Kind]>>): Record<string, Quantity> =>
  Object.fromEntries(
    Object.entries(values).map(([name, [value, kind]]) => [name, exact(value, KINDS[kind].dim)]),
  )

export const term = (
  more: Partial<JudgedTerm> & Pick<JudgedTerm, 'measures' | 'value' | 'limits'>,
): JudgedTerm => ({
  criterion: 'one',
  verdict: 'fail',
  direction: 'below',
  ...more,
})

/** Advice on one criterion, `measure < limit` or `> limit`, that failed. */
export const advised = (
  method: Method,
  measures: Measures,
  name: string,
  [direction, value]: readonly ['below' | 'above', number],
  givens: Givens = { numbers: {}, words: {}, fields: {} },
  columns: Columns = {},
): string => {
  const judged = [
    term({ measures: [name], value: measures[name]?.value ?? Number.NaN, limits: [value], direction }),
  ]
  return (method.advise?.(measures, judged, givens, columns) ?? []).map(({ text }) => text).join('\n')
}
