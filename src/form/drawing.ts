/** Where the parts of a light plot stand. */
import type { Plot } from '../views/view.ts'

const FRAME = { width: 440, height: 270, left: 56, right: 428, top: 26, bottom: 222 } as const
const MOST_TICKS = 6
const COLOURS = 4

export type Drawing = {
  readonly frame: typeof FRAME
  readonly x: readonly Tick[]
  readonly y: readonly Tick[]
  readonly series: readonly {
    readonly line: string
    readonly points: readonly Point[]
    readonly colour: number
  }[]
  readonly limits: readonly {
    readonly d: string
    readonly x: number
    readonly y: number
    readonly label: string
    readonly anchor: string
  }[]
  readonly bands: readonly {
    readonly x: number
    readonly y: number
    readonly width: number
    readonly height: number
  }[]
}

type Tick = { readonly at: number; readonly label: string }
type Point = { readonly x: number; readonly y: number }

/** Round steps, at most so many of them. */
export const ticksOf = (low: number, high: number, most = MOST_TICKS): number[] => {
  const span = high - low
  if (!(span > 0)) return [low]
  const power = 10 ** Math.floor(Math.log10(span / most))
  const step = [1, 2, 5, 10].map((each) => each * power).find((each) => span / each <= most) ?? 10 * power
  const first = Math.ceil(low / step - 1e-9)
  const last = Math.floor(high / step + 1e-9)
  return Array.from({ length: last - first + 1 }, (_, index) =>
    Number(((first + index) * step).toPrecision(12)),
  )
}

const rounded = (x: number): number => Math.round(x * 10) / 10

/** From the smallest to the largest value, with some room; a single value gets room of its own size. */
const extent = (values: readonly number[]): readonly [number, number] => {
  const finite = values.filter(Number.isFinite)
  const low = finite.reduce((least, value) => Math.min(least, value), Number.POSITIVE_INFINITY)
  const high = finite.reduce((most, value) => Math.max(most, value), Number.NEGATIVE_INFINITY)
  if (!(high >= low)) return [0, 1]
  const room = high > low ? (high - low) * 0.05 : Math.abs(high) * 0.05 || 1
  return [low - room, high + room]
}

export const drawPlot = (plot: Plot): Drawing => {
  const points = plot.series.flatMap((series) => series.points)
  const limitsOn = (axis: 'x' | 'y') => plot.limits.filter((limit) => limit.axis === axis).map(({ at }) => at)
  const [x0, x1] = extent([...points.map(([x]) => x), ...limitsOn('x')])
  const [y0, y1] = extent([...points.map(([, y]) => y), ...limitsOn('y')])
  const { left, right, top, bottom } = FRAME
  const atX = (x: number) => rounded(left + ((x - x0) / (x1 - x0)) * (right - left))
  const atY = (y: number) => rounded(bottom - ((y - y0) / (y1 - y0)) * (bottom - top))
  const within = (value: number, low: number, high: number) => Math.min(high, Math.max(low, value))
  const label = (value: number) => String(value).replace('-', '−')
  return {
    frame: FRAME,
    x: ticksOf(x0, x1).map((value) => ({ at: atX(value), label: label(value) })),
    y: ticksOf(y0, y1).map((value) => ({ at: atY(value), label: label(value) })),
    series: plot.series.map((series, index) => {
      const drawn = series.points
        .filter(([x, y]) => Number.isFinite(x) && Number.isFinite(y))
        .map(([x, y]) => ({ x: atX(x), y: atY(y) }))
      const line =
        series.mark === 'points'
          ? ''
          : drawn.map(({ x, y }, at) => `${at === 0 ? 'M' : 'L'}${x} ${y}`).join('')
      return { line, points: series.mark === 'line' ? [] : drawn, colour: index % COLOURS }
    }),
    limits: plot.limits.map(({ axis, at, label }) =>
      axis === 'x'
        ? { d: `M${atX(at)} ${top}V${bottom}`, x: atX(at) - 4, y: top + 12, label, anchor: 'end' }
        : { d: `M${left} ${atY(at)}H${right}`, x: right - 4, y: atY(at) - 5, label, anchor: 'end' },
    ),
    bands: plot.bands.map(({ axis, from, to }) => {
      if (axis === 'x') {
        const [a, b] = [within(atX(from), left, right), within(atX(to), left, right)]
        return { x: Math.min(a, b), y: top, width: Math.abs(b - a), height: bottom - top }
      }
      const [a, b] = [within(atY(from), top, bottom), within(atY(to), top, bottom)]
      return { x: left, y: Math.min(a, b), width: right - left, height: Math.abs(b - a) }
    }),
  }
}
