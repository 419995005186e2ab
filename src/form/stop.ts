/** Readings beyond a stop-at value, as they are typed: before anything is computed. */
import { columnUnit } from '../format/column-units.ts'
import { cellNumber } from '../format/number-cells.ts'
import { typedNumber } from './numbers.ts'
import type { RunState } from './state.ts'
import type { FormColumn } from './view.ts'

export type Beyond = { readonly row: number; readonly column: number; readonly words: string }

/** A limit of suction is one of pressure as well: what counts is how far from zero. */
export const beyondStop = (state: RunState, columns: readonly FormColumn[]): Beyond[] =>
  state.columns.flatMap(({ name, unit }, column): Beyond[] => {
    const field = columns.find((each) => each.name === name)
    const read = columnUnit(unit)
    if (!field?.stop || !read.ok) return []
    const { text, value: limit } = field.stop
    const row = state.rows.findIndex((cells) => {
      const typed = typedNumber(cells[column] ?? '')
      // Until it is said what a comma means, the larger number counts.
      const shown = typed.is === 'number' ? typed.text : typed.is === 'ambiguous' ? typed.grouped : ''
      return Math.abs(read.value.toSI(cellNumber(shown))) > Math.abs(limit) * (1 + 1e-9)
    })
    if (row < 0) return []
    const cell = state.rows[row]?.[column] ?? ''
    return [
      { row, column, words: `${field.label} ${cell.trim()} ${unit} in row ${row + 1} is beyond ${text}.` },
    ]
  })
