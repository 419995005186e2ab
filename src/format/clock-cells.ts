/** Clock times in cells, as seconds since midnight of the first row's day. */
import type { CellFault } from './table.ts'

const DAY = 86_400

type Clock = 'hh:mm' | 'hh:mm:ss'

/**
 * Past midnight is understood where the clock goes back by more than half a day; a smaller step back is a fault,
 * since nothing tells a mistyped hour from a wrong order.
 */
export function clockColumn(
  cells: readonly string[],
  missing: Uint8Array,
  unit: Clock,
  column: number,
): { readonly values: Float64Array; readonly faults: readonly CellFault[] } {
  const values = new Float64Array(cells.length).fill(Number.NaN)
  const faults: CellFault[] = []
  let last = Number.NaN
  let days = 0
  for (let row = 0; row < cells.length; row++) {
    if (missing[row]) continue
    const cell = cells[row] ?? ''
    const time = clockSeconds(cell, unit)
    if (Number.isNaN(time)) {
      faults.push(notClock(cell, unit, row, column))
      continue
    }
    if (time + days * DAY < last - DAY / 2) days++
    if (time + days * DAY < last) faults.push(backwards(cell, cells[row - 1] ?? '', row, column))
    values[row] = time + days * DAY
    last = values[row] ?? last
  }
  return { values, faults: faults.slice(0, 1) }
}

function clockSeconds(cell: string, unit: Clock): number {
  const found = (unit === 'hh:mm' ? /^(\d\d?):(\d\d)$/ : /^(\d\d?):(\d\d):(\d\d)$/).exec(cell)
  if (!found) return Number.NaN
  const [hours = 0, minutes = 0, seconds = 0] = found.slice(1).map(Number)
  return hours > 23 || minutes > 59 || seconds > 59 ? Number.NaN : hours * 3600 + minutes * 60 + seconds
}

function notClock(cell: string, unit: Clock, row: number, column: number): CellFault {
  const hint = `write the time as \`${unit === 'hh:mm' ? '09:12' : '09:12:30'}\`, \`-\` where there is none`
  return {
    code: 'readings/not-a-time',
    message: `\`${cell}\` is no time of day written ${unit}`,
    row,
    column,
    hint,
  }
}

function backwards(cell: string, before: string, row: number, column: number): CellFault {
  return {
    code: 'readings/time-backwards',
    message: `\`${cell}\` is earlier than \`${before}\` above it`,
    row,
    column,
    why: 'rows keep their order and are never sorted; only a step over midnight may go back',
    hint: 'correct the time, or put the rows in the order in which they were read',
  }
}
