/** What to look at: what the line showed, and the pressure that is left once temperature is taken out. */
import { blockMeans, fitLine } from '../../quantity/fit.ts'
import type { Columns, Figure, Givens, Measures, Selection } from '../method.ts'
import { airspeedOf, altitudeAt } from './air.ts'
import { pointsOf } from './points.ts'
import { asHold } from './select.ts'

/** More points than this say no more on paper. */
const MOST_POINTS = 240

const thinned = (values: Float64Array): number[] =>
  values.length > MOST_POINTS ? [...blockMeans(values, MOST_POINTS)] : [...values]

const time = { label: 'time since the first fitted reading', kind: 'time' } as const

export const figures = (
  _: Measures,
  columns: Columns,
  givens: Givens,
  selection: Selection,
): readonly Figure[] => {
  const hold = asHold(selection)
  if (hold.rows.length < 2) return []
  // One point a row: the picture is of the readings, not of their blocks.
  const points = pointsOf(columns, givens, {
    ...hold,
    starts: Int32Array.from({ length: hold.rows.length + 1 }, (_u, k) => k),
  })
  const pitot = givens.words.side === 'pitot'
  const indicated = pitot ? points.gauge.map(airspeedOf) : points.absolute.map(altitudeAt)
  const stated = pitot ? airspeedOf(points.test) : altitudeAt(points.ambient + points.test)
  const fit = fitLine(points.effective, points.compensated)
  const x = thinned(points.time)
  return [
    {
      id: 'indicated',
      title: pitot ? 'Indicated airspeed' : 'Pressure altitude in the line',
      caption: 'As the indicator on the line shows it; on the standard setting for an altitude.',
      x: time,
      y: { label: pitot ? 'airspeed' : 'pressure altitude', kind: pitot ? 'speed' : 'length' },
      series: [{ name: 'read', mark: 'both', x, y: thinned(indicated) }],
      limits: [{ axis: 'y', at: stated, label: 'stated' }],
      bands: [],
    },
    {
      id: 'pressure',
      title: 'Pressure in the line, as read and with temperature taken out',
      caption: 'A tight line is level once temperature is taken out. The line is the fit.',
      x: time,
      y: { label: 'absolute pressure', kind: 'pressure' },
      series: [
        { name: 'as read', mark: 'points', muted: true, x, y: thinned(points.absolute) },
        { name: 'temperature taken out', mark: 'points', x, y: thinned(points.compensated) },
        {
          name: 'fit',
          mark: 'line',
          x,
          y: thinned(points.effective.map((tau) => fit.intercept + fit.slope * tau)),
        },
      ],
      limits: [],
      bands: [],
    },
  ]
}
