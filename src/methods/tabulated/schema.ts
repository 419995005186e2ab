/** What a tabulated test is made of: all of it is on the card. */
import type { Dimension } from '../../quantity/types.ts'
import type { CardField, ColumnField, MeasureField, Method, Schema } from '../method.ts'
import { type DeclaredColumn, readColumns } from './columns.ts'
import { readMeasures } from './measures.ts'
import { dimensionsOf, kindsOfMeasures, type Plan, planOf } from './plan.ts'

const cardFields: readonly CardField[] = [
  {
    name: 'columns',
    meaning:
      'the columns by name, each with `unit` (or `kind`) and `meaning`; further `required: no`, `instrument: required | optional | none`, `hold: yes | no`, and `words: […]` of a column of words',
    required: true,
    read: readColumns,
  },
  {
    name: 'measures',
    meaning:
      'the measures by name, each a formula with aggregates over columns (mean max min first last count range slope at integral), or `{formula: …, meaning: …, positive: yes}`',
    required: true,
    read: readMeasures,
  },
]

export const schema: Schema = {
  givens: [],
  columns: [
    {
      name: '<column>',
      meaning: 'a column that the card declares, in the kind of its unit',
      kind: 'number',
      required: false,
      ramp: 'own',
      hold: false,
      instrument: 'optional',
    },
  ],
  measures: [{ name: '<measure>', meaning: 'what the formula of the card gives', kind: 'number' }],
  cardFields,
}

/** Rates over time: the instrument must hold still, or its drift is taken for one. */
const isRate = (column: DeclaredColumn, plan: Plan): boolean =>
  plan.aggregates.some(({ name, y, x }) => name === 'slope' && y.name === column.name && x?.kind === 'time')

const columnField = (column: DeclaredColumn, plan: Plan): ColumnField => {
  const { name, kind, meaning, required, instrument, unit, words } = column
  const marksRows = plan.aggregates.some(({ x }) => x?.name === name)
  const counted = kind === 'text' || kind === 'count'
  return {
    name,
    kind,
    meaning,
    required,
    instrument,
    ramp: counted || instrument === 'none' ? 'none' : 'own',
    hold: instrument !== 'none' && (column.hold ?? isRate(column, plan)),
    ...(unit && unit !== 'text' ? { unit } : {}),
    ...(words ? { choices: words } : {}),
    ...(words && marksRows ? { rows: words } : {}),
  }
}

const measureFields = (plan: Plan, given: Readonly<Record<string, Dimension>>): MeasureField[] => {
  const open = Object.fromEntries(
    plan.measures.flatMap(({ givens }) => givens.map((name) => [name, given[name] ?? null])),
  )
  const { dims } = dimensionsOf(plan, open)
  const kinds = kindsOfMeasures(plan, dims)
  return plan.measures.map(({ name, meaning, formula, positive, exact }) => {
    const dim = dims[name]
    const kind = kinds[name]
    return {
      name,
      meaning: `${meaning}: ${formula}`,
      positive,
      exact,
      kind: kind ?? 'number',
      ...(kind ? {} : { dim: dim ?? null }),
    }
  })
}

export const describe: NonNullable<Method['describe']> = (
  fields,
  _columns,
  _dims,
  _given,
  givenDims = {},
) => {
  const plan = planOf(fields)
  return {
    ...schema,
    columns: plan.columns.map((column) => columnField(column, plan)),
    measures: measureFields(plan, givenDims),
    uses: [...new Set(plan.measures.flatMap(({ givens }) => givens))],
  }
}
