/** The block of front matter that reads a file as it was found, with the columns of a card where they can be told. */
import type { ColumnField } from '../../methods/method.ts'
import { sameDimension } from '../../quantity/dimension.ts'
import { KINDS } from '../../quantity/kinds.ts'
import { nearest } from '../../quantity/nearest.ts'
import { columnUnit } from '../column-units.ts'
import type { FoundColumn, Survey } from './survey.ts'

export type Matched = { readonly name: string; readonly column: FoundColumn }

/** Letters and digits alone: `P1 [mbar]` and `p1` are alike. */
const plain = (text: string): string =>
  text
    .replace(/[[(].*$/, '')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '_')
    .replace(/^_+|_+$/g, '')

/** A name that formulas can use. */
const ownName = ({ name, number }: FoundColumn): string => {
  const letters = plain(name)
  return /^[a-z]/.test(letters) ? letters : `column_${number}`
}

/** Which column of a method each column of the file may be: by name, else by unit where only one of each can be meant. */
export function matchColumns(columns: readonly FoundColumn[], fields: readonly ColumnField[]): Matched[] {
  const matched = new Map<string, FoundColumn>()
  const left = () => columns.filter((column) => ![...matched.values()].includes(column))
  const open = () => fields.filter(({ name }) => !matched.has(name) && !name.includes('<'))
  const named = (field: ColumnField, column: FoundColumn) =>
    plain(column.name) === field.name || nearest(plain(column.name), [field.name]).length > 0
  for (const field of open()) {
    const [found, second] = left().filter((column) => fits(field, column) && named(field, column))
    if (found && !second) matched.set(field.name, found)
  }
  for (const field of open()) {
    const fitting = left().filter((column) => fits(field, column))
    const rivals = open().filter((other) => fitting.some((column) => fits(other, column)))
    const [found] = fitting
    if (found && fitting.length === 1 && (rivals.length === 1 || field.required))
      matched.set(field.name, found)
  }
  return fields.flatMap(({ name }) => {
    const column = matched.get(name)
    return column ? [{ name, column }] : []
  })
}

function fits(field: ColumnField, { kind, unit }: FoundColumn): boolean {
  const kinds = [field.kind, ...(field.or ?? [])]
  if (kind === 'time') return kinds.includes('time')
  if (kind === 'words') return kinds.includes('text')
  if (kind === 'empty') return false
  const read = unit === '' ? null : columnUnit(unit)
  return read?.ok === true && kinds.some((each) => sameDimension(KINDS[each].dim, read.value.dim))
}

const quoted = (text: string): string =>
  /^[A-Za-z][\w.-]*$/.test(text) ? text : `"${text.replaceAll('\\', '\\\\').replaceAll('"', '\\"')}"`

export const DELIMITERS: Readonly<Record<Survey['delimiter'], string>> = {
  ',': '","',
  ';': '";"',
  '\t': 'tab',
  '|': '"|"',
  ' ': 'blanks',
}

/** Columns of the file and of the card that nothing ties together, one sentence each. */
export function unmatched(found: Survey, fields: readonly ColumnField[]): string[] {
  const used = matchColumns(found.columns, fields)
  const ofFile = found.columns.filter(
    ({ kind, number }) => kind !== 'empty' && !used.some(({ column }) => column.number === number),
  )
  const ofCard = fields.filter(({ name }) => !used.some((each) => each.name === name))
  if (ofFile.length === 0) return []
  return [
    `Not used: ${ofFile.map(({ from }) => from).join(', ')}.`,
    ...(ofCard.length > 0
      ? [`The card may have, beside: ${ofCard.map(({ name }) => name).join(', ')}.`]
      : []),
  ]
}

/** Lines to paste; `…` stands where a person has to say something, and `check` refuses it by name. */
export function frontMatter(file: string, found: Survey, fields: readonly ColumnField[] | null): string {
  const used = fields
    ? matchColumns(found.columns, fields)
    : found.columns
        .filter(({ kind }) => kind !== 'empty')
        .map((column) => ({ name: column.kind === 'time' ? 'time' : ownName(column), column }))
  const required = (fields ?? []).filter(
    ({ name, required, from }) => required && !from && !used.some((each) => each.name === name),
  )
  const lines = used.map(
    ({ name, column }) => `    ${name}: {from: ${quoted(column.from)}, ${howRead(column)}}`,
  )
  const open = required.map(({ name }) => `    ${name}: {from: …, unit: …}`)
  const marks = [...new Set(used.flatMap(({ column }) => column.marks))].filter(
    (mark) => !['-', 'n/a'].includes(mark),
  )
  return [
    'readings:',
    `  file: ${file}`,
    '  columns:',
    ...lines,
    ...open,
    `  decimal: ${found.decimal ? `"${found.decimal}"` : '…'}`,
    `  delimiter: ${DELIMITERS[found.delimiter]}`,
    `  skip: ${found.skip}`,
    ...(marks.length > 0 ? [`  missing: [${marks.map((mark) => `"${mark}"`).join(', ')}]`] : []),
    '',
  ].join('\n')
}

function howRead({ kind, unit, formats }: FoundColumn): string {
  const [format, other] = formats
  if (kind === 'time') return `format: ${format === undefined || other !== undefined ? '…' : `"${format}"`}`
  return `unit: ${kind === 'words' ? 'text' : unit === '' ? '…' : quoted(unit)}`
}
