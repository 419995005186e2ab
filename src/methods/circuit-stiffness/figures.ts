/** The loop with its lines, and what the lines leave over. */
import type { Columns, Figure, Givens, Measures, Selection } from '../method.ts'
import { linesOf } from './fits.ts'
import { kindsOf } from './found.ts'
import { motionOf } from './motion.ts'
import { choiceOf } from './select.ts'

export const figures = (
  measures: Measures,
  columns: Columns,
  givens: Givens,
  selection: Selection,
): Figure[] => {
  const motion = motionOf(columns, givens)
  if (!motion) return []
  const choice = choiceOf(selection)
  const kinds = kindsOf(motion.form)
  const lines = linesOf(choice.legs, motion.load, motion.deflection)
  const at = (values: Float64Array, rows: readonly number[]) => rows.map((row) => values[row] as number)
  const all = Array.from(motion.load.keys()).filter(
    (row) => Number.isFinite(motion.load[row]) && Number.isFinite(motion.deflection[row]),
  )
  const x = { label: motion.form === 'angular' ? 'moment' : 'load', kind: kinds.load }
  const loop: Figure = {
    id: 'loop',
    title: 'Deflection against load',
    caption:
      'Readings in the order in which they were taken, fixture motion taken off. Lines: least squares, one a branch and direction, drawn to zero load. Pale points are not on the lines: no load, play, or sticking after a turn.',
    x,
    y: { label: 'deflection', kind: kinds.motion },
    series: [
      { name: 'readings', mark: 'both', x: at(motion.load, all), y: at(motion.deflection, all) },
      {
        name: 'left out',
        mark: 'points',
        x: at(motion.load, choice.leftOut),
        y: at(motion.deflection, choice.leftOut),
        muted: true,
      },
      ...lines.map((line) => {
        const end = line.side * Math.max(...line.loads.map(Math.abs))
        const value = (load: number) => line.meanMotion + line.slope * (load - line.meanLoad)
        return {
          name: `${line.side > 0 ? 'positive' : 'negative'} ${line.phase}, cycle ${line.cycle}`,
          mark: 'line' as const,
          x: [0, end],
          y: [value(0), value(end)],
        }
      }),
    ],
    limits: [
      { axis: 'x', at: motion.limit, label: 'limit load' },
      { axis: 'x', at: -motion.limit, label: 'limit load' },
    ],
    bands: playBand(measures),
  }
  const rest: Figure = {
    id: 'departure',
    title: 'Departure from the lines',
    caption: 'Deflection less its line. A bow or a step here is a knee, preload or sticking, not scatter.',
    x,
    y: { label: 'departure', kind: kinds.motion },
    series: (['loading', 'unloading'] as const).map((phase) => {
      const own = lines.filter((line) => line.phase === phase)
      return {
        name: phase,
        mark: 'points',
        x: own.flatMap((line) => [...line.loads]),
        y: own.flatMap((line) => [...line.residuals]),
      }
    }),
    limits: [{ axis: 'y', at: 0, label: 'line' }],
    bands: [],
  }
  return lines.length > 0 ? [loop, rest] : [loop]
}

const playBand = ({ free_play: play }: Measures): Figure['bands'] =>
  play && play.value > 0 ? [{ axis: 'y', from: -play.value / 2, to: play.value / 2, label: 'free play' }] : []
