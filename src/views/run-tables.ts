/** The tables of a run: all results, what was given, instruments on the day, readings with their digits as read. */
import type { InstrumentUse, Run } from '../campaign/types.ts'
import { cellAt } from '../format/cells.ts'
import type { GivenText } from '../format/types.ts'
import type { Field } from '../methods/method.ts'
import { formatNumber, formatQuantity, printed } from '../quantity/display.ts'
import { expanded } from '../quantity/quantity.ts'
import { besideRecord } from './files.ts'
import { small, table, text } from './page.ts'
import { differenceText, dofText, resultText, unitText } from './show.ts'
import type { Site } from './site.ts'
import type { Block, Rich } from './view.ts'
import { dateWords, nameWords, plural } from './words.ts'

const MOST_READINGS = 240

const meaningOf = (fields: readonly Field[] | undefined, name: string): string =>
  fields?.find((field) => field.name === name)?.meaning ?? ''

export const measureRows = (run: Run): Rich[][] => {
  const { computed } = run
  if (!computed) return []
  const derived = new Set(Object.keys(computed.derived))
  return Object.entries({ ...computed.measures, ...computed.derived }).flatMap(([name, quantity]) => {
    const unit = run.units[name]
    if (!unit) return []
    const wide = expanded(quantity)
    const shown = formatQuantity(quantity, unit)
    const meaning = derived.has(name)
      ? `of the card: ${run.card.derive[name] ?? ''}`
      : meaningOf(computed.schema.measures, name)
    const value = printed(
      shown.unit === '1' || shown.unit === '' ? shown.value : `${shown.value} ${shown.unit}`,
    )
    const U = wide === null ? 'not known' : wide.U === 0 ? 'exact' : differenceText(wide.U, unit)
    const exact = wide === null || wide.U === 0
    return [
      [
        [nameWords(name)],
        [meaning],
        [value],
        [U],
        exact ? [] : [formatNumber(wide.k, 3)],
        exact ? [] : [dofText(wide.dof)],
      ],
    ]
  })
}

const writtenGiven = (given: GivenText, site: Site): { value: Rich; more: Rich } => {
  if (given.form === 'word') return { value: [given.word], more: [] }
  if (given.form === 'result')
    return { value: [], more: [`${nameWords(given.measure)} of `, site.link(given.from)] }
  return { value: [given.stated.text], more: given.with ? ['read with ', site.link(given.with)] : [] }
}

export const givenRows = (run: Run, site: Site): Rich[][] => {
  const { card, record, computed } = run
  const places: readonly (readonly [string, Readonly<Record<string, GivenText>>])[] = [
    ['the run', record.given],
    ['the card, for this article', card.articles[run.article] ?? {}],
    ['the card', card.given],
  ]
  const names = [...new Set(places.flatMap(([, givens]) => Object.keys(givens)))].sort()
  return names.map((name) => {
    const [place, givens] = places.find(([, each]) => each[name]) ?? ['', {}]
    const given = givens[name]
    const written = given ? writtenGiven(given, site) : { value: [], more: [] }
    const input = computed?.inputs[name]
    const unit = run.units[name]
    const value = written.value.length === 0 && input && unit ? [resultText(input, unit)] : written.value
    return [
      [nameWords(name)],
      [meaningOf(computed?.schema.givens, name)],
      value,
      [place, ...(written.more.length > 0 ? [', ', ...written.more] : [])],
    ]
  })
}

const stateOfCalibration = (use: InstrumentUse): string => {
  if (use.calibration === null) return 'no calibration before the day'
  return use.inForce ? 'in force' : 'lapsed'
}

export const instrumentRows = (run: Run, site: Site): Rich[][] =>
  run.instruments.map((use) => [
    [nameWords(use.column)],
    [site.link(use.instrument.id), ' ', small(use.instrument.title)],
    [use.instrument.serial],
    [use.calibration ? dateWords(use.calibration) : 'none'],
    [use.due ? dateWords(use.due) : ''],
    [use.inForce ? stateOfCalibration(use) : { is: 'strong', text: stateOfCalibration(use) }],
  ])

/** The readings exactly as they were written; of a long logger file only the beginning, with the file itself. */
export const readingsBlocks = (run: Run): { blocks: Block[]; files: string[] } => {
  const { readings, zero, source } = run.record
  const file = readings.file && !run.gone ? besideRecord(source.path, readings.file) : null
  const shown = Math.min(readings.rows, MOST_READINGS)
  const columns = readings.columns.map((column) => {
    const unit = column.text || column.unit === '1' ? '' : `, ${unitText(column.unit)}`
    const instrument = run.record.instruments[column.name]
    return `${column.text ? '' : '#'}${nameWords(column.name)}${unit}${instrument ? ` (${instrument})` : ''}`
  })
  const rows = Array.from({ length: shown }, (_, row) => [
    [String(row + 1)],
    ...readings.columns.map((column) => [cellAt(column, row)].filter((each) => each !== '')),
  ])
  const zeros = Object.entries(zero).map(([name, { before, after }]) => [
    [nameWords(name)],
    [before.text],
    [after.text],
  ])
  const blocks: Block[] = [
    ...(file
      ? [
          text(
            'Logger file: ',
            { is: 'link', text: readings.file ?? file, to: `files/${file}` },
            `, ${plural(readings.rows, 'row')}${shown < readings.rows ? `; the first ${shown} are shown` : ''}.`,
          ),
        ]
      : []),
    ...table('Readings', ['#row', ...columns], rows, { narrow: 'scroll' }),
    ...(file === null && shown < readings.rows
      ? [
          text(
            `Of ${plural(readings.rows, 'row')} the first ${shown} are shown; the others stand in the record itself.`,
          ),
        ]
      : []),
    ...table('Unloaded channels before and after', ['column', '#before', '#after'], zeros, { titled: true }),
  ]
  return { blocks, files: file ? [file] : [] }
}
