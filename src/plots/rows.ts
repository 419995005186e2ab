/** A plot as rows for the named data sets of `spec.ts`. Numbers that are not finite are left out, never drawn as 0. */
import type { Plot, Series, StampStyle } from '../views/view.ts'

type Cell = string | number | readonly number[]
export type Rows = Readonly<Record<string, readonly Readonly<Record<string, Cell>>[]>>

const COLOURS = ['var(--accent)', 'var(--second)', 'var(--third)', 'var(--ink)'] as const
const SHAPES = ['circle', 'square', 'triangle-up', 'diamond'] as const
const DASHES = [
  [1, 0],
  [6, 3],
  [2, 3],
  [8, 3, 2, 3],
] as const
const CROSS = 'M-0.7,-1L0,-0.3L0.7,-1L1,-0.7L0.3,0L1,0.7L0.7,1L0,0.3L-0.7,1L-1,0.7L-0.3,0L-1,-0.7Z'

const verdictMarks: Readonly<Record<StampStyle, { colour: string; shape: string; fill: string }>> = {
  pass: { colour: 'var(--pass)', shape: 'circle', fill: 'var(--pass)' },
  fail: { colour: 'var(--fail)', shape: CROSS, fill: 'var(--fail)' },
  undetermined: { colour: 'var(--open)', shape: 'diamond', fill: 'var(--sheet)' },
  'due-again': { colour: 'var(--stale)', shape: 'square', fill: 'var(--sheet)' },
  conceded: { colour: 'var(--open)', shape: 'square', fill: 'var(--open)' },
  plain: { colour: 'var(--none)', shape: 'circle', fill: 'var(--sheet)' },
  proposed: { colour: 'var(--accent)', shape: 'circle', fill: 'var(--sheet)' },
  gone: { colour: 'var(--fail)', shape: 'circle', fill: 'var(--sheet)' },
}

/** How the series at `index` is drawn; the key under a plot shows the same. */
export const seriesStyle = (series: Series, index: number) => ({
  colour: series.muted ? 'var(--none)' : (COLOURS[index % COLOURS.length] ?? COLOURS[0]),
  shape: SHAPES[index % SHAPES.length] ?? SHAPES[0],
  dash: DASHES[index % DASHES.length] ?? DASHES[0],
})

const drawable = (point: readonly [number, number, number | null]): boolean =>
  Number.isFinite(point[0]) && Number.isFinite(point[1])

const seriesRows = (series: Series, index: number) => {
  const style = seriesStyle(series, index)
  return series.points
    .map((point, order) => {
      const verdict = series.styles?.[order]
      const marks = verdict
        ? { ...verdictMarks[verdict], ...(series.hollow?.[order] ? { fill: 'var(--sheet)' } : {}) }
        : { colour: style.colour, shape: style.shape, fill: 'var(--sheet)' }
      return {
        point,
        order,
        marks,
        dash: style.dash,
        size: verdict ? 90 : 26,
        series: `series ${index}`,
        line: style.colour,
      }
    })
    .filter((row) => drawable(row.point))
}

export const plotRows = (plot: Plot): Rows => {
  const all = plot.series.flatMap((series, index) =>
    seriesRows(series, index).map((row) => ({ ...row, mark: series.mark })),
  )
  return {
    lines: all
      .filter((row) => row.mark !== 'points')
      .map((row) => ({
        x: row.point[0],
        y: row.point[1],
        order: row.order,
        series: row.series,
        colour: row.line,
        dash: row.dash,
      })),
    points: all
      .filter((row) => row.mark !== 'line')
      .map((row) => ({
        x: row.point[0],
        y: row.point[1],
        colour: row.marks.colour,
        fill: row.marks.fill,
        shape: row.marks.shape,
        size: row.size,
      })),
    bars: all.flatMap((row) => {
      const [x, y, U] = row.point
      return U !== null && Number.isFinite(U) && U > 0
        ? [{ x, low: y - U, high: y + U, colour: row.marks.colour }]
        : []
    }),
    limitsX: plot.limits.filter((limit) => limit.axis === 'x').map(({ at, label }) => ({ at, label })),
    limitsY: plot.limits.filter((limit) => limit.axis === 'y').map(({ at, label }) => ({ at, label })),
    refusedAbove: plot.limits.filter((limit) => limit.refused === 'above').map(({ at }) => ({ at })),
    refusedBelow: plot.limits.filter((limit) => limit.refused === 'below').map(({ at }) => ({ at })),
    bandsX: plot.bands
      .filter((band) => band.axis === 'x')
      .map(({ from, to, label }) => ({ from, to, label })),
    bandsY: plot.bands
      .filter((band) => band.axis === 'y')
      .map(({ from, to, label }) => ({ from, to, label })),
    places: plot.places.map(({ at, label }) => ({ at, label })),
    marks: plot.marks.map(({ at, label }) => ({ at, label })),
  }
}
