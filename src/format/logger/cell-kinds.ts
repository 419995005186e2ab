/** What a cell looks like, before anything is known of its column: for finding out how a file is written. */
import { columnUnit } from '../column-units.ts'

const POINT = /^[+−-]?\d*\.\d+(?:[eE][+-]?\d+)?$/
const COMMA = /^[+−-]?\d*,\d+(?:[eE][+-]?\d+)?$/
const WHOLE = /^[+−-]?\d+[.,]?(?:[eE][+-]?\d+)?$/
/** Figures in groups, with whatever sign between them. */
const GROUPED = /^[+−-]?\d{1,3}(?:[ '’_.,\u00a0\u202f]\d{3})+(?:[.,]\d*)?$/
/** `1,234` may be a number of four figures, or one and a bit. */
const THREE_BEHIND = /^[+−-]?[1-9]\d{0,2},\d{3}$/
const TIME = /^\d{1,4}[-:./][\dA-Za-z]{1,4}[-:./]?[\d:./,TZ +-]*(?:[ \u202f]?[AaPp]\.?[Mm]\.?)?$/
/** Marks of loggers and meters for no value or too large a one; common practice, no source. */
const MARK = /^(?:|[-*#]+|n\/?a\.?|nan|null|none|inf|[+-]?ol|[+-]?over.*|under.*|err.*|open|#.*)$/i
const UNIT_WORD = /^(?:text|hh:mm(?::ss)?)$/
const TIME_PATTERN = /^(?=.*[Hh].*m)[YMDHhmsSAT ./:,-]+$/

export const hasPoint = (cell: string): boolean => POINT.test(cell)
export const hasComma = (cell: string): boolean => COMMA.test(cell)
export const isGrouped = (cell: string): boolean => GROUPED.test(cell)
export const isThreeBehindComma = (cell: string): boolean => THREE_BEHIND.test(cell)
export const isNumberLike = (cell: string): boolean => WHOLE.test(cell) || hasPoint(cell) || hasComma(cell)
export const isTimeLike = (cell: string): boolean => TIME.test(cell) && !isNumberLike(cell)
export const isMark = (cell: string): boolean => MARK.test(cell)

/** A number, a time, or the mark of a missing one. */
export const isValueLike = (cell: string): boolean =>
  isNumberLike(cell) || isGrouped(cell) || TIME.test(cell) || isMark(cell)

/** `[mbar]` and `(mbar)` are `mbar`. */
export const bareUnit = (cell: string): string => /^[[(](.*)[\])]$/.exec(cell)?.[1]?.trim() ?? cell

/** Something that can stand in a line of units and nowhere else. */
const isUnit = (cell: string): boolean => {
  const bare = bareUnit(cell)
  if (bare === '' || bare === '1' || /^\d/.test(bare)) return false
  return UNIT_WORD.test(bare) || TIME_PATTERN.test(bare) || columnUnit(bare).ok
}

/** No value in it, a unit in it. A pure number has the unit `1`, which is one only beside others. */
export const isUnitsRow = (cells: readonly string[]): boolean =>
  cells.some(isUnit) &&
  cells.every((cell) => cell === '1' || isUnit(cell) || !isValueLike(cell) || cell === '')
