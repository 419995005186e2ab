/** Lines taken apart into cells: by blanks and tabs in a readings table, by commas in a CSV file. */

/**
 * Spans of the cells of a line as a flat list `start, end, start, end …`. At most `limit` cells: the last takes
 * the rest of the line with its blanks.
 */
export function blankCells(line: string, limit: number): number[] {
  const spans: number[] = []
  const end = line.trimEnd().length
  let at = 0
  while (at < end) {
    while (at < end && isBlank(line.charCodeAt(at))) at++
    const start = at
    if (spans.length / 2 === limit - 1) at = end
    else while (at < end && !isBlank(line.charCodeAt(at))) at++
    spans.push(start, at)
  }
  return spans
}

const isBlank = (code: number) => code === 32 || code === 9 || code === 0xa0

/** The same for a line of a CSV file; a cell in double quotes may hold commas, and `""` for a quote. */
export function commaCells(line: string): number[] {
  const spans: number[] = []
  let start = 0
  let quoted = false
  for (let at = 0; at <= line.length; at++) {
    if (line[at] === '"') quoted = !quoted
    if (at < line.length && (quoted || line[at] !== ',')) continue
    const cell = line.slice(start, at)
    const lead = cell.length - cell.trimStart().length
    spans.push(
      start + (cell.trim() === '' ? 0 : lead),
      cell.trim() === '' ? start : start + cell.trimEnd().length,
    )
    start = at + 1
  }
  return spans
}

/** The texts of a line's cells; quotes of a CSV cell are taken off. */
export function cellTexts(line: string, spans: readonly number[]): string[] {
  const cells: string[] = []
  for (let at = 0; at < spans.length; at += 2) cells.push(line.slice(spans[at], spans[at + 1]))
  return cells
}

export const unquoted = (cell: string) =>
  /^".*"$/.test(cell) ? cell.slice(1, -1).replaceAll('""', '"') : cell
