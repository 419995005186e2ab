/** One simulated run from truth to verdict, as the pipeline does it: rehearse, measure, conditions, probability. */
import { measureRun } from '../../../src/methods/measure.ts'
import type { Columns, InstrumentModel, Measures, Remark } from '../../../src/methods/method.ts'
import { method } from '../../../src/methods/pressure-decay/index.ts'
import { tCdf } from '../../../src/quantity/distribution.ts'
import { KINDS } from '../../../src/quantity/kinds.ts'
import { effectiveDof, exact, expanded, standardUncertainty } from '../../../src/quantity/quantity.ts'
import type { Quantity } from '../../../src/quantity/types.ts'

const kindOf = (name: string) => {
  const given = method.schema.givens.find((field) => field.name === name)
  if (!given) throw new Error(`no given ${name}`)
  return given.kind
}

/** Setpoints as numbers, knowns as [value, standard uncertainty], SI. */
export type GivenNumbers = Readonly<Record<string, number | readonly [number, number]>>

export const quantities = (numbers: GivenNumbers): Record<string, Quantity> =>
  Object.fromEntries(
    Object.entries(numbers).map(([name, stated]) => {
      const dim = KINDS[kindOf(name)].dim
      if (typeof stated === 'number') return [name, exact(stated, dim)]
      const [value, u] = stated
      const pool = `given:card:test/${name}`
      const parts = { [pool]: { u, dof: Number.POSITIVE_INFINITY, pool, shape: 'normal' } } as const
      return [name, { value, dim, parts, why: [] }]
    }),
  )

export type Setup = {
  readonly numbers: GivenNumbers
  readonly words?: Readonly<Record<string, string>>
  readonly fields?: Readonly<Record<string, unknown>>
  readonly instruments: Readonly<Record<string, InstrumentModel>>
}

export const givensOf = ({ numbers, words, fields }: Setup) => ({
  numbers: Object.fromEntries(Object.entries(quantities(numbers)).map(([name, q]) => [name, q.value])),
  words: words ?? { contents: 'dry' },
  fields: fields ?? {},
})

export const measured = (setup: Setup, columns: Columns) => {
  const result = measureRun({
    runId: 'simulated',
    method,
    schema: method.schema,
    columns,
    instruments: setup.instruments,
    inputs: quantities(setup.numbers),
    words: setup.words ?? { contents: 'dry' },
    fields: setup.fields ?? {},
  })
  if (!result.ok) throw new Error(result.error)
  return result.value
}

export type Outcome = {
  readonly measures: Measures
  readonly remarks: readonly Remark[]
  readonly bars: readonly string[]
  /** P(leak_rate < limit); null where the uncertainty is not known. */
  readonly probability: number | null
  readonly pass: boolean
}

export const judged = (setup: Setup, columns: Columns, limit: number, p = 0.95): Outcome => {
  const { measures, givens, selection } = measured(setup, columns)
  const remarks = method.conditions(measures, columns, givens, selection, p)
  const leak = measures.leak_rate as Quantity
  const u = standardUncertainty(leak)
  const probability = u === null ? null : tCdf((limit - leak.value) / u, effectiveDof(leak))
  const bars = remarks.filter((remark) => remark.effect === 'bars-pass').map((remark) => remark.text)
  const below = leak.value < -(expanded(leak)?.U ?? Number.POSITIVE_INFINITY)
  const pass = probability !== null && probability >= p && bars.length === 0 && !below
  return { measures, remarks, bars, probability, pass }
}

/** Share of passes among so many runs; `fault` spoils the columns outside `rehearse`. */
export const passes = (
  setup: Setup,
  truth: Readonly<Record<string, number>>,
  limit: number,
  count: number,
  fault: (columns: Columns, seed: number) => Columns = (columns) => columns,
): { share: number; bars: Record<string, number>; outcomes: Outcome[] } => {
  const outcomes = Array.from({ length: count }, (_, seed) => {
    const columns = method.rehearse(givensOf(setup), truth, setup.instruments, seed + 1)
    return judged(setup, fault(columns, seed + 1), limit)
  })
  const bars: Record<string, number> = {}
  for (const outcome of outcomes) {
    for (const text of outcome.bars) {
      const key = text.slice(0, 40)
      bars[key] = (bars[key] ?? 0) + 1
    }
  }
  return { share: outcomes.filter((outcome) => outcome.pass).length / count, bars, outcomes }
}
