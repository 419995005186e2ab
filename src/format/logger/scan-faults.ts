/** Faults as a scan meets them: one a column and kind, with how many more there are of it. */
import { badCell } from './bad-cell.ts'
import type { ColumnPlan } from './plan.ts'
import { type Cursor, cellText, cursorAt, nextRecord } from './record.ts'
import type { Scan } from './scan.ts'
import type { Dialect, LoggerFault } from './types.ts'

export function faultsOf({ text, columns, names, dialect }: Scan) {
  const bad = new Map<number, { start: number; end: number; cell: string; more: number }>()
  const ragged = new Map<string, { at: LoggerFault['at']; has: number; more: number }>()
  const quotes: LoggerFault[] = []
  const quoteFault = (message: string, offset: number, hint: string) =>
    quotes.push({
      code: 'readings/quote',
      message,
      at: { in: 'data', start: offset, end: offset + 1 },
      hint,
    })
  let short = false
  const lastIsWords = columns.some((plan) => plan.kind === 'words' && plan.at === names.length - 1)
  return {
    stopped: () => quotes.length > 0,
    short: () => short,
    /** As many cells as names; empty ones more, and a last one of words less, are allowed. */
    fits(cursor: Cursor): boolean {
      const { count, spans, start } = cursor
      if (cursor.open >= 0) {
        quoteFault('this quote is never closed', cursor.open, 'delete it, or close it behind the cell')
        return false
      }
      if (cursor.behind >= 0) {
        quoteFault(
          'a cell goes on behind its closing quote',
          cursor.behind,
          'write `""` for a quote inside a cell',
        )
        return false
      }
      if (count === names.length) return true
      if (lastIsWords && count === names.length - 1) {
        short = true
        return true
      }
      let filled = count
      while (filled > names.length && spans[2 * filled - 2] === spans[2 * filled - 1]) filled--
      if (filled === names.length) return true
      const code = count > names.length ? 'readings/row-too-long' : 'readings/row-too-short'
      const known = ragged.get(code)
      const end = spans[2 * count - 1] ?? start + 1
      const from = count > names.length ? (spans[2 * names.length] ?? start) : start
      if (known) known.more++
      else
        ragged.set(code, {
          at: { in: 'data', start: from, end: Math.max(end, from + 1) },
          has: count,
          more: 0,
        })
      return false
    },
    bad(column: number, start: number, end: number, cell: string): void {
      const known = bad.get(column)
      if (known) known.more++
      else bad.set(column, { start, end, cell, more: 0 })
    },
    all: (): LoggerFault[] => {
      const cells = [...bad].map(([column, { start, end, cell, more }]): LoggerFault => {
        const plan = columns[column] as ColumnPlan
        const at = { in: 'data', start, end: Math.max(end, start + 1) } as const
        return { ...badCell(plan, cell, dialect.decimal, names[plan.at], more), at }
      })
      const rows = [...ragged].map(([code, row]) => raggedFault(code, row, names.length, dialect))
      return [...quotes, ...rows, ...onceAFile(cells)].map((fault) => withLine(fault, text))
    },
  }
}

/** A time that is earlier than one above it. */
export function backFault(
  { text, columns, dialect }: Pick<Scan, 'text' | 'columns' | 'dialect'>,
  column: number,
  offset: number,
): LoggerFault {
  const { name, at = 0 } = columns[column] ?? {}
  const cursor = cursorAt(offset)
  nextRecord(text, cursor, dialect.delimiter)
  const [start = offset, end = offset] = cursor.spans.slice(2 * at, 2 * at + 2)
  return {
    code: 'readings/time-backwards',
    message: `\`${cellText(text, start, end)}\` in the column \`${name}\` is earlier than the time above it`,
    at: { in: 'data', start, end },
    why: 'rows keep their order and are never sorted; only a clock without a date may pass midnight',
    hint: `cut the log where its clock was set: \`use: {from: line ${lineOf(text, start)}}\`, or end before it`,
  }
}

/** What is wrong with the file and not with a column is said at the first column only. */
function onceAFile(faults: readonly LoggerFault[]): LoggerFault[] {
  const ofTheFile = ['readings/names-again', 'readings/decimal-comma', 'readings/not-text']
  return faults.filter(
    ({ code }, index) =>
      !ofTheFile.includes(code) || faults.findIndex((other) => other.code === code) === index,
  )
}

/** Where a log is to end before a fault, the line is said. */
function withLine(fault: LoggerFault, text: string): LoggerFault {
  if (fault.at.in === 'run' || !fault.hint?.includes('line …')) return fault
  return { ...fault, hint: fault.hint.replace('line …', `line ${lineOf(text, fault.at.start) - 1}`) }
}

function raggedFault(
  code: string,
  { at, has, more }: { at: LoggerFault['at']; has: number; more: number },
  width: number,
  { delimiter, decimal }: Dialect,
): LoggerFault {
  const others = more > 0 ? `, and so have ${more} more lines` : ''
  const message = `this line has ${has} ${has === 1 ? 'cell' : 'cells'} for ${width} columns${others}`
  const comma = has > width && delimiter === ',' && decimal === '.'
  const hint = comma
    ? 'a comma may be delimiter or decimal sign, not both: export the file with `;`'
    : 'where the log was broken off here, end before this line: `use: {to: line …}`'
  return { code, message, at, hint }
}

/** Line of an offset, from 1. */
export function lineOf(text: string, offset: number): number {
  let line = 1
  for (let at = text.indexOf('\n'); at >= 0 && at < offset; at = text.indexOf('\n', at + 1)) line++
  return line
}
