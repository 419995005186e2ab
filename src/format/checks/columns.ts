/** The columns of a run against the schema of its card. */
import type { ColumnField, Schema } from '../../methods/method.ts'
import { makeProblem } from '../../problems/make.ts'
import type { Place, Problem } from '../../problems/types.ts'
import { KINDS } from '../../quantity/kinds.ts'
import { nearest } from '../../quantity/nearest.ts'
import type { Unit } from '../../quantity/types.ts'
import { cellAt } from '../cells.ts'
import { columnUnit } from '../column-units.ts'
import { namesOf } from '../kind-units.ts'
import { fieldNamed, kindsOf } from '../schema-fields.ts'
import type { ReadingColumn, Readings, SourceFile } from '../types.ts'
import { rangeProblem, unitProblem } from './quantity.ts'

const CLOCK: Unit = { text: 's', dim: KINDS.time.dim, factor: 1, offset: 0, energy: false }

export function columnProblems(
  readings: Readings,
  schema: Schema,
  method: string,
  source: SourceFile,
): Problem[] {
  const problems: Problem[] = []
  const unknownNames: string[] = []
  for (const [index, column] of readings.columns.entries()) {
    const field = fieldNamed(schema.columns, column.name)
    if (field) problems.push(...columnProblem(column, field, index, method, source).slice(0, 1))
    else if (column.name !== 'remark') {
      unknownNames.push(column.name)
      problems.push(unknownColumn(column.name, schema, method, source.locateCell(-2, index)))
    }
  }
  const has = new Set(readings.columns.map((column) => column.name))
  const explained = (name: string) => unknownNames.some((other) => nearest(other, [name]).length > 0)
  for (const field of schema.columns) {
    if (
      !field.required ||
      field.from ||
      has.has(field.name) ||
      field.name.includes('<') ||
      explained(field.name)
    )
      continue
    const message = `the method ${method} needs the column \`${field.name}\``
    problems.push(missingColumn(message, field.meaning, method, source))
  }
  for (const { sets, say } of schema.alternatives ?? []) {
    if (sets.some((set) => set.every((name) => has.has(name) || explained(name)))) continue
    problems.push(
      missingColumn(say, `one of ${sets.map((set) => set.join(' and ')).join('; ')}`, method, source),
    )
  }
  return problems
}

function columnProblem(
  column: ReadingColumn,
  field: ColumnField,
  index: number,
  method: string,
  source: SourceFile,
): Problem[] {
  const name = `the column \`${column.name}\``
  const see = `handbook: ${method}, readings`
  const words = field.kind === 'text' && !field.or
  if (column.text !== words && !(column.text && field.or?.includes('text'))) {
    const message = words ? `${name} holds words` : `${name} holds ${namesOf(kindsOf(field))}, not words`
    const hint = words ? 'write `text` as its unit' : `write its unit, as in \`${KINDS[field.kind].unit}\``
    return [
      makeProblem({
        code: 'readings/wrong-unit',
        message,
        at: source.locateCell(-1, index),
        hint,
        see: [see],
      }),
    ]
  }
  if (column.text) return choiceProblem(column, field, index, source)
  const unit = /^hh:mm/.test(column.unit) ? CLOCK : parsed(column.unit)
  const wanted = { name, kinds: kindsOf(field), meaning: undefined, range: field.range, see }
  const wrong = unit && unitProblem(unit, wanted, () => source.locateCell(-1, index))
  if (wrong) return [wrong]
  if (field.required && column.values.length > 0 && column.missing.every((missing) => missing === 1)) {
    const message = `${name} has no value at all`
    const hint = `the method needs it: ${field.meaning}`
    return [
      makeProblem({
        code: 'readings/all-missing',
        message,
        at: source.locateCell(-2, index),
        hint,
        see: [see],
      }),
    ]
  }
  if (!field.range) return []
  const { low = Number.NEGATIVE_INFINITY, high = Number.POSITIVE_INFINITY } = field.range
  const row = column.values.findIndex((value) => value < low || value > high)
  if (row < 0) return []
  const written = `${cellAt(column, row)} ${column.unit}`
  const outside = rangeProblem(column.values[row] ?? 0, written, wanted, () => source.locateCell(row, index))
  return outside ? [outside] : []
}

function choiceProblem(
  column: ReadingColumn,
  field: ColumnField,
  index: number,
  source: SourceFile,
): Problem[] {
  const { choices } = field
  if (!choices) return []
  const row = column.cells.findIndex((cell, row) => column.missing[row] !== 1 && !choices.includes(cell))
  if (row < 0) return []
  const cell = column.cells[row] ?? ''
  const message = `\`${cell}\` is no word for the column \`${column.name}\``
  const [near] = nearest(cell, choices)
  const at = source.locateCell(row, index)
  return [
    makeProblem({
      code: 'readings/choice',
      message,
      at,
      expected: choices,
      hint: near && `\`${near}\` is close`,
    }),
  ]
}

export function unknownColumn(name: string, schema: Schema, method: string, at: Place): Problem {
  const names = schema.columns.map((column) => column.name)
  const near = nearest(name, names)
  return makeProblem({
    code: 'readings/unknown-column',
    message: `the method ${method} has no column \`${name}\``,
    at,
    actual: name,
    expected: near.length > 0 ? near : names,
    hint: near[0] ? `\`${near[0]}\` is close` : 'words beside the readings belong in a last column `remark`',
    see: [`handbook: ${method}, readings`],
  })
}

function missingColumn(message: string, meaning: string, method: string, source: SourceFile): Problem {
  const at = source.locateCell(-2, -1)
  return makeProblem({
    code: 'readings/missing-column',
    message,
    at,
    why: meaning,
    see: [`handbook: ${method}, readings`],
  })
}

function parsed(text: string): Unit | undefined {
  const unit = columnUnit(text)
  return unit.ok ? unit.value : undefined
}
