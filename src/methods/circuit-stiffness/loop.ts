/**
 * A circuit as a model: a spring in series with friction and play. Friction lets the force in the spring lag behind
 * the load by up to f; play adds half its width on the side of the force. Its branches are
 * x = (F ∓ f)·c ± g/2, and after each turn it sticks until the load has changed by 2f.
 */
export type Circuit = {
  /** Motion per load. */
  readonly compliance: number
  readonly freePlay: number
  /** As a load at the loaded end. */
  readonly friction: number
  /** Curve of the spring itself: motion for a force in it. Absent: straight. */
  readonly spring?: (force: number) => number
}

/** Deflection at each load, in the order of loading, from rest in the middle of the play. */
export const loopOf = (circuit: Circuit, loads: readonly number[]): number[] => {
  const { compliance, freePlay, friction } = circuit
  const spring = circuit.spring ?? ((force: number) => force * compliance)
  let force = 0
  return loads.map((load) => {
    force = Math.min(Math.max(force, load - friction), load + friction)
    return spring(force) + (freePlay / 2) * Math.sign(force)
  })
}

/** Loads of a test: up, back, down, back, in equal steps; `cycles` times from zero. */
export const loadPlan = (peak: number, steps: number, cycles: number): number[] => {
  const quarter = Array.from({ length: steps }, (_, i) => (i + 1) / steps)
  const back = quarter.map((_, i) => (steps - i - 1) / steps)
  const once = [...quarter, ...back, ...quarter.map((x) => -x), ...back.map((x) => -x)]
  return [0, ...Array.from({ length: cycles }, () => once).flat()].map((x) => x * peak + 0)
}
