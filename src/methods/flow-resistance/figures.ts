/** The drop over the flow, the fitted curves, and the flow that must pass. */
import type { Columns, Figure, Givens, Measures, Selection } from '../method.ts'
import { curveOf, dropAt } from './curve.ts'
import { askedOf, type Choice } from './select.ts'
import { wayWords } from './words.ts'

const STEPS = 40

export const figures = (
  _: Measures,
  columns: Columns,
  givens: Givens,
  selection: Selection,
): readonly Figure[] => {
  const { groups } = selection as Choice
  if (groups.length === 0) return []
  const series = groups.flatMap((group): Figure['series'] => {
    const curve = curveOf(columns, group)
    const name = wayWords(group.way) || 'readings'
    const points = {
      name,
      mark: 'points',
      x: Array.from(curve.flow),
      y: Array.from(curve.drop),
    } as const
    if (!curve.fit) return [points]
    const x = Array.from({ length: STEPS + 1 }, (_unused, i) => (curve.highest * i) / STEPS)
    return [points, { name: `${name}, fitted`, mark: 'line', x, y: x.map((flow) => dropAt(curve, flow)) }]
  })
  const limits = groups.flatMap(({ way }): Figure['limits'] => {
    const asked = askedOf(givens, way)
    return asked === undefined ? [] : [{ axis: 'x', at: asked, label: `required ${wayWords(way)}`.trim() }]
  })
  return [
    {
      id: 'drop',
      title: 'Drop over flow',
      caption: 'Each way has its own curve a Q + b Q². The required flow must lie within the readings.',
      x: { label: 'flow', kind: 'volume-flow' },
      y: { label: 'pressure drop', kind: 'pressure' },
      series,
      limits,
      bands: [],
    },
  ]
}
