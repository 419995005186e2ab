/** The load along the test against its target, and the movement over the load. */
import { KINDS, type Kind } from '../../quantity/kinds.ts'
import type { Dimension } from '../../quantity/types.ts'
import type { Column, Columns, Figure, Givens, Measures, Selection } from '../method.ts'
import { at, levelOf, liveRows } from './readings.ts'
import type { Choice } from './select.ts'

/** Points enough for a picture; of a longer logger file every n-th, the highest always among them. */
const MOST = 2000

const kindOf = (column: Column | undefined, kinds: readonly Kind[]): Kind => {
  const equal = (dim: Dimension) => column?.dim.every((x, i) => x === dim[i])
  return kinds.find((kind) => equal(KINDS[kind].dim)) ?? (kinds[0] as Kind)
}

const thinned = (rows: readonly number[], keep: number | undefined): number[] => {
  const every = Math.ceil(rows.length / MOST)
  return rows.filter((row, i) => i % every === 0 || row === keep)
}

export const figures = (
  _: Measures,
  columns: Columns,
  givens: Givens,
  selection: Selection,
): readonly Figure[] => {
  const { peak, held, sign, channels } = selection as Choice
  const live = liveRows(columns, givens)
  const rows = thinned(live, peak?.lowest)
  const load = rows.map((row) => at(columns.load, row))
  const loadKind = kindOf(columns.load, ['force', 'moment'])
  const x = columns.time ?? columns.step
  const along: Figure = {
    id: 'load',
    title: 'Load along the test',
    caption: 'The band is the hold at the target, as far as the scale makes it sure.',
    x: columns.time ? { label: 'time', kind: 'time' } : { label: 'step', kind: 'count' },
    y: { label: 'load', kind: loadKind },
    series: [{ name: 'load', mark: 'both', x: rows.map((row) => (x ? at(x, row) : row)), y: load }],
    limits: [
      { axis: 'y', at: givens.numbers.target ?? Number.NaN, label: 'target' },
      ...(levelOf(givens) < Math.abs(givens.numbers.target ?? Number.NaN)
        ? [{ axis: 'y' as const, at: sign * levelOf(givens), label: 'target less tolerance' }]
        : []),
    ],
    bands:
      held && columns.time
        ? [{ axis: 'x', from: at(columns.time, held.from), to: at(columns.time, held.to), label: 'held' }]
        : [],
  }
  if (channels.length === 0 || live.length === 0) return [along]
  const movement: Figure = {
    id: 'movement',
    title: 'Movement over load',
    caption: 'In the order of the readings. What stays at zero load after the last unloading is the set.',
    x: { label: 'load', kind: loadKind },
    y: { label: 'movement', kind: kindOf(columns[channels[0]?.name ?? ''], ['length', 'angle']) },
    series: channels.map(({ name }) => ({
      name: name.replaceAll('_', ' '),
      mark: 'both',
      x: load,
      y: rows.map((row) => at(columns[name], row)),
    })),
    limits: [{ axis: 'x', at: givens.numbers.target ?? Number.NaN, label: 'target' }],
    bands: [],
  }
  return [along, movement]
}
