/** Numbers in cells: strict, because a cell that is nearly a number is a mistake and not a value. */
import { parseUnit } from '../quantity/unit-text.ts'
import type { CellFault } from './table.ts'

const NUMBER = /^[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?$/

/** The value of a cell, or NaN where it is no number. A typographic minus counts as a minus. */
export function cellNumber(cell: string): number {
  const text = cell.charCodeAt(0) === 0x2212 ? `-${cell.slice(1)}` : cell
  if (!NUMBER.test(text)) return Number.NaN
  const value = Number(text)
  return Number.isFinite(value) ? value : Number.NaN
}

/** Power of ten of the last digit written: `27.50` gives −2, `3e2` gives 2. */
export function writtenDigit(cell: string): number {
  const exponent = cell.search(/[eE]/)
  const mantissa = exponent < 0 ? cell : cell.slice(0, exponent)
  const point = mantissa.indexOf('.')
  const decimals = point < 0 ? 0 : mantissa.length - point - 1
  return (exponent < 0 ? 0 : Number(cell.slice(exponent + 1))) - decimals
}

/** Says what a cell is that is no number; `more` cells of the same column are none either. */
export function notNumber(cell: string, name: string, row: number, column: number, more: number): CellFault {
  const others = more > 0 ? `, and ${more} more of this column` : ''
  if (/^[+-−]?\d+,\d+$/.test(cell)) {
    const message = `\`${cell}\` has a decimal comma${others}`
    return {
      code: 'readings/decimal-comma',
      message,
      row,
      column,
      hint: `write \`${cell.replace(',', '.')}\``,
    }
  }
  const message = `\`${cell}\` in the column \`${name}\` is no number${others}`
  const unit = /^([+-]?[\d.]+)([^\d\s.]+)$/.exec(cell)
  const hint =
    unit && parseUnit(unit[2] ?? '').ok
      ? `write \`${unit[1]}\`: the unit stands once, below the name of the column`
      : `write a number, \`-\` where there is none, or list the word: \`missing: [${cell}]\``
  return { code: 'readings/not-a-number', message, row, column, hint }
}
