/** The table to write in: the columns of the readings as a new run file has them, with what the plan says beside them. */
import type { CardState } from '../campaign/types.ts'
import type { ColumnField } from '../methods/method.ts'
import type { PlanTable } from '../methods/plan.ts'
import { toUnit } from '../quantity/display.ts'
import { tableUnit } from './new-run.ts'
import { type Gauges, plain, planColumn, planHead } from './planning.ts'
import { unitText } from './show.ts'
import type { Block, Column, Rich, Table } from './view.ts'
import { nameWords } from './words.ts'

/** A column of the sheet: its head and its cells. */
type Written = {
  readonly head: Column
  /** One a row; empty is to be written in. */
  readonly cells: readonly string[]
}

/** Rows where nothing is planned. */
const OPEN_ROWS = 16
/** With so few columns two tables stand side by side; longer words need the whole width. */
const MOST_BESIDE = 6
const LONG_WORD = 14
const LEAST_ROWS = 12

const fieldHead = (field: ColumnField, state: CardState, gauges: Gauges): Column => {
  const unit = tableUnit(field, gauges.bench)
  const stop = state.card.stopAt[field.name]
  const shown = stop ? ` (stop at ${plain(toUnit(stop.value, gauges.unit(field.name, field.kind)), 4)})` : ''
  const name = nameWords(field.name)
  return { text: `${unit === 'text' || unit === '1' ? name : `${name}, ${unitText(unit)}`}${shown}` }
}

const columnsOf = (
  plan: PlanTable | null,
  fields: readonly ColumnField[],
  state: CardState,
  gauges: Gauges,
): Written[] => {
  const planned = (plan?.columns ?? []).map((column, at) => ({ column, at }))
  const show = ({ column, at }: (typeof planned)[number]): Written => ({
    head: { text: planHead(column, gauges), numeric: column.kind !== 'text' },
    cells: plan ? planColumn(plan, at, gauges) : [],
  })
  const names = new Set(fields.map((field) => field.name))
  const filled = new Set(planned.flatMap(({ column }) => (column.written && column.of ? [column.of] : [])))
  const isFirst = ({ column }: (typeof planned)[number]): boolean =>
    column.written || column.of === undefined || !names.has(column.of)
  return [
    ...planned.filter(isFirst).map(show),
    ...fields
      .filter((field) => !filled.has(field.name))
      .flatMap((field) => [
        ...planned.filter((each) => !isFirst(each) && each.column.of === field.name).map(show),
        { head: fieldHead(field, state, gauges), cells: [] },
      ]),
    ...(names.has('remark') ? [] : [{ head: { text: 'remark' }, cells: [] }]),
  ]
}

export const writingTables = (state: CardState, fields: readonly ColumnField[], gauges: Gauges): Block => {
  const plan = state.plan?.readings ?? null
  const columns = columnsOf(plan, fields, state, gauges)
  const count = plan?.rows.length ?? OPEN_ROWS
  const cells = Array.from({ length: count }, (_, row) =>
    columns.map((column): Rich => [column.cells[row] ?? ''].filter((text) => text !== '')),
  )
  const long = columns.some((column) => column.cells.some((cell) => cell.length > LONG_WORD))
  const beside = columns.length <= MOST_BESIDE && !long && count > LEAST_ROWS
  const half = beside ? Math.ceil(cells.length / 2) : cells.length
  const tables = [cells.slice(0, half), cells.slice(half)].filter((part) => part.length > 0)
  return {
    is: 'writing',
    tables: tables.map(
      (part, index): Table => ({
        caption: `Readings, ${state.card.id}, ${state.article}${tables.length > 1 ? `, part ${index + 1} of ${tables.length}` : ''}`,
        columns: columns.map((column) => column.head),
        rows: part.map((each) => ({ cells: each })),
        narrow: 'scroll',
      }),
    ),
  }
}
