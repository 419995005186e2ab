/** From a problem of the file back to the control of the form that it is about. */
import { blankCells } from '../format/cells.ts'
import { readReadings } from '../format/readings.ts'
import { readTable } from '../format/table.ts'
import type { Problem } from '../problems/types.ts'
import type { Finding, Spot } from './finding.ts'
import type { Written } from './write.ts'

/** Which cell of a row a column of text lies in. */
const cellAt = (line: string, column: number, columns: number): number => {
  const spans = blankCells(line, columns)
  for (let at = 0; at < spans.length; at += 2) if (column - 1 < (spans[at + 1] ?? 0)) return at / 2
  return Math.max(0, spans.length / 2 - 1)
}

/** A given or an instrument that is missing is said at the field as a whole; its name stands in the message. */
const named = (field: string, message: string): Spot => {
  const name = /`([a-z][a-z0-9_]*)`/.exec(message)?.[1]
  return name && /^(?:given|instruments|file|columns)$/.test(field) ? `${field}.${name}` : field
}

const AREAS: Readonly<Record<string, string>> = {
  'given/missing': 'given',
  'instrument/missing': 'instruments',
  'run/article': 'article',
}

/**
 * Faults of single cells where a mistake in some other field keeps the whole file from being read: the table is then
 * read alone, by the same reader.
 */
export const cellFindings = (written: Written, columns: number, missing: readonly string[]): Finding[] => {
  const lines = written.text.split('\n')
  const places = written.origins.flatMap((origin, line) =>
    'row' in origin ? [{ row: origin.row, line }] : [],
  )
  const heads = written.origins.flatMap((origin, line) =>
    'field' in origin && (origin.field === 'columns' || origin.field === 'units') ? [line] : [],
  )
  if (heads.length < 2 || places.length === 0) return []
  const table = [...heads, ...places.map(({ line }) => line)].map((line) => lines[line] ?? '').join('\n')
  const read = readReadings(readTable(table), missing)
  if (read.ok) return []
  return read.error.map(({ row, column, code, message, hint = '' }): Finding => {
    const place = places[row]
    const field = row === -1 ? 'units' : 'columns'
    const spot =
      place && column >= 0
        ? `cell.${place.row}.${Math.min(column, columns - 1)}`
        : place
          ? `cell.${place.row}.0`
          : field
    return { spot, severity: 'error', code, message, hint }
  })
}

export const findingsOf = (
  problems: readonly Problem[],
  written: Written,
  path: string,
  columns: number,
): Finding[] => {
  const lines = written.text.split('\n')
  return problems.map((problem): Finding => {
    const { severity, code, message, at } = problem
    const origin =
      at.file === path ? (written.origins[at.line - 1] ?? { field: 'body' }) : { field: 'readings' }
    const area = AREAS[code]
    // How to add it to the file by hand is of no use where its control stands.
    const hint = [problem.why, area ? undefined : problem.hint].filter(Boolean).join('; ')
    const spot = area
      ? named(area, message)
      : 'row' in origin
        ? `cell.${origin.row}.${cellAt(lines[at.line - 1] ?? '', at.column, columns)}`
        : named(origin.field, message)
    return { spot, severity, code, message, hint }
  })
}
