/** Which column of the file becomes which column of the readings, and how its cells are read. */
import { differenceToSI } from '../../quantity/convert.ts'
import { aKind, sameDimension } from '../../quantity/dimension.ts'
import { KINDS } from '../../quantity/kinds.ts'
import { nearest } from '../../quantity/nearest.ts'
import type { Dimension } from '../../quantity/types.ts'
import { type ColumnUnit, columnUnit } from '../column-units.ts'
import { bareUnit, isNumberLike } from './cell-kinds.ts'
import type { Layout } from './head.ts'
import { type TimeFormat, timeFormat } from './time-format.ts'
import type { LoggerColumn, LoggerFault, LoggerOptions, LoggerPlace } from './types.ts'

type Named = {
  readonly name: string
  /** Column of the file, from 0. */
  readonly at: number
  /** As it stands in the readings: a unit, `text`, `hh:mm`, `hh:mm:ss`. */
  readonly unit: string
  readonly dim: Dimension
}

export type ColumnPlan = Named &
  (
    | { readonly kind: 'words' }
    | { readonly kind: 'time'; readonly format: TimeFormat; readonly written: string }
    | {
        readonly kind: 'number'
        readonly toSI: (value: number) => number
        readonly scale: number
        /** SI. */
        readonly offset: number
        /** SI of one unit in the file's last digit of power 0. */
        readonly digit: number
      }
  )

export type Planned = {
  readonly columns: readonly ColumnPlan[]
  readonly faults: readonly LoggerFault[]
  readonly warnings: readonly LoggerFault[]
}

const CLOCKS: Readonly<Record<string, string>> = { 'hh:mm': 'HH:mm', 'hh:mm:ss': 'HH:mm:ss' }

const atField = (name: string, field?: keyof LoggerColumn): LoggerPlace =>
  field
    ? { in: 'run', path: ['columns', name, field], part: 'value' }
    : { in: 'run', path: ['columns', name], part: 'key' }

/** The columns that the run names. `layout` says what names and units the file has. */
export function planColumns(
  columns: NonNullable<LoggerOptions['columns']>,
  layout: Layout,
  width: number,
): Planned {
  const faults: LoggerFault[] = []
  const warnings: LoggerFault[] = []
  const planned: ColumnPlan[] = []
  for (const [name, column] of Object.entries(columns)) {
    const at = columnAt(name, column.from, layout.names?.cells ?? [], width)
    if (typeof at !== 'number') {
      faults.push(at)
      continue
    }
    const said = bareUnit(layout.units?.cells[at] ?? '')
    const read = columnPlan(name, at, column, said, unitInName(layout.names?.cells[at] ?? ''))
    if ('code' in read) faults.push(read)
    else planned.push(read)
    const differs = unitDiffers(name, column, said)
    if (differs) warnings.push(differs)
  }
  return { columns: planned, faults, warnings }
}

/** A name that stands in the file goes before a number. */
function columnAt(name: string, from: string, names: readonly string[], width: number): number | LoggerFault {
  const at = atField(name, 'from')
  const found = names.indexOf(from)
  if (found >= 0 && names.indexOf(from, found + 1) < 0) return found
  const code = 'readings/file-column'
  if (found >= 0) {
    const second = names.indexOf(from, found + 1)
    const message = `the file has two columns \`${from}\``
    return {
      code,
      message,
      at,
      hint: `write the number of the one: \`from: ${found + 1}\` or \`from: ${second + 1}\``,
    }
  }
  const number = /^[1-9]\d{0,4}$/.test(from) ? Number(from) : 0
  if (number > 0 && number <= width) return number - 1
  const message =
    number > 0 ? `the file has ${width} columns, not ${number}` : `the file has no column \`${from}\``
  const near = nearest(from, names)
  const [likely] = near
  const hint = likely
    ? `\`${likely}\` is close`
    : names.length === 0
      ? 'where the file has no line of names, write the number of the column: `from: 1`'
      : 'write the name as it stands in the file; `skip: …` says how many lines stand above the names'
  const expected = near.length > 0 ? near : names.filter((other) => other !== '')
  return { code, message, at, hint, ...(expected.length > 0 ? { expected } : {}) }
}

