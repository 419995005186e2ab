/** Limits that moved: the line of what each run had to meet when it was made, as steps beside the limit of today. */
import type { Trend, TrendLimit, TrendPoint } from '../campaign/types.ts'
import { toUnit } from '../quantity/convert.ts'
import type { Unit } from '../quantity/types.ts'
import { roundText } from './show.ts'
import type { Series } from './view.ts'
import { dateWords } from './words.ts'

export type Steps = { readonly series: readonly Series[]; readonly words: readonly string[] }

export const limitLabel = (limit: TrendLimit, unit: Unit, moved: boolean): string =>
  `${moved ? 'limit today' : 'limit'} ${roundText(limit.value, unit)}`

/** The limits of one side, as they stand in the formula from left to right. */
const onSide = (limits: readonly TrendLimit[], side: TrendLimit['side']): readonly TrendLimit[] =>
  limits.filter((limit) => limit.side === side)

const thenOf = (point: TrendPoint): readonly TrendLimit[] => point.limitsAsRun ?? point.limits

const same = (a: TrendLimit | undefined, b: TrendLimit | undefined): boolean =>
  a?.value === b?.value || (a !== undefined && b !== undefined && nearly(a.value, b.value))

/** But for the last digits of the arithmetic. */
const nearly = (a: number, b: number): boolean => Math.abs(a - b) <= 1e-9 * Math.max(Math.abs(a), Math.abs(b))

/** A limit by its side and its place among those of that side. */
type Key = { readonly side: TrendLimit['side']; readonly index: number }

const keysOf = (trend: Trend): Key[] =>
  (['below', 'above'] as const).flatMap((side) => {
    const counts = trend.points.map((point) =>
      Math.max(onSide(thenOf(point), side).length, onSide(point.limits, side).length),
    )
    return Array.from({ length: Math.max(0, ...counts) }, (_, index) => ({ side, index }))
  })

/** Runs for which the limit of then is not that of today. */
const movedAt = (trend: Trend, { side, index }: Key): TrendPoint[] =>
  trend.points.filter((point) => !same(onSide(thenOf(point), side)[index], onSide(point.limits, side)[index]))

const wordsOf = (points: readonly TrendPoint[], { side, index }: Key, unit: Unit): string[] => {
  const groups = new Map<string, TrendPoint[]>()
  for (const point of points) {
    const then = onSide(thenOf(point), side)[index]
    const said = then ? roundText(then.value, unit) : 'none'
    groups.set(said, [...(groups.get(said) ?? []), point])
  }
  return [...groups].map(([said, own]) => {
    const first = dateWords(own[0]?.when ?? '')
    const last = dateWords(own.at(-1)?.when ?? '')
    return `Limit as run${first === last ? `, ${first}` : `, ${first} to ${last}`}: ${said} (dashed).`
  })
}

type Point = readonly [number, number, null]

/** Each run has the stretch half way to its neighbours; at the right end the line comes to the limit of today. */
const stepsOf = (trend: Trend, { side, index }: Key): Series[] => {
  const stretches: Point[][] = [[]]
  trend.points.forEach((point, at) => {
    const limit = onSide(thenOf(point), side)[index]
    const y = limit && toUnit(limit.value, trend.unit)
    // Where there was none the line has a gap.
    if (y === undefined) stretches.push([])
    else stretches.at(-1)?.push([at + 0.5, y, null], [at + 1.5, y, null])
  })
  const today = onSide(trend.limits, side)[index]
  const last = stretches.at(-1)
  if (today && last && last.length > 0)
    last.push([trend.points.length + 0.5, toUnit(today.value, trend.unit), null])
  return stretches
    .filter((points) => points.length > 0)
    .map((points) => ({ name: 'limit as run', mark: 'line', muted: false, points }))
}

/** Nothing where no limit moved, or where history is not known. */
export const asRunSteps = (trend: Trend): Steps => {
  const moved = keysOf(trend)
    .map((key) => ({ key, points: movedAt(trend, key) }))
    .filter(({ points }) => points.length > 0)
  return {
    series: moved.flatMap(({ key }) => stepsOf(trend, key)),
    words: moved.flatMap(({ key, points }) => wordsOf(points, key, trend.unit)),
  }
}
