/** A table as it was written: names, units, rows of cells. Nothing is converted here. */
import type { Fault } from '../quantity/types.ts'
import { blankCells, cellTexts } from './cells.ts'

export type Table = {
  readonly names: readonly string[]
  readonly units: readonly string[]
  readonly rows: readonly (readonly string[])[]
}

/** A fault of a table by cell: row −2 is the names, −1 the units; column −1 is the whole row. */
export type CellFault = Omit<Fault, 'start' | 'end'> & {
  readonly row: number
  readonly column: number
  /** Span within the cell, where less than the whole cell is at fault. */
  readonly span?: { readonly start: number; readonly end: number }
  readonly severity?: 'warning'
}

export type TableRead = { readonly table: Table; readonly faults: readonly CellFault[] }

/** A table of blanks and tabs, as in a block of text of a front matter. */
export function readTable(text: string): TableRead {
  const lines = text.split('\n').filter((line) => line.trim() !== '')
  const all = (line: string | undefined) =>
    line === undefined ? [] : cellTexts(line, blankCells(line, Number.POSITIVE_INFINITY))
  const names = all(lines[0])
  const units = all(lines[1])
  const rows = lines
    .slice(2)
    .map((line) => cellTexts(line, blankCells(line, freeText(units, names) ? names.length : 1e9)))
  return shaped({ names, units, rows })
}

/** Only a last column of words may hold blanks of its own. */
function freeText(units: readonly string[], names: readonly string[]): boolean {
  return units.length === names.length && units.at(-1) === 'text'
}

function shaped(table: Table): TableRead {
  const { names, units, rows } = table
  const fault = headFault(names, units, rows.length)
  if (fault) return { table, faults: [fault] }
  const faults: CellFault[] = []
  const mayBeEmpty = names.at(-1) === 'remark' && units.at(-1) === 'text'
  const full = rows.map((cells, row) => {
    if (cells.length === names.length) return cells
    if (mayBeEmpty && cells.length === names.length - 1) return [...cells, '']
    faults.push(lengthFault(names, cells, row))
    return cells
  })
  return { table: { names, units, rows: full }, faults }
}

/** What is wrong with names and units; `rows` is how many stand below them. */
export function headFault(
  names: readonly string[],
  units: readonly string[],
  rows: number,
): CellFault | undefined {
  if (names.length === 0 || (units.length === 0 && rows === 0)) {
    const hint = 'write `readings: |`, then indented a line of names, a line of units, and one row a line'
    return { code: 'readings/no-table', message: 'this is no table of readings', row: -2, column: -1, hint }
  }
  const double = names.findIndex((name, index) => names.indexOf(name) < index)
  if (double >= 0) {
    const message = `the column \`${names[double]}\` stands twice`
    return {
      code: 'readings/double-column',
      message,
      row: -2,
      column: double,
      hint: 'each column has a name of its own',
    }
  }
  if (/^-?\d[\d.,:]*$/.test(units[0] ?? '') && units[0] !== '1') {
    return {
      code: 'readings/no-units',
      message: 'the line of units is missing: below the names stand numbers',
      row: -1,
      column: -1,
      hint: 'write a unit below each name: `min`, `Pa`, `°C`; `1` for a pure number, `text` for words',
    }
  }
  if (units.length === names.length) return undefined
  return {
    code: 'readings/units-count',
    message: `there are ${names.length} names but ${units.length} units`,
    row: -1,
    column: -1,
    hint: 'write one unit for each name, without blanks in it (`lbf·in`); `1` for a pure number, `text` for words',
  }
}

function lengthFault(names: readonly string[], cells: readonly string[], row: number): CellFault {
  const has = `row ${row + 1} has ${cells.length} ${cells.length === 1 ? 'cell' : 'cells'}`
  if (cells.length > names.length) {
    return {
      code: 'readings/row-too-long',
      message: `${has} for ${names.length} columns`,
      row,
      column: names.length,
      hint: 'blanks separate cells; words of several parts belong in a last column `remark` with the unit `text`',
    }
  }
  const missing = names.slice(cells.length).map((name) => `\`${name}\``)
  return {
    code: 'readings/row-too-short',
    message: `${has} for ${names.length} columns: nothing stands under ${missing.join(', ')}`,
    row,
    column: -1,
    hint: 'write `-` where a reading was not taken',
  }
}
