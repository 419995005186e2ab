/** Readings beyond a stop-at value, as they are typed: before anything is computed. */
import { columnUnit } from '../format/column-units.ts'
import { cellNumber } from '../format/number-cells.ts'
import { typedNumber } from './numbers.ts'
import type { RunState } from './state.ts'
import type { FormColumn } from './view.ts'

export type Beyond = {
  readonly row: number
  readonly column: number
  /** As typed. */
  readonly cell: string
  readonly words: string
}

/** Every reading beyond. A limit of suction is one of pressure as well: what counts is how far from zero. */
export const beyondStop = (state: RunState, columns: readonly FormColumn[]): Beyond[] =>
  state.columns.flatMap(({ name, unit }, column): Beyond[] => {
    const field = columns.find((each) => each.name === name)
    const read = columnUnit(unit)
    if (!field?.stop || !read.ok) return []
    const { text, value: limit } = field.stop
    return state.rows.flatMap((cells, row): Beyond[] => {
      const cell = (cells[column] ?? '').trim()
      const typed = typedNumber(cell)
      // Until it is said what a comma means, the larger number counts.
      const shown = typed.is === 'number' ? typed.text : typed.is === 'ambiguous' ? typed.grouped : ''
      if (!(Math.abs(read.value.toSI(cellNumber(shown))) > Math.abs(limit) * (1 + 1e-9))) return []
      const words = `${field.label} ${cell} ${unit} in row ${row + 1} is beyond ${text}.`
      return [{ row, column, cell, words }]
    })
  })

/** What is to be announced, and the marks of all that was announced or seen before. */
export type Alarm = {
  /** Beyond, and nobody has said of it yet that it was seen. */
  readonly open: readonly Beyond[]
  /** Something of it is new: said again, loudly. A number that is still being typed is not new at each digit. */
  readonly isNew: boolean
}

const placeOf = ({ row, column }: Beyond): string => `${row}.${column}`

/** As seen: the place with what stood there, so that another reading at the same place is announced again. */
export const seenMark = (beyond: Beyond): string => `${placeOf(beyond)} ${beyond.cell}`

export const alarmOf = (
  beyond: readonly Beyond[],
  seen: ReadonlySet<string>,
  announced: readonly Beyond[],
): Alarm => {
  const open = beyond.filter((each) => !seen.has(seenMark(each)))
  const places = new Set(announced.map(placeOf))
  return { open, isNew: open.some((each) => !places.has(placeOf(each))) }
}
