/** Delimiter and decimal sign, found by looking. What can be read in two ways is not guessed. */
import { hasComma, hasPoint, isNumberLike, isThreeBehindComma, isValueLike } from './cell-kinds.ts'
import { commonWidth, type HeadRecord, headRecords, layoutFound } from './head.ts'
import type { Decimal, Delimiter, LoggerFault } from './types.ts'

const CANDIDATES: readonly Delimiter[] = [';', '\t', '|', ',', ' ']

export const DELIMITER_NAMES: Readonly<Record<Delimiter, string>> = {
  ',': 'comma',
  ';': 'semicolon',
  '\t': 'tab',
  '|': 'bar',
  ' ': 'blanks',
}

export type Found<T> = { readonly value: T; readonly why: string } | { readonly fault: LoggerFault }

type Tried = { readonly delimiter: Delimiter; readonly records: HeadRecord[]; readonly score: number }

/** Share of the records that have as many cells as most, times the share of their cells that look like values. */
const scoreOf = (records: readonly HeadRecord[]): number => {
  const width = commonWidth(records)
  if (width < 2) return 0
  const cells = records.filter((record) => record.cells.length === width).flatMap((record) => record.cells)
  return (cells.length / width / records.length) * (cells.filter(isValueLike).length / cells.length)
}

/** `names` are the columns that the run asks for: where a line holds them all, its delimiter is the one. */
export function findDelimiter(text: string, from: number, names: readonly string[]): Found<Delimiter> {
  const tried = CANDIDATES.map((delimiter): Tried => {
    const records = headRecords(text, from, delimiter)
    // Blanks stand in dates and words of every other kind of file: they part cells where nothing else does.
    return { delimiter, records, score: scoreOf(records) * (delimiter === ' ' ? 0.5 : 1) }
  })
  const holding =
    names.length < 2
      ? []
      : tried.filter(({ records }) =>
          records.some(({ cells }) => names.every((name) => cells.includes(name))),
        )
  const best = (holding.length > 0 ? holding : tried).reduce((a, b) => (b.score > a.score ? b : a))
  const width = commonWidth(best.records)
  if (best.score === 0 && holding.length === 0) return { value: ',', why: 'there is one column' }
  if (best.delimiter === ',') {
    const fault = commaFault(best.records, width)
    if (fault) return { fault }
  }
  const many = best.records.filter(({ cells }) => cells.length === width).length
  const why = `it parts ${many} of the first ${best.records.length} lines into ${width} cells`
  return { value: best.delimiter, why }
}

/** Whole numbers on both sides of every comma, below a line of another number of names: `0,1,5`. */
function commaFault(records: readonly HeadRecord[], width: number): LoggerFault | null {
  const { names, from } = layoutFound(records)
  const reading = records.find(({ start }) => start >= from)
  if (!reading || names?.cells.length === width) return null
  const rows = records.filter(({ start, cells }) => start >= from && cells.length === width)
  if (!rows.every(({ cells }) => cells.every((cell) => /^[+−-]?\d+$/.test(cell)))) return null
  return {
    code: 'readings/ambiguous',
    message: 'each comma of this line may part two cells or be a decimal sign',
    at: { in: 'data', start: reading.start, end: reading.spans.at(-1) ?? reading.start + 1 },
    why: 'no line above has as many names as this line would have cells',
    hint: 'say which it is, `delimiter: ","` or `decimal: ","`; where it is both, export the file with `;`',
  }
}

export type Seen = { readonly text: string; readonly start: number; readonly end: number }

/** The cells of columns that are to hold numbers. */
export function numberCells(
  records: readonly HeadRecord[],
  from: number,
  columns: readonly number[],
): Seen[] {
  return records
    .filter(({ start }) => start >= from)
    .flatMap(({ cells, spans }) =>
      columns.flatMap((column) => {
        const [text, start, end] = [cells[column], spans[2 * column], spans[2 * column + 1]]
        return text === undefined || start === undefined || end === undefined ? [] : [{ text, start, end }]
      }),
    )
    .filter(({ text }) => isNumberLike(text))
}

const dataFault = (code: string, message: string, at: Seen, hint: string): { fault: LoggerFault } => ({
  fault: { code, message, at: { in: 'data', start: at.start, end: at.end }, hint },
})

/** A comma before exactly three figures, everywhere, may stand between thousands: that is asked, not guessed. */
export function findDecimal(cells: readonly Seen[]): Found<Decimal> {
  const points = cells.filter(({ text }) => hasPoint(text))
  const commas = cells.filter(({ text }) => hasComma(text))
  const [point] = points
  const [comma] = commas
  if (!comma) return { value: '.', why: point ? `as in \`${point.text}\`` : 'no number has a decimal sign' }
  if (point) {
    const [odd, other] = commas.length < points.length ? [comma, point] : [point, comma]
    const message = `\`${odd.text}\` and \`${other.text}\` have different decimal signs`
    const hint =
      'say which is the decimal sign, `decimal: "."` or `decimal: ","`, and export without the other'
    return dataFault('readings/ambiguous', message, odd, hint)
  }
  if (commas.every(({ text }) => isThreeBehindComma(text))) {
    const message = `\`${comma.text}\` may be ${comma.text.replace(',', '.')} or ${comma.text.replace(',', '')}`
    const hint = 'write `decimal: ","` where the comma is the decimal sign, else export without it'
    return dataFault('readings/ambiguous', message, comma, hint)
  }
  return { value: ',', why: `as in \`${commas.find(({ text }) => !isThreeBehindComma(text))?.text}\`` }
}
