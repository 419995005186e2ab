/** What to look at: what the gas did and what of it temperature explains, and where the pressure stood. */
import { fitLine } from '../../quantity/fit.ts'
import type { Columns, Figure, Givens, Measures, Selection } from '../method.ts'
import { pointsOf } from './points.ts'
import { readingsOf } from './readings.ts'
import { asHold } from './select.ts'

/** More points than this say no more on paper. */
const MOST_POINTS = 240

const time = { label: 'time since the first fitted reading', kind: 'time' } as const

export const figures = (
  _measures: Measures,
  columns: Columns,
  givens: Givens,
  selection: Selection,
): readonly Figure[] => {
  const hold = asHold(selection)
  if (hold.rows.length < 2) return []
  const points = pointsOf(columns, givens, hold)
  const fit = fitLine(points.effective, points.compensated)
  const readings = readingsOf(columns, givens, hold.span)
  const count = columns.time?.values.length ?? 0
  const step = Math.ceil(count / MOST_POINTS)
  const whole = Array.from({ length: Math.floor(count / step) }, (_, k) => k * step)
    .map((row) => ({ t: readings.time(row) - hold.span.start, p: readings.gauge(row) }))
    .filter(({ t, p }) => Number.isFinite(t) && Number.isFinite(p))
  const testPressure = givens.numbers.test_pressure ?? Number.NaN
  const change = (values: Float64Array) => [...values].map((value) => value - (values[0] as number))
  const x = [...points.time]
  const [begin] = whole
  return [
    {
      id: 'compensated',
      title: 'What leaks, and what is only temperature and weather',
      caption:
        'Change of the pressure since the first fitted reading: as read, and with walls, weather and temperature taken out. The slope of the line is the leak.',
      x: time,
      y: { label: 'change of pressure', kind: 'pressure' },
      series: [
        { name: 'gauge pressure as read', mark: 'both', x, y: change(points.gauge), muted: true },
        { name: 'compensated', mark: 'points', x, y: change(points.compensated) },
        {
          name: 'fitted line',
          mark: 'line',
          x,
          y: x.map(
            (_, k) =>
              fit.intercept + fit.slope * (points.effective[k] as number) - (points.compensated[0] as number),
          ),
        },
      ],
      limits: [],
      bands: [],
    },
    {
      id: 'pressure',
      title: 'Was the test pressure there, and kept',
      caption: 'Gauge pressure of the whole run. What lies in the settle band is drawn and not fitted.',
      x: time,
      y: { label: 'gauge pressure', kind: 'pressure' },
      series: [
        {
          name: 'gauge pressure',
          mark: 'both',
          x: whole.map(({ t }) => t),
          y: whole.map(({ p }) => p),
        },
      ],
      limits: [
        { axis: 'y', at: testPressure, label: 'test pressure' },
        { axis: 'y', at: testPressure / 2, label: 'half of it: condition lost' },
      ],
      bands: begin && begin.t < 0 ? [{ axis: 'x', from: begin.t, to: 0, label: 'settling' }] : [],
    },
  ]
}
