/** The pressure along the test against its target, and the movement of the skin over the pressure. */
import type { Columns, Figure, Givens, Measures, Selection } from '../method.ts'
import type { Choice } from './choice.ts'
import { at, movementOf, targetOf } from './readings.ts'

/** Points enough for a picture; of a longer logger file every n-th, the peak always among them. */
const MOST = 2000

export const figures = (
  _: Measures,
  columns: Columns,
  givens: Givens,
  selection: Selection,
): readonly Figure[] => {
  const { peak, held, channels } = selection as Choice
  const all = Array.from(columns.pressure?.values ?? [], (_unused, row) => row).filter(
    (row) => !Number.isNaN(at(columns.pressure, row)),
  )
  const every = Math.ceil(all.length / MOST)
  const rows = all.filter((row, i) => i % every === 0 || row === peak?.lowest)
  const pressure = rows.map((row) => at(columns.pressure, row))
  const target = targetOf(givens)
  const along: Figure = {
    id: 'pressure',
    title: 'Pressure along the test',
    caption: 'The band is the hold at the target, as far as the gauge makes it sure.',
    x: { label: 'time', kind: 'time' },
    y: { label: 'pressure', kind: 'pressure' },
    series: [{ name: 'pressure', mark: 'both', x: rows.map((row) => at(columns.time, row)), y: pressure }],
    limits: [{ axis: 'y', at: target, label: 'target' }],
    bands: held
      ? [{ axis: 'x', from: at(columns.time, held.from), to: at(columns.time, held.to), label: 'held' }]
      : [],
  }
  if (channels.length === 0 || rows.length === 0) return [along]
  return [
    along,
    {
      id: 'movement',
      title: 'Movement over pressure',
      caption:
        'In the order of the readings. A second loading that runs flatter is softer; what stays at no pressure is the set.',
      x: { label: 'pressure', kind: 'pressure' },
      y: { label: 'movement', kind: 'length' },
      series: channels.map(({ name }) => {
        const movement = movementOf(columns, name)
        return {
          name: name.replaceAll('_', ' '),
          mark: 'both',
          x: pressure,
          y: rows.map((row) => movement[row] ?? Number.NaN),
        }
      }),
      limits: [{ axis: 'x', at: target, label: 'target' }],
      bands: [],
    },
  ]
}