function columnPlan(
  name: string,
  at: number,
  column: LoggerColumn,
  said: string,
  inName: string,
): ColumnPlan | LoggerFault {
  if (column.format !== undefined)
    return timePlan(name, at, column.format, 'hh:mm:ss', atField(name, 'format'))
  const unit = column.unit ?? said
  const clock = CLOCKS[unit]
  if (clock !== undefined) return timePlan(name, at, clock, unit, atField(name, 'unit'))
  if (unit === 'text') return { name, at, unit, dim: KINDS.text.dim, kind: 'words' }
  if (unit === '') {
    const message = `nothing says which unit \`${name}\` has in the file`
    const hint = inName
      ? `write \`unit: ${inName}\`, as its name says`
      : 'write `unit: …`; `text` for words, `format: …` for a time'
    return { code: 'readings/column-unit', message, at: atField(name), hint }
  }
  const read = columnUnit(unit)
  if (!read.ok) {
    const [fault] = read.error
    const { code = 'unit/unknown', message = `\`${unit}\` is no unit`, expected, why, hint } = fault ?? {}
    const mend = column.unit === undefined ? `the file says \`${unit}\`; write \`unit: …\`` : hint
    const place = column.unit === undefined ? atField(name) : atField(name, 'unit')
    return { code, message, at: place, expected, why, hint: mend }
  }
  return numberPlan(name, at, unit, read.value, column)
}

function numberPlan(
  name: string,
  at: number,
  unit: string,
  read: ColumnUnit,
  { scale = 1, offset }: LoggerColumn,
): ColumnPlan | LoggerFault {
  if (offset && !sameDimension(offset.unit.dim, read.dim)) {
    const message = `the offset of \`${name}\` is not ${aKind(read.dim)}`
    return { code: 'unit/wrong-dimension', message, at: atField(name, 'offset'), hint: `give it in ${unit}` }
  }
  if (offset && offset.unit.offset !== 0) {
    const message = `the offset of \`${name}\` is a difference of temperatures`
    return { code: 'unit/temperature', message, at: atField(name, 'offset'), hint: 'give it in K' }
  }
  const { dim, toSI } = read
  const digit = Math.abs(scale) * differenceToSI(1, read)
  return { name, at, unit, dim, kind: 'number', toSI, scale, offset: offset?.value ?? 0, digit }
}

function timePlan(
  name: string,
  at: number,
  written: string,
  unit: string,
  place: LoggerPlace,
): ColumnPlan | LoggerFault {
  const read = timeFormat(written)
  if (read.ok) return { name, at, unit, dim: KINDS.time.dim, kind: 'time', format: read.value, written }
  const [fault] = read.error
  const { message = 'this is no format of a time', hint } = fault ?? {}
  return { code: 'readings/time-format', message, at: place, hint }
}

/** `P1 [mbar]` and `Temp (°C)` name a unit. */
export function unitInName(cell: string): string {
  const unit = /[[(]([^[\]()]+)[\])]\s*$/.exec(cell)?.[1]?.trim() ?? ''
  return unit !== '' && !isNumberLike(unit) && columnUnit(unit).ok ? unit : ''
}

/** The file and the run may well differ, where the file is wrong; that is then worth a look. */
function unitDiffers(name: string, { unit, scale = 1 }: LoggerColumn, said: string): LoggerFault | null {
  if (unit === undefined || said === '' || scale !== 1) return null
  const [own, files] = [columnUnit(unit), columnUnit(said)]
  if (!own.ok || !files.ok || own.value.factor === files.value.factor) return null
  return {
    code: 'readings/unit-differs',
    severity: 'warning',
    message: `the run reads \`${name}\` in ${unit}, the file says ${said}`,
    at: atField(name, 'unit'),
    hint: `write \`unit: ${said}\`, or in the prose why the file is wrong`,
  }
}
