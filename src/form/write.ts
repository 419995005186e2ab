/** The file of a run, from what the form holds; and which control each of its lines comes from. */
import type { Plain } from '../format/types.ts'
import { type GivenEntry, isBlankRow, type RunState } from './state.ts'
import { flowText, isList, scalarText } from './yaml-text.ts'

/** What a line of the file came from: `by`, `instruments.pressure`, `deviations.0`, or a row of the readings. */
export type Origin = { readonly field: string } | { readonly row: number }

export type Written = {
  readonly text: string
  /** One a line of the front matter, in order; what lies below belongs to `body`. */
  readonly origins: readonly Origin[]
}

type Line = { readonly text: string; readonly origin: Origin }

const line = (text: string, field: string): Line => ({ text, origin: { field } })

const single = (name: string, text: string): Line[] =>
  text.trim() === '' ? [] : [line(`${name}: ${scalarText(text.trim())}`, name)]

const listed = (name: string, values: readonly string[]): Line[] =>
  values.length === 0 ? [] : [line(`${name}: ${flowText(values)}`, name)]

/** A field with one entry a line, so that a change of one shows as one. */
const mapped = (name: string, entries: readonly (readonly [string, Plain])[]): Line[] =>
  entries.length === 0
    ? []
    : [
        line(`${name}:`, name),
        ...entries.map(([key, value]) => line(`  ${scalarText(key)}: ${flowText(value)}`, `${name}.${key}`)),
      ]

/** Entries of which nothing is filled are none. */
const itemised = (name: string, entries: readonly Readonly<Record<string, string>>[]): Line[] => {
  const lines = entries.flatMap((entry, index) => {
    const told = filled(entry)
    return Object.keys(told).length === 0 ? [] : [line(`  - ${flowText(told)}`, `${name}.${index}`)]
  })
  return lines.length === 0 ? [] : [line(`${name}:`, name), ...lines]
}

/** Fields that are filled; none where all are empty. */
const filled = (fields: Readonly<Record<string, string>>): Record<string, string> =>
  Object.fromEntries(
    Object.entries(fields).flatMap(([name, text]) => (text.trim() === '' ? [] : [[name, text.trim()]])),
  )

const givenOf = (entry: GivenEntry): Plain => {
  const { from, measure, value, with: instrument } = filled(entry)
  if (from && measure) return { from, measure }
  return instrument ? { value: value ?? '', with: instrument } : (value ?? '')
}

/** Two details of one name, or half of one, stand in the file as they were typed: the reader says what is wrong. */
const rigOf = ({ name, value }: RunState['rig'][number]): (readonly [string, string])[] =>
  name.trim() === '' && value.trim() === '' ? [] : [[name.trim(), value.trim()]]

const isGiven = ({ value, from, measure }: GivenEntry): boolean =>
  value.trim() !== '' || (from !== '' && measure !== '')

/** A blank within a cell would push what stands behind it into the next column. */
const joined = (text: string): string => text.replaceAll(' ', '_')

/** Cells as they stand in the table: what was not read is `-`; only a last column of words may hold blanks, or be empty. */
const cellsOf = (cells: readonly string[], columns: RunState['columns']): string[] =>
  columns.map(({ name, unit }, at) => {
    const cell = (cells[at] ?? '').replace(/\s+/g, ' ').trim()
    const takesBlanks = at === columns.length - 1 && unit === 'text'
    if (cell === '') return takesBlanks && name === 'remark' ? '' : '-'
    return takesBlanks ? cell : joined(cell)
  })

const headOf = (text: string): string => joined(text.replace(/\s+/g, ' ').trim()) || '…'

/** A data file: each of its columns on a line of its own. */
const dataLines = (data: NonNullable<RunState['data']>): Line[] => [
  line('readings:', 'readings'),
  ...Object.entries(data).flatMap(([name, value]): Line[] => {
    if (name !== 'columns' || typeof value === 'string' || isList(value))
      return [line(`  ${scalarText(name)}: ${flowText(value)}`, `readings.${name}`)]
    const columns = Object.entries(value)
    return [
      line(columns.length === 0 ? '  columns: {}' : '  columns:', 'readings.columns'),
      ...columns.map(([column, how]) =>
        line(`    ${scalarText(column)}: ${flowText(how)}`, `readings.columns.${column}`),
      ),
    ]
  }),
]

const readingLines = ({ columns, rows, data }: RunState): Line[] => {
  if (data) return dataLines(data)
  const table = [
    { origin: { field: 'columns' }, cells: columns.map((column) => headOf(column.name)) },
    { origin: { field: 'units' }, cells: columns.map((column) => headOf(column.unit)) },
    ...rows.flatMap((row, index) =>
      isBlankRow(row) ? [] : [{ origin: { row: index }, cells: cellsOf(row, columns) }],
    ),
  ]
  const widths = columns.map((_, at) => Math.max(...table.map(({ cells }) => cells[at]?.length ?? 0)))
  return [
    line('readings: |', 'readings'),
    ...table.map(({ origin, cells }) => ({
      text: `  ${cells.map((cell, at) => cell.padEnd(widths[at] ?? 0)).join('  ')}`.trimEnd(),
      origin,
    })),
  ]
}

const linesOf = (state: RunState): Line[] => [
  ...single('card', state.card),
  ...single('article', state.article),
  ...single('when', state.when),
  line(`by: ${flowText(state.by)}`, 'by'),
  ...(state.witness === '' ? [] : listed('witness', [state.witness])),
  ...mapped('instruments', Object.entries(filled(state.instruments))),
  ...mapped(
    'given',
    Object.entries(state.given).flatMap(([name, entry]) =>
      isGiven(entry) ? [[name, givenOf(entry)] as const] : [],
    ),
  ),
  ...mapped('rig', state.rig.flatMap(rigOf)),
  ...mapped('ambient', Object.entries(filled(state.ambient))),
  ...itemised('fitted', state.fitted),
  ...listed('removed', state.removed),
  ...mapped(
    'zero',
    Object.entries(state.zero).flatMap(([name, checks]) => {
      const known = filled(checks)
      return Object.keys(known).length === 0 ? [] : [[name, known] as const]
    }),
  ),
  ...(state.data ? [] : listed('missing', state.missing)),
  ...readingLines(state),
  ...itemised('deviations', state.deviations),
  ...(state.stopped === null ? [] : [line(`stopped: ${scalarText(state.stopped.trim())}`, 'stopped')]),
  ...itemised('files', state.files),
  ...single('card-revision', state.revision),
  ...Object.entries(state.kept).map(([name, value]) => line(`${scalarText(name)}: ${flowText(value)}`, name)),
]

/** The whole file, as a technician would write it by hand. */
export const writeRun = (state: RunState): Written => {
  const lines = linesOf(state)
  const body = state.body.replaceAll('\r\n', '\n').trim()
  const text = ['---', ...lines.map((each) => each.text), '---', ...(body === '' ? [] : [body]), ''].join(
    '\n',
  )
  return { text, origins: [{ field: 'file' }, ...lines.map((each) => each.origin), { field: 'body' }] }
}

export const runText = (state: RunState): string => writeRun(state).text
