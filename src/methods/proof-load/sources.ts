/**
 * The readings after the load were rounded anew: a shift between before and after carries r/√6 of the display, and
 * the slope after as much from end to end, unless the readings scatter by half a digit or more and average it out.
 */
import type { Columns, ExtraSource, Givens, Selection } from '../method.ts'
import { estimateMovement } from './movement.ts'
import { at } from './readings.ts'
import type { Choice } from './select.ts'

export const sources = (columns: Columns, givens: Givens, selection: Selection): readonly ExtraSource[] => {
  const { channels, peak } = selection as Choice
  return channels.flatMap((channel) => {
    const { name, cycles } = channel
    const resolution = columns[name]?.resolution ?? 0
    const residual = estimateMovement(columns, givens, peak, channel).residual()
    if (resolution === 0 || residual >= resolution / 2) return []
    const rows = new Set([...channel.after, ...(cycles?.after.flatMap((group) => group.rows) ?? [])])
    const digit = resolution / Math.sqrt(6)
    const reach = Math.max(...[...rows].map((row) => Math.abs(at(columns.load, row)) || 0))
    const moveBy =
      (by: (row: number) => number): ExtraSource['perturb'] =>
      (moved, same, z) => {
        const column = moved[name]
        if (!column) return { columns: moved, givens: same }
        const values = column.values.map((value, row) => (rows.has(row) ? value + z * by(row) : value))
        return { columns: { ...moved, [name]: { ...column, values } }, givens: same }
      }
    const label = `resolution of ${name.replace('_', ' ')}, before and after`
    const shift: ExtraSource = {
      source: `${name}_before_and_after`,
      label,
      shape: 'rectangular',
      perturb: moveBy(() => digit),
    }
    if (!cycles) return [shift]
    const slope = moveBy((row) => (digit * (at(columns.load, row) || 0)) / reach)
    return [shift, { ...shift, source: `${name}_slope_before_and_after`, perturb: slope }]
  })
}
