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

/** A unit as it stands in the readings table: without blanks. */
const tableUnit = (field: ColumnField, instrument: InstrumentRecord | undefined): string => {
  if (field.kind === 'text') return 'text'
  if (field.kind === 'number' || field.kind === 'count') return '1'
  const own = instrument?.resolution.unit.text ?? (field.kind === 'time' ? 'min' : KINDS[field.kind].unit)
  return own.replaceAll(' ', '·')
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

const wantedColumns = (schema: Schema, state: CardState): ColumnField[] => {
  const asked = Object.keys(state.card.instruments)
  return schema.columns.filter((field) => !field.from && (field.required || asked.includes(field.name)))
}

const givenLines = (state: CardState): string[] => {
  const { ask, given, articles } = state.card
  const shown = ask.map((name) => {
    const known = articles[state.article]?.[name] ?? given[name]
    return `${name}: ${known?.form === 'quantity' ? known.stated.text : '…'}`
  })
  return shown.length > 0 ? [`given: {${shown.join(', ')}}`] : []
}

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
  const fields = schema ? wantedColumns(schema, state) : []
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
  const widths = names.map((name, index) => Math.max(name.length, units[index]?.length ?? 0))
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
    ...table.map((cells) => `  ${pad(cells, widths)}`),
    '---',
    '## To reach',
    ...targetLines(state),
    ...stopLines(state),
    ...(targetLines(state).length + stopLines(state).length === 0 ? ['- see the card'] : []),
    '',
    '## Observed',
    '- …',
    '',
  ].join('\n')
}
