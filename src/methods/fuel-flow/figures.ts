/** What ran into the can over time, its line, and the line of the required flow. */
import { fitLine, lineAt } from '../../quantity/fit.ts'
import type { Columns, Figure, Givens, Measures, Selection } from '../method.ts'
import { pointsOf } from './points.ts'
import { at, type Choice } from './select.ts'

export const figures = (
  measures: Measures,
  columns: Columns,
  _: Givens,
  selection: Selection,
): readonly Figure[] => {
  const choice = selection as Choice
  const { time, collected } = pointsOf(columns, choice)
  if (time.length < 2) return []
  const line = fitLine(time, collected)
  const ends = [time[0] ?? 0, time.at(-1) ?? 0]
  const ratio = measures.flow_ratio?.value
  const from = lineAt(line, ends[0] ?? 0)
  const start = at(columns, 'time', choice.rows[0] ?? -1)
  const sign = choice.firstSign === null ? null : at(columns, 'time', choice.firstSign) - start
  return [
    {
      id: 'collected',
      title: 'What ran into the can',
      caption:
        'A steeper line than the required one is enough; a line that bends down says that the flow falls off.',
      x: { label: 'time', kind: 'time' },
      y: { label: choice.collected, kind: choice.collected },
      series: [
        { name: 'readings', mark: 'points', x: [...time], y: [...collected] },
        { name: 'fitted', mark: 'line', x: ends, y: ends.map((t) => lineAt(line, t)) },
        ...(ratio === undefined
          ? []
          : [
              {
                name: 'required',
                mark: 'line' as const,
                x: ends,
                y: ends.map((t) => from + (line.slope / ratio) * (t - (ends[0] ?? 0))),
                muted: true,
              },
            ]),
      ],
      limits: sign === null ? [] : [{ axis: 'x', at: sign, label: 'first sign' }],
      bands: [],
    },
  ]
}
