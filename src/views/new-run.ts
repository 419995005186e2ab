/** The text of a new run file, filled in as far as is known from the card. What is left to write is marked `…`. */

import { calibrationOn } from '../campaign/instruments.ts'
import { plannedSchema } from '../campaign/schema.ts'
import type { Campaign, CardState } from '../campaign/types.ts'
import { valueText } from '../campaign/value-text.ts'
import type { InstrumentRecord } from '../format/types.ts'
import type { ColumnField, Schema } from '../methods/method.ts'
import { KINDS } from '../quantity/kinds.ts'

export type NewRun = {
  readonly campaign: Campaign
  readonly state: CardState
  /** `2026-03-04T09:12+01:00` */
  readonly when: string
  readonly by: string | null
}

/** A unit as it stands in the readings table: without blanks. A thermometer is read on its scale, not in kelvins. */
const tableUnit = (field: ColumnField, instrument: InstrumentRecord | undefined): string => {
  if (field.kind === 'text') return 'text'
  if (field.kind === 'number' || field.kind === 'count') return '1'
  const scale = instrument?.range?.low.unit.text ?? 'degC'
  const display = instrument?.resolution.unit.text ?? (field.kind === 'time' ? 'min' : KINDS[field.kind].unit)
  return (field.kind === 'temperature' ? scale : display).replaceAll(' ', '·')
}

/** Those in calibration that can read what the column holds; the first by name. */
const instrumentFor = (
  campaign: Campaign,
  state: CardState,
  column: string,
  day: string,
): InstrumentRecord | undefined => {
  const used = campaign.runs.findLast((run) => run.card.id === state.id && run.record.instruments[column])
  const before = campaign.records.instruments[used?.record.instruments[column] ?? '']
  const due = before && calibrationOn(before, day)?.due
  return before && due !== undefined && day <= due ? before : undefined
}

const pad = (cells: readonly string[], widths: readonly number[]): string =>
  cells
    .map((cell, index) => cell.padEnd(widths[index] ?? 0))
    .join('  ')
    .trimEnd()

/** As in the last run of this card; before there is one, what the method needs and what the card asks an instrument for. */
const wantedColumns = (campaign: Campaign, schema: Schema, state: CardState): ColumnField[] => {
  const last = campaign.runs.findLast((run) => run.card.id === state.id)
  const habit = last?.record.readings.columns.map((column) => column.name)
  const asked = Object.keys(state.card.instruments)
  const either = schema.alternatives?.flatMap(({ sets }) =>
    sets.some((set) => set.every((name) => asked.includes(name))) ? [] : (sets[0] ?? []),
  )
  const wanted = habit ?? [...asked, ...(either ?? [])]
  return schema.columns.filter(
    (field) =>
      !field.from && (habit ? wanted.includes(field.name) : field.required || wanted.includes(field.name)),
  )
}

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
  const day = when.slice(0, 10)
  const columnNames = Object.keys(card.instruments)
  const schema = method && plannedSchema(method, card)
  const fields = schema ? wantedColumns(campaign, schema, state) : []
  const instruments = new Map(
    fields.map((field) => [
      field.name,
      field.instrument === 'none' ? undefined : instrumentFor(campaign, state, field.name, day),
    ]),
  )
  const named = fields
    .filter(
      (field) =>
        field.instrument !== 'none' && (field.instrument === 'required' || columnNames.includes(field.name)),
    )
    .map((field) => `${field.name}: ${instruments.get(field.name)?.id ?? '…'}`)
  const names = [...fields.map((field) => field.name), 'remark']
  const units = [...fields.map((field) => tableUnit(field, instruments.get(field.name))), 'text']
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
