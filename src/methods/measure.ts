/**
 * Readings and givens → measures with budget: the method's `estimate` is called once as it is and twice for each
 * way in which sources of uncertainty move the inputs (first order by central differences, JCGM 100 5.1.3 note 2).
 * A method can therefore not forget a source, and quantities that share a source stay correlated.
 */
import { KINDS } from '../quantity/kinds.ts'
import { newParts } from '../quantity/quantity.ts'
import type { Part, Quantity, Result } from '../quantity/types.ts'
import { contributions } from './derivatives.ts'
import type {
  Columns,
  Estimate,
  ExtraSource,
  Givens,
  InstrumentModel,
  Measures,
  Method,
  Schema,
  Selection,
} from './method.ts'
import type { Inputs } from './movements.ts'
import { type Action, sourcesOf } from './perturb.ts'

export type MeasureInput = {
  readonly runId: string
  readonly method: Method
  readonly schema: Schema
  readonly columns: Columns
  /** By column name; a column without one carries resolution only. */
  readonly instruments: Readonly<Record<string, InstrumentModel>>
  /** Numeric givens with their budget. */
  readonly inputs: Readonly<Record<string, Quantity>>
  readonly words: Readonly<Record<string, string>>
  readonly fields: Readonly<Record<string, unknown>>
  /** Shift of the unloaded reading over the test, by column, SI. */
  readonly zero?: Readonly<Record<string, number>>
}

export type Measured = {
  readonly measures: Measures
  /** With what the method's `prepare` added. */
  readonly columns: Columns
  readonly givens: Givens
  readonly selection: Selection
  readonly estimate: Estimate
  /** Every source with its actions, for Monte Carlo on the very same function. */
  readonly sources: ReadonlyMap<string, readonly Action[]>
}

export const givensOf = (input: Pick<MeasureInput, 'inputs' | 'words' | 'fields'>): Givens => ({
  numbers: Object.fromEntries(Object.entries(input.inputs).map(([name, quantity]) => [name, quantity.value])),
  words: input.words,
  fields: input.fields,
  dims: Object.fromEntries(Object.entries(input.inputs).map(([name, quantity]) => [name, quantity.dim])),
})

const asAction = (runId: string, extra: ExtraSource): Action => ({
  source: `method:${runId}/${extra.source}`,
  pool: `method:${runId}/${extra.source}`,
  shape: extra.shape,
  dof: Number.POSITIVE_INFINITY,
  size: 1,
  movement: {
    key: `method:${extra.source}`,
    apply: (inputs, amount) => extra.perturb(inputs.columns, inputs.givens, amount),
  },
})

/** All actions of one source at once. */
export const moved = (inputs: Inputs, actions: readonly Action[], z: number): Inputs =>
  actions.reduce((state, { movement, size }) => movement.apply(state, z * size), inputs)

type Draft = { value: number; parts: Record<string, Part>; why: string[] }

/** A probe counts as an influence from a millionth of the value or of what is already known of its spread. */
const matters = (delta: number, draft: Draft): boolean => {
  const spread = Math.sqrt(Object.values(draft.parts).reduce((sum, part) => sum + part.u * part.u, 0))
  return Math.abs(delta) > 1e-6 * Math.max(Math.abs(draft.value), spread, Number.MIN_VALUE)
}

const scatterOf = (runId: string, parts: Readonly<Record<string, Part>>): Record<string, Part> => {
  const own = newParts()
  for (const [key, part] of Object.entries(parts))
    own[`fit:${runId}/${key}`] = { ...part, pool: `fit:${runId}/${part.pool}` }
  return own
}

/**
 * Computes the measures of one run.
 * Errors: the sentence of the method where the readings do not allow an estimate at all.
 */
export const measureRun = (input: MeasureInput): Result<Measured, string> => {
  const { method, schema, runId } = input
  const givens = givensOf(input)
  const columns = method.prepare?.(input.columns, givens, input.instruments) ?? input.columns
  const start: Inputs = { columns, givens }
  const selection = method.select(start.columns, start.givens)
  const first = method.estimate(start.columns, start.givens, selection)
  if (!first.ok) return first
  const estimate = first.value

  const sources = new Map(
    sourcesOf({
      ...start,
      runId,
      fields: schema.columns,
      instruments: input.instruments,
      inputs: input.inputs,
      zero: input.zero ?? {},
      residual: estimate.residual,
    }),
  )
  for (const extra of method.sources?.(start.columns, start.givens, selection) ?? []) {
    const action = asAction(runId, extra)
    sources.set(action.source, [...(sources.get(action.source) ?? []), action])
  }

  const { scatter } = estimate
  const fields = schema.measures.filter((field) => Number.isFinite(estimate.values[field.name]))
  const drafts = new Map<string, Draft>()
  for (const field of fields) {
    const parts = field.exact ? newParts() : scatterOf(runId, scatter[field.name] ?? {})
    drafts.set(field.name, { value: estimate.values[field.name] as number, parts, why: [] })
  }

  const contribution = contributions(sources, start, estimate.values, (at) => {
    const result = method.estimate(at.columns, at.givens, selection, true)
    return result.ok ? result.value.values : {}
  })
  const known = [...sources].filter(([, actions]) => actions.every((action) => !action.unknown))
  const probes = [...sources].filter(([, actions]) => actions.some((action) => action.unknown))
  for (const [source, actions] of [...known, ...probes]) {
    const { dof, pool, shape } = actions[0] as Action
    const unknown = actions.find((action) => action.unknown)?.unknown
    for (const field of fields) {
      if (field.exact) continue
      const draft = drafts.get(field.name) as Draft
      const delta = contribution(actions, field.name)
      if (delta === 0) continue
      if (unknown === undefined) draft.parts[source] = { u: delta, dof, pool, shape }
      else if (!draft.why.includes(unknown) && matters(delta, draft)) draft.why.push(unknown)
    }
  }

  const { dims, kinds } = estimate
  const measures: Record<string, Quantity> = {}
  for (const field of fields) {
    const { value, parts, why } = drafts.get(field.name) as Draft
    const dim = dims?.[field.name] ?? KINDS[kinds?.[field.name] ?? field.kind].dim
    measures[field.name] = { value, dim, parts: why.length > 0 ? null : parts, why }
  }
  return {
    ok: true,
    value: {
      measures: { ...measures, ...method.complete?.(measures) },
      columns,
      givens,
      selection,
      estimate,
      sources,
    },
  }
}
