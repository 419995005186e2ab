/** The weighing as a point in its envelope. */
import { expanded } from '../../quantity/quantity.ts'
import type { Columns, Figure, Givens, Measures } from '../method.ts'
import { envelopeOf } from './envelope.ts'

export const figures = (measures: Measures, _: Columns, givens: Givens): readonly Figure[] => {
  const { weight, cg, weight_as_weighed: weighed, cg_as_weighed: cgWeighed } = measures
  if (!weight || !cg) return []
  const envelope = envelopeOf(givens)
  const corners = envelope?.[0] ? [...envelope, envelope[0]] : []
  const moved = weighed && cgWeighed && weighed.value !== weight.value
  const U = expanded(weight)?.U
  return [
    {
      id: 'envelope',
      title: 'Weight and centre of gravity',
      caption: `Arms from the datum: ${givens.words.datum ?? 'not stated'}. The point must lie inside the envelope.`,
      x: { label: 'arm of the centre of gravity', kind: 'length' },
      y: { label: 'mass', kind: 'mass' },
      series: [
        ...(corners.length > 0
          ? [
              {
                name: 'envelope',
                mark: 'line' as const,
                x: corners.map(({ arm }) => arm),
                y: corners.map(({ mass }) => mass),
              },
            ]
          : []),
        ...(moved
          ? [
              {
                name: 'as weighed',
                mark: 'points' as const,
                x: [cgWeighed.value],
                y: [weighed.value],
                muted: true,
              },
            ]
          : []),
        {
          name: 'result',
          mark: 'points',
          x: [cg.value],
          y: [weight.value],
          ...(U === undefined ? {} : { u: [U] }),
        },
      ],
      limits: [],
      bands: [],
    },
  ]
}
