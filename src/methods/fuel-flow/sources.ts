/** What only this method knows: the hand on the stopwatch, and digits that a halved flow or a single level feels. */
import type { Columns, ExtraSource, Givens, Selection } from '../method.ts'
import { moveRows } from '../repeats.ts'
import { at, type Choice } from './select.ts'

/** The whole time is off by as much; readings between are off in proportion. */
const clock = (columns: Columns, u: number, choice: Choice): ExtraSource => {
  const first = at(columns, 'time', choice.rows[0] ?? -1)
  const span = at(columns, 'time', choice.rows.at(-1) ?? -1) - first
  return {
    source: 'stopwatch',
    label: 'start and stop by hand',
    shape: 'normal',
    perturb: (moved, givens, z) => {
      const { time } = moved
      if (!time || !(span > 0)) return { columns: moved, givens }
      const values = time.values.map((t) => t + ((t - first) * z * u) / span)
      return { columns: { ...moved, time: { ...time, values } }, givens }
    },
  }
}

export const sources = (columns: Columns, givens: Givens, selection: Selection): readonly ExtraSource[] => {
  const choice = selection as Choice
  const { collected, rows, firstSign, start, residual } = choice
  const resolution = columns[collected]?.resolution ?? 0
  const u = givens.numbers.time_error ?? 0
  const found: ExtraSource[] = u > 0 ? [clock(columns, u, choice)] : []
  const digit = (source: string, label: string, own: readonly number[]): ExtraSource => {
    const move = moveRows(collected, own, resolution / Math.sqrt(12))
    return {
      source,
      label,
      shape: 'rectangular',
      perturb: (moved, same, z) => ({ columns: move(moved, z), givens: same }),
    }
  }
  if (resolution > 0 && residual < resolution / 2) {
    // A bend that the digits alone can make: the middle of the readings rounded one way, the ends the other.
    const third = Math.floor(rows.length / 3)
    if (rows.length >= 5)
      found.push(digit('digits_in_mid_run', 'digits in mid run', rows.slice(third, rows.length - third)))
  }
  // The amount that has run is a difference of two single readings, whatever the scatter of the others is.
  if (resolution > 0 && firstSign !== null)
    found.push(
      digit('digits_at_first_sign', 'digits at the first sign', [firstSign]),
      digit('digits_at_start', 'digits at the start', [start]),
    )
  return found
}
