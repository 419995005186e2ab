/** The text of a new run file, filled in as far as is known from the card. What is left to write is marked `…`. */

import { type Bench, gaugeUnit, instrumentFor, plannedColumns } from '../campaign/plan/gauges.ts'
import { plannedSchema } from '../campaign/schema.ts'
import type { Campaign, CardState } from '../campaign/types.ts'
import { valueText } from '../campaign/value-text.ts'
import type { ColumnField } from '../methods/method.ts'

export type NewRun = {
  readonly campaign: Campaign
  readonly state: CardState
  /** `2026-03-04T09:12+01:00` */
  readonly when: string
  readonly by: string | null
}

/** A unit as it stands in the readings table: without blanks. */
export const tableUnit = (field: ColumnField, bench: Bench): string => {
  if (field.kind === 'text') return 'text'
  if (field.kind === 'number' || field.kind === 'count') return field.unit ?? '1'
  return gaugeUnit(bench, field).text.replaceAll(' ', '·')
}

const pad = (cells: readonly string[], widths: readonly number[]): string =>
  cells
    .map((cell, index) => cell.padEnd(widths[index] ?? 0))
    .join('  ')
    .trimEnd()

/** Rows that are known before the test, with their cells still open. */
const openRows = (fields: readonly ColumnField[]): string[][] => {
  const begun = fields.find((field) => field.rows)
  return (begun?.rows ?? []).map((row) => fields.map((field) => (field === begun ? row : '-')))
}

const askedText = (state: CardState, name: string): string | null => {
  const known = state.card.articles[state.article]?.[name] ?? state.card.given[name]
  return known?.form === 'quantity' ? known.stated.text : null
}

/** What is measured on the day is never copied from the card into the record. */
const givenLines = ({ card }: CardState): string[] =>
  card.ask.length > 0 ? [`given: {${card.ask.map((name) => `${name}: …`).join(', ')}}`] : []

const askLines = (state: CardState): string[] =>
  state.card.ask.map((name) => {
    const text = askedText(state, name)
    return `- Measure ${name} on the day${text ? `; the card has ${text}` : ''}.`
  })

const targetLines = (state: CardState): string[] =>
  Object.entries(state.targets).map(
    ([name, target]) =>
      `- ${name}: ${target.formula} = ${target.worked} = ${valueText(target.value, target.unit)}`,
  )

const stopLines = (state: CardState): string[] =>
  Object.entries(state.card.stopAt).map(([column, stop]) => `- Stop at ${column} ${stop.text}.`)

/** A run file that `check` reads; the rows of the table are the technician's. */
export const newRunText = ({ campaign, state, when, by }: NewRun): string => {
  const { card, article, method } = state
  const columnNames = Object.keys(card.instruments)
  const schema = method && plannedSchema(method, card)
  const bench: Bench = { records: campaign.records, runs: campaign.runs, card, day: when.slice(0, 10) }
  const fields = schema ? plannedColumns(bench, schema) : []
  const instruments = new Map(
    fields.map((field) => [
      field.name,
      field.instrument === 'none' ? undefined : instrumentFor(bench, field.name),
    ]),
  )
  const named = fields
    .filter(
      (field) =>
        field.instrument !== 'none' && (field.instrument === 'required' || columnNames.includes(field.name)),
    )
    .map((field) => `${field.name}: ${instruments.get(field.name)?.id ?? '…'}`)
  const names = [...fields.map((field) => field.name), 'remark']
  const units = [...fields.map((field) => tableUnit(field, bench)), 'text']
  const hasRemark = fields.some((field) => field.name === 'remark')
  const table = hasRemark ? [names.slice(0, -1), units.slice(0, -1)] : [names, units]
  const rows = openRows(fields)
  const widths = names.map((name, index) =>
    Math.max(name.length, units[index]?.length ?? 0, ...rows.map((row) => row[index]?.length ?? 0)),
  )
  const known = [...targetLines(state), ...askLines(state), ...stopLines(state)]
  return [
    '---',
    `card: ${card.id}`,
    ...(Object.keys(card.articles).length > 1 ? [`article: ${article}`] : []),
    `when: ${when}`,
    `by: [${by ?? '…'}]`,
    'witness: …',
    ...(named.length > 0 ? [`instruments: {${named.join(', ')}}`] : []),
    ...givenLines(state),
    'ambient: {temperature: … °C}',
    'readings: |',
    ...[...table, ...rows].map((cells) => `  ${pad(cells, widths)}`),
    '---',
    '## To reach',
    ...(known.length > 0 ? known : ['- See the card.']),
    '',
    '## Observed',
    '- …',
    '',
  ].join('\n')
}
