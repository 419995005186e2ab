/** Says of a cell what is wrong with it, and what to write. */
import { columnUnit } from '../column-units.ts'
import { hasComma, hasPoint, isGrouped, isNumberLike, isTimeLike } from './cell-kinds.ts'
import type { ColumnPlan } from './plan.ts'
import type { Decimal, LoggerFault } from './types.ts'

type Said = Pick<LoggerFault, 'code' | 'message' | 'why' | 'hint'>

/** From here on a number is the mark of an overloaded input or of none (SCPI-1999, 7.2.1: 9.9E37 and 9.91E37; from memory). */
export const OVERLOAD = 9e36

const listed = (cell: string) => `list it: \`missing: [${/^[\w+.-]+$/.test(cell) ? cell : `"${cell}"`}]\``

/** `name` is what the file calls the column; `more` cells of it are as bad. */
export function badCell(
  plan: ColumnPlan,
  cell: string,
  decimal: Decimal,
  name: string | undefined,
  more: number,
): Said {
  const others = more > 0 ? `, and ${more} more of this column` : ''
  const column = `the column \`${plan.name}\``
  if (cell.includes('\0')) {
    return {
      code: 'readings/not-text',
      message: `${column} holds zero bytes here, which are no text${others}`,
      hint: 'copy the file from the logger once more; where it was cut off, end before it: `use: {to: line …}`',
    }
  }
  if (cell === '') {
    return {
      code: 'readings/empty-cell',
      message: `a cell of ${column} is empty${others}`,
      hint: 'where that means a missing value, list it: `missing: [""]`',
    }
  }
  if (cell === name) {
    return {
      code: 'readings/names-again',
      message: `the line of names stands here once more`,
      why: 'a logger that was started again begins a new log; its times may begin anew as well',
      hint: 'take one of the logs: `use: {to: line …}`, or from behind this line on',
    }
  }
  return plan.kind === 'time' ? badTime(plan.written, cell, others) : badNumber(column, cell, decimal, others)
}

function badTime(written: string, cell: string, others: string): Said {
  const message = `\`${cell}\` is no time written \`${written}\`${others}`
  const code = 'readings/not-a-time'
  if (/^\d{5}([.,]\d+)?$/.test(cell)) {
    const why = 'this looks like the day number of a spreadsheet, which has lost fractions of a second'
    return { code, message, why, hint: 'export the time as text, as in `2026-03-04 09:12:00`' }
  }
  if (isTimeLike(cell)) return { code, message, hint: 'write `format: …` as the file has it' }
  return {
    code,
    message,
    hint: `write the format as the file has it, or, where there is no time, ${listed(cell)}`,
  }
}

function badNumber(column: string, cell: string, decimal: Decimal, others: string): Said {
  if (Math.abs(Number(cell.replace(',', '.'))) >= OVERLOAD) {
    return {
      code: 'readings/overload',
      message: `\`${cell}\` in ${column} is the mark of an overloaded input${others}`,
      hint: listed(cell),
    }
  }
  if (isGrouped(cell) && !(decimal === '.' ? hasPoint(cell) : hasComma(cell))) {
    const message = `\`${cell}\` in ${column} has separators between its figures${others}`
    const other = decimal === '.' ? ',' : '.'
    const single = isNumberLike(cell) && cell.includes(other)
    const hint = `export the file without them${single ? `; if it is the decimal sign, write \`decimal: "${other}"\`` : ''}`
    return { code: 'readings/thousands', message, hint }
  }
  if (isNumberLike(cell)) {
    const [has, is] = decimal === '.' ? ['comma', 'point'] : ['point', 'comma']
    const message = `\`${cell}\` in ${column} has a ${has}, and the decimal sign is the ${is}${others}`
    const hint = `write \`decimal: "${decimal === '.' ? ',' : '.'}"\` where all the file is so`
    return { code: 'readings/decimal-comma', message, hint }
  }
  const message = `\`${cell}\` in ${column} is no number${others}`
  const unit = /^[+-]?[\d.,]+\s*([^\d\s.,].*)$/.exec(cell)?.[1]
  if (unit !== undefined && columnUnit(unit).ok) {
    const hint = 'export the file without units in its cells; a unit stands once, under `unit`'
    return { code: 'readings/not-a-number', message, hint }
  }
  return {
    code: 'readings/not-a-number',
    message,
    hint: `where it stands for a missing value, ${listed(cell)}`,
  }
}
