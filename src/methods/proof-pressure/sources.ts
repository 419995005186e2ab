/**
 * Digits that the engine's own perturbation does not move: the readings after the pressure were rounded anew, so a set
 * carries r/√6 of the dial, and a creep as much from end to end of the hold; unless readings scatter by half a digit
 * or more and average it out.
 */
import type { Columns, ExtraSource, Selection } from '../method.ts'
import type { Choice } from './choice.ts'
import { at, digitOf } from './readings.ts'

const moveRows =
  (name: string, by: (row: number) => number): ExtraSource['perturb'] =>
  (columns, givens, z) => {
    const column = columns[name]
    if (!column) return { columns, givens }
    const values = column.values.map((value, row) => value + z * by(row))
    return { columns: { ...columns, [name]: { ...column, values } }, givens }
  }

export const sources = (columns: Columns, _: unknown, selection: Selection): readonly ExtraSource[] =>
  (selection as Choice).channels.flatMap(({ name, spread, after, held }): ExtraSource[] => {
    const digit = digitOf(columns, name)
    if (digit === 0 || spread.s >= digit / 2) return []
    const size = digit / Math.sqrt(6)
    const rows = new Set(after)
    const [from, to] = [at(columns.time, held[0] ?? -1), at(columns.time, held.at(-1) ?? -1)]
    const holding = new Set(held)
    const ramp = (row: number) =>
      holding.has(row) && to > from ? (at(columns.time, row) - (from + to) / 2) / (to - from) : 0
    const label = `resolution of ${name.replace('_', ' ')}`
    return [
      {
        source: `${name}_before_and_after`,
        label: `${label}, before and after`,
        shape: 'rectangular',
        perturb: moveRows(name, (row) => (rows.has(row) ? size : 0)),
      },
      {
        source: `${name}_in_the_hold`,
        label: `${label}, in the hold`,
        shape: 'rectangular',
        perturb: moveRows(name, (row) => size * ramp(row)),
      },
    ]
  })
