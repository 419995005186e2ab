/** A proof load from truth to verdict: its set-up in numbers, for the bench of all methods. */
import type { Columns, Instruments } from '../../../src/methods/method.ts'
import { method } from '../../../src/methods/proof-load/index.ts'
import * as bench from '../bench.ts'
import { given } from '../parts.ts'

export type Setup = {
  readonly target: number
  readonly hold?: number
  readonly tolerance?: number
  readonly words?: Readonly<Record<string, string>>
  readonly fields?: Readonly<Record<string, unknown>>
  readonly instruments: Instruments
}

const whole = ({ target, hold = 3, tolerance = 0, ...rest }: Setup): bench.Setup => ({
  ...rest,
  method,
  inputs: {
    target: given(target, 'force'),
    hold: given(hold, 'time'),
    tolerance: given(tolerance, 'number'),
  },
})

export const givensOf = (setup: Setup) => bench.givensOf(whole(setup))

export const measured = (setup: Setup, columns: Columns) => bench.measured(whole(setup), columns)

/** Verdicts of criteria, each guarded at 95 %, with the reasons. */
export const judged = (setup: Setup, columns: Columns, ...criteria: string[]) =>
  criteria.map((accept) => bench.judged(whole(setup), columns, accept))

/** How often all criteria pass in so many simulated runs; `fault` spoils the columns outside `rehearse`. */
export const passes = (
  setup: Setup,
  truth: bench.Truth,
  criteria: readonly string[],
  count: number,
  fault: (columns: Columns, seed: number) => Columns = (columns) => columns,
): number => {
  let passed = 0
  for (let seed = 1; seed <= count; seed += 1) {
    const columns = fault(bench.rehearsed(whole(setup), truth, seed), seed)
    if (judged(setup, columns, ...criteria).every(({ verdict }) => verdict === 'pass')) passed += 1
  }
  return passed / count
}
