/**
 * Share of each segment in the deflection of the whole circuit. The motion at the stations is referred to the
 * surface, so that compliances in series add up (moment at the surface, angle at the surface).
 */
import {
  type Fitted,
  type Leg,
  linesOf,
  pooledScatter,
  rowScatter,
  type Scatter,
  sharedSlope,
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

/** Compliance of each segment: the slope, on the load, of the difference of motion between its ends. */
export const segmentsOf = (motion: Motion, legs: readonly Leg[]): Segment[] =>
  motion.nodes.slice(1).flatMap((to, i): Segment[] => {
    const from = motion.nodes[i]
    if (!from) return []
    const between = from.motion.map((value, row) => value - (to.motion[row] as number))
    const lines = linesOf(legs, motion.surfaceLoad, between)
    if (lines.length === 0) return []
    return [
      {
        from: from.name,
        to: to.name,
        compliance: sharedSlope(lines),
        scatter: pooledScatter(lines),
        rows: rowScatter(lines, motion.surfaceLoad, between),
      },
    ]
  })

export const segmentNames = (
  stations: readonly string[],
): readonly (readonly [from: string, to: string])[] => {
  const nodes = stations.length === 0 ? [] : ['load', ...stations, 'fixture']
  return nodes.slice(1).map((to, i) => [nodes[i] as string, to])
}
