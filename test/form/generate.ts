/** Runs as somebody might record them in the form: readings rehearsed by the method, everything else drawn. */
import fc from 'fast-check'
import { functionsFor, parseCard } from '../../src/campaign/formulas.ts'
import { inputsOf } from '../../src/campaign/inputs.ts'
import { modelOf } from '../../src/campaign/instruments.ts'
import { plannedSchema } from '../../src/campaign/schema.ts'
import { workTargets } from '../../src/campaign/targets.ts'
import type { CardState, Run } from '../../src/campaign/types.ts'
import { beginRun } from '../../src/form/begin.ts'
import { EMPTY_GIVEN, type GivenEntry, type RunState } from '../../src/form/state.ts'
import { columnUnit } from '../../src/format/column-units.ts'
import { FUNCTIONS } from '../../src/functions/index.ts'
import { givensOf } from '../../src/methods/measure.ts'
import type { Column } from '../../src/methods/method.ts'
import { differenceToSI, toUnit } from '../../src/quantity/convert.ts'
import { formOf } from '../../src/views/record-form.ts'
import { siteOf } from '../../src/views/site.ts'
import { campaign } from '../demo/harness.ts'

export const site = siteOf(campaign)

/** Text as people write it, with all that a file could stumble over. */
const prose = fc.oneof(
  fc.constantFrom(
    'door: shut',
    '# 3 of 5',
    '- dash first',
    'a, b',
    "it's [so]",
    '"quoted"',
    'yes',
    '12',
    'ends:',
    '…?',
    'µ·° ±',
    '{x}',
    '*',
  ),
  fc.string({ unit: 'grapheme', minLength: 1, maxLength: 30 }),
)
/** What is blank, or marked as not filled in, would rightly be refused. */
const told = prose
  .map((text) => text.replace(/\s+/g, ' ').replaceAll('\ufffd', '').trim())
  .filter((text) => /\p{L}|\d/u.test(text) && !text.startsWith('…'))

const choices = fc.record({
  seed: fc.integer({ min: 1, max: 1_000_000 }),
  note: told,
  rig: told,
  what: told,
  why: told,
  remark: told,
  body: told,
  deviates: fc.boolean(),
  fits: fc.boolean(),
  zero: fc.boolean(),
  warm: fc.integer({ min: -20, max: 40 }),
})
export type Choices = typeof choices extends fc.Arbitrary<infer T> ? T : never
export { choices }

const lastRun = (state: CardState): Run => {
  const run = campaign.runs.findLast((each) => each.card.id === state.id && each.article === state.article)
  const other = run ?? campaign.runs.findLast((each) => each.card.id === state.id)
  if (!other) throw new Error(`no run of ${state.id}`)
  return other
}

const decimals = (digit: number): number => Math.min(12, Math.max(0, Math.ceil(-Math.log10(digit) - 1e-9)))

const cellsOf = (column: Column, unit: string, digit: number): string[] => {
  if (column.texts && unit === 'text') return [...column.texts]
  const read = columnUnit(unit)
  if (!read.ok) throw new Error(`no unit ${unit}`)
  const step = digit > 0 ? digit / differenceToSI(1, read.value) : 0
  return Array.from(column.values, (value, row) =>
    column.missing?.[row] || Number.isNaN(value)
      ? ''
      : toUnit(value, read.value).toFixed(step > 0 ? decimals(step) : 6),
  )
}

/** The asked givens as an earlier run had them, else as the card has them. */
const givenFor = (name: string, run: Run, state: CardState): GivenEntry => {
  const given = run.record.given[name] ?? state.card.articles[state.article]?.[name] ?? state.card.given[name]
  if (given?.form === 'result') return { ...EMPTY_GIVEN, from: given.from, measure: given.measure }
  if (given?.form === 'quantity') return { ...EMPTY_GIVEN, value: given.stated.text, with: given.with ?? '' }
  return { ...EMPTY_GIVEN, value: given?.form === 'word' ? given.word : '' }
}

/** `when` also makes the name of the file: each drawn run gets a minute of its own. */
export const draw = (state: CardState, drawn: Choices, when: string): RunState => {
  const { card, method, article } = state
  const view = formOf(card, [state], site)
  if (!method || !view) throw new Error(`no method for ${card.id}`)
  const run = lastRun(state)
  const day = when.slice(0, 10)
  const begun = beginRun({ ...view, articles: Object.keys(card.articles) }, when)
  const instruments = run.record.instruments
  const records = campaign.records.instruments
  const models = Object.fromEntries(
    Object.entries(instruments).flatMap(([column, id]) => {
      const instrument = records[id]
      return instrument ? [[column, modelOf(instrument, day)]] : []
    }),
  )
  const schema = plannedSchema(method, card)
  const results = new Map(campaign.runs.map((each) => [each.id, each]))
  const functions = functionsFor(method, FUNCTIONS)
  const given = inputsOf(schema, card, article, run.record, results)
  const { inputs } = workTargets(card, schema, parseCard(card), functions, given)
  const givens = givensOf({ inputs: inputs.numbers, words: inputs.words, fields: card.fields })
  const columns = method.rehearse(
    givens,
    { ...method.nominal?.(givens), ...(card.every ? { every: card.every.value } : {}) },
    models,
    drawn.seed,
  )
  const read = Object.entries(columns).map(([name, column]) => {
    const before = run.record.readings.columns.find((each) => each.name === name)
    const unit =
      before && !before.unit.startsWith('hh')
        ? before.unit
        : (view.columns.find((each) => each.name === name)?.units.find((each) => !each.startsWith('hh')) ??
          '1')
    const instrument = records[instruments[name] ?? '']
    const digit = Math.max(
      before?.digit ?? 0,
      instrument ? instrument.resolution.value - instrument.resolution.unit.offset : 0,
    )
    return { name, unit, cells: cellsOf(column, unit, digit) }
  })
  const rows = Array.from({ length: Math.max(...read.map(({ cells }) => cells.length)) }, (_, row) => [
    ...read.map(({ cells }) => cells[row] ?? ''),
    row === 0 ? drawn.remark : '',
  ])
  const loaded = read.find(({ name }) => (name === 'load' || name === 'pressure_drop') && instruments[name])
  return {
    ...begun,
    article: Object.keys(card.articles).length > 1 ? article : '',
    by: run.record.by,
    witness: run.record.witness ?? '',
    instruments: Object.fromEntries(
      Object.entries(instruments).filter(
        ([name]) => columns[name] || view.columns.some((each) => each.name === name && each.inside),
      ),
    ),
    given: Object.fromEntries(card.ask.map((name) => [name, givenFor(name, run, state)])),
    ambient: { temperature: `${drawn.warm} °C`, note: drawn.note },
    rig: [{ name: 'detail', value: drawn.rig }],
    fitted: drawn.fits ? [{ id: 'plug', what: drawn.what }] : [],
    zero:
      drawn.zero && loaded
        ? { [loaded.name]: { before: `0 ${loaded.unit}`, after: `0 ${loaded.unit}` } }
        : {},
    columns: [...read.map(({ name, unit }) => ({ name, unit })), { name: 'remark', unit: 'text' }],
    rows,
    deviations: drawn.deviates
      ? [{ from: 'step 1', what: drawn.what, why: drawn.why, agreed: 'pferrand' }]
      : [],
    body: `## Observed\n- ${drawn.body}`,
  }
}
