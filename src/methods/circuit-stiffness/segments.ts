/**
 * Share of each segment in the deflection of the whole circuit. The motion at the stations is referred to the
 * surface, so that compliances in series add up (moment at the surface, angle at the surface).
 */
import { mapped } from '../../quantity/loops.ts'
import {
  type Fitted,
  type Leg,
  type Loaded,
  linesOf,
  linesOver,
  pooledScatter,
  rowScatter,
  type Scatter,
  sharedSlope,
  slopesOver,
} from './fits.ts'
import type { Motion } from './motion.ts'

export type Segment = {
  readonly from: string
  readonly to: string
  readonly compliance: Fitted
  readonly scatter: Scatter
  /** Scatter of single rows, in surface motion. */
  readonly rows: number
}

const UNASKED: Scatter = { s: 0, dof: 0 }

/**
 * Compliance of each segment: the slope, on the load at the surface, of the difference of motion between its ends.
 * With `valuesOnly` the scatter is not worked out.
 */
export const segmentsOf = (motion: Motion, legs: readonly Loaded[], valuesOnly: boolean): Segment[] =>
  motion.nodes.slice(1).flatMap((to, i): Segment[] => {
    const from = motion.nodes[i]
    if (!from) return []
    const between = mapped(from.motion, (value, row) => value - (to.motion[row] as number))
    if (legs.length === 0) return []
    const ends = { from: from.name, to: to.name }
    if (valuesOnly)
      return [{ ...ends, compliance: sharedSlope(slopesOver(legs, between)), scatter: UNASKED, rows: 0 }]
    const lines = linesOver(legs, between)
    const rows = rowScatter(lines, motion.surfaceLoad, between)
    return [{ ...ends, compliance: sharedSlope(lines), scatter: pooledScatter(lines), rows }]
  })

/**
 * Scatter of the share of one segment, as a slope on the load: that of (motion of the segment − share · motion of the
 * whole)/whole compliance, whose slope is none. The readings that neighbours have in common are in it once, signed.
 */
export const shareScatter = (
  motion: Motion,
  legs: readonly Leg[],
  { from, to }: Pick<Segment, 'from' | 'to'>,
  share: number,
  total: number,
): Scatter => {
  const of = (name: string) => motion.nodes.find((node) => node.name === name)?.motion
  const [start, end] = [of(from), of(to)]
  const [first, last] = [motion.nodes[0]?.motion, motion.nodes.at(-1)?.motion]
  if (!start || !end || !first || !last) return { s: 0, dof: 0 }
  const beyondShare = mapped(start, (value, row) => {
    const whole = (first[row] as number) - (last[row] as number)
    return (value - (end[row] as number) - share * whole) / total
  })
  return pooledScatter(linesOf(legs, motion.surfaceLoad, beyondShare))
}

export const segmentNames = (
  stations: readonly string[],
): readonly (readonly [from: string, to: string])[] => {
  const nodes = stations.length === 0 ? [] : ['load', ...stations, 'fixture']
  return nodes.slice(1).map((to, i) => [nodes[i] as string, to])
}
