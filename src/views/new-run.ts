/** The text of a new run file, filled in as far as is known from the card. What is left to write is marked `…`. */

import { type Bench, gaugeUnit, plannedColumns } from '../campaign/plan/gauges.ts'
import { plannedSchema } from '../campaign/schema.ts'
import type { Campaign, CardState, Run } from '../campaign/types.ts'
import { valueText } from '../campaign/value-text.ts'
import { flowText } from '../form/yaml-text.ts'
import type { ColumnField } from '../methods/method.ts'
import { fileText, listField, OPEN, remark } from './new-front.ts'
import { type Offered, offeredFor, oneEach } from './new-instruments.ts'
import { takenOver } from './new-results.ts'

export type NewRun = {
  readonly campaign: Campaign
  readonly state: CardState
  /** `2026-03-04T09:12+01:00` */
  readonly when: string
  readonly by: string | null
  /** The state of the card in hand: a commit of the main line. Null: there is none to name. */
  readonly revision: string | null
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

type Given = { readonly remarks: readonly string[]; readonly lines: readonly string[] }

/** What is measured on the day is never copied from the card; a result of another run is taken over from the newest. */
const givenOf = (state: CardState, runs: readonly Run[]): Given => {
  const { ask } = state.card
  const found = ask.map((name) => ({ name, result: takenOver(name, state, runs) }))
  const values = Object.fromEntries(
    found.map(({ name, result }) => [
      name,
      result?.from ? { from: result.from, measure: result.measure } : OPEN,
    ]),
  )
  return {
    remarks: found.flatMap(({ name, result }) => (result?.from === null ? [`${name}: ${result.why}`] : [])),
    lines: ask.length > 0 ? [`given: ${flowText(values)}`] : [],
  }
}

const askLines = (state: CardState, runs: readonly Run[]): string[] =>
  state.card.ask
    .filter((name) => !takenOver(name, state, runs)?.from)
    .map((name) => {
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

const MOST = 4

/** The first that fits stands in the record; the others, or why none does, in a comment. */
const offerWords = ({ column, fit, unfit }: Offered): string[] => {
  const [first, ...others] = fit
  if (others.length > 0) return [`${column}: ${others.map(({ id }) => id).join(', ')} would do as well`]
  if (first) return []
  const why = unfit.slice(0, MOST).map((each) => `${each.id} (${each.why})`)
  const more = unfit.length > MOST ? [`and ${unfit.length - MOST} more`] : []
  return [
    unfit.length === 0
      ? `${column}: no instrument here can read it`
      : `${column}: none is in calibration and as good as the card asks: ${[...why, ...more].join(', ')}`,
  ]
}

/** Columns that an instrument reads: those that need one, and those that the card asks one for. */
const wantsInstrument = ({ card }: CardState, { instrument, name }: ColumnField): boolean =>
  instrument === 'required' || (instrument !== 'none' && Object.hasOwn(card.instruments, name))

const tableLines = (fields: readonly ColumnField[], bench: Bench): string[] => {
  const named = fields.some((field) => field.name === 'remark') ? [] : ['remark']
  const names = [...fields.map((field) => field.name), ...named]
  const units = [...fields.map((field) => tableUnit(field, bench)), ...named.map(() => 'text')]
  const rows = [names, units, ...openRows(fields)]
  const widths = names.map((_, index) => Math.max(...rows.map((row) => row[index]?.length ?? 0)))
  return ['readings: |', ...rows.map((cells) => `  ${pad(cells, widths)}`)]
}

/** A run file that `check` reads once what is marked `…` is filled in; the rows of the table are the technician's. */
export const newRunText = ({ campaign, state, when, by, revision }: NewRun): string => {
  const { card, article, method } = state
  const { records } = campaign
  const runs = campaign.runs.filter((run) => run.record.when.epoch <= Date.parse(when))
  const free: Bench = { records, runs, card, day: when.slice(0, 10) }
  const fields = method ? plannedColumns(free, plannedSchema(method, card)) : []
  const offered = oneEach(
    fields.filter((each) => wantsInstrument(state, each)).map((each) => offeredFor(free, each)),
  )
  const chosen = new Map(offered.flatMap(({ column, fit: [first] }) => (first ? [[column, first]] : [])))
  const instruments = Object.fromEntries(
    offered.map(({ column }) => [column, chosen.get(column)?.id ?? OPEN]),
  )
  const given = givenOf(state, runs)
  const known = [...targetLines(state), ...askLines(state, runs), ...stopLines(state)]
  const front = [
    `card: ${card.id}`,
    ...(Object.keys(card.articles).length > 1 ? [`article: ${article}`] : []),
    ...(revision === null ? [] : [`card-revision: ${revision.slice(0, 12)}`]),
    `when: ${when}`,
    listField('by', by === null ? [] : [by]),
    `witness: ${OPEN}`,
    ...offered.flatMap(offerWords).map(remark),
    ...(offered.length > 0 ? [`instruments: ${flowText(instruments)}`] : []),
    ...given.remarks.map(remark),
    ...given.lines,
    `ambient: {temperature: ${OPEN} °C}`,
    ...tableLines(fields, { ...free, chosen }),
  ]
  const reach = known.length > 0 ? known : ['- See the card.']
  return fileText(front, ['## To reach', ...reach, '', '## Observed', `- ${OPEN}`])
}
