/** Readings as they were taken: a drift or two levels show hinge friction and a scale that creeps. */
import type { Columns, Figure, Givens, Measures, Selection } from '../method.ts'
import { type Choice, netOf } from './select.ts'

export const figures = (
  _: Measures,
  columns: Columns,
  __: Givens,
  selection: Selection,
): readonly Figure[] => {
  const { points } = selection as Choice
  if (points.length === 0) return []
  return [
    {
      id: 'readings',
      title: 'Load on the scales',
      caption: 'Each point in the order of its rows, tare taken off. Equal readings are to be expected.',
      x: { label: 'row', kind: 'count' },
      y: { label: 'load', kind: 'mass' },
      series: points.map(({ name, rows }) => ({
        name: name.replaceAll('_', ' '),
        mark: 'points',
        x: rows.map((row) => row + 1),
        y: rows.map((row) => netOf(columns, row)),
      })),
      limits: [],
      bands: [],
    },
  ]
}
