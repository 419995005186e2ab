/** How the measures of a run follow each movement of its inputs, to first order. */
import type { Inputs, Movement } from './movements.ts'
import type { Action } from './perturb.ts'

type Values = Readonly<Record<string, number>>

/** Measure → change by one source's standard uncertainty, signed. */
export type Contribution = (actions: readonly Action[], measure: string) => number

type Step = { readonly movement: Movement; readonly size: number }

/** Each movement once, as far as its largest source goes; a probe only where nothing else moves alike. */
const stepsOf = (sources: Iterable<readonly Action[]>): ReadonlyMap<string, Step> => {
  const steps = new Map<string, Step & { readonly known: boolean }>()
  for (const actions of sources) {
    for (const { movement, size, unknown } of actions) {
      const reach = Math.abs(size)
      const known = unknown === undefined
      const before = steps.get(movement.key)
      if (reach === 0 || (before?.known && !known)) continue
      if (!before || (known && !before.known) || reach > before.size)
        steps.set(movement.key, { movement, size: reach, known })
    }
  }
  return steps
}

/**
 * Central differences, one pair of estimates a movement however many sources share it; a source is the sum over
 * its movements of its size times the derivative (JCGM 100, 5.1.3 with note 2). The step is the largest standard
 * uncertainty of the movement, so that the slope is that of the range which the largest source covers.
 */
export const contributions = (
  sources: ReadonlyMap<string, readonly Action[]>,
  start: Inputs,
  middle: Values,
  valuesAt: (inputs: Inputs) => Values,
): Contribution => {
  const pairs = new Map<string, { up: Values; down: Values; size: number }>()
  for (const [key, { movement, size }] of stepsOf(sources.values())) {
    const up = valuesAt(movement.apply(start, size))
    pairs.set(key, { up, down: valuesAt(movement.apply(start, -size)), size })
  }
  return (actions, measure) => {
    let sum = 0
    for (const { movement, size } of actions) {
      const pair = pairs.get(movement.key)
      if (!pair) continue
      sum += (size / pair.size) * difference(pair.up[measure], pair.down[measure], middle[measure] as number)
    }
    return sum
  }
}

/** Half the difference of both sides; one side alone where the other cannot be computed. */
const difference = (up: number | undefined, down: number | undefined, middle: number): number => {
  const hasUp = up !== undefined && Number.isFinite(up)
  const hasDown = down !== undefined && Number.isFinite(down)
  if (hasUp && hasDown) return (up - down) / 2
  if (hasUp) return up - middle
  if (hasDown) return middle - down
  return 0
}
