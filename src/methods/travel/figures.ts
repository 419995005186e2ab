/** How far each position goes beyond its nominal, beside its tolerance. */
import { expanded } from '../../quantity/quantity.ts'
import type { Columns, Figure, Givens, Measures, Selection } from '../method.ts'
import type { Choice } from './select.ts'

export const figures = (
  measures: Measures,
  _: Columns,
  __: Givens,
  selection: Selection,
): readonly Figure[] => {
  const { places } = selection as Choice
  const points = places.flatMap(({ position, side }, k) => {
    const name = side === '' ? position.name : `${position.name}_${side}`
    const error = measures[`${name}_error`]
    return error ? [{ name, k: k + 1, position, error: error.value, U: expanded(error)?.U ?? 0 }] : []
  })
  if (points.length === 0) return []
  const end = (at: 'plus' | 'minus') => {
    const own = points.filter(({ position }) => position[at] !== undefined)
    const sign = at === 'plus' ? 1 : -1
    return own.length === 0
      ? []
      : [
          {
            name: at === 'plus' ? 'allowed beyond' : 'allowed short',
            mark: 'points' as const,
            x: own.map(({ k }) => k),
            y: own.map(({ position }) => sign * (position[at] ?? 0)),
            muted: true,
          },
        ]
  }
  return [
    {
      id: 'errors',
      title: 'Travel beyond nominal',
      caption: `Above 0: further than drawn. In order: ${points.map(({ k, name }) => `${k} ${name.replaceAll('_', ' ')}`).join(', ')}.`,
      x: { label: 'position', kind: 'count' },
      y: { label: 'beyond nominal', kind: 'angle' },
      series: [
        {
          name: 'as measured',
          mark: 'points',
          x: points.map(({ k }) => k),
          y: points.map(({ error }) => error),
          u: points.map(({ U }) => U),
        },
        ...end('plus'),
        ...end('minus'),
      ],
      limits: [{ axis: 'y', at: 0, label: 'nominal' }],
      bands: [],
    },
  ]
}
