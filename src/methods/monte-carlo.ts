/**
 * The same measures by Monte Carlo (JCGM 101): each source is drawn from its own distribution, all its actions
 * moved together, and the method's `estimate` called anew. The scatter of fits is drawn from Student's t.
 */
import { drawOf, normal, random } from '../quantity/random.ts'
import type { Measured, MeasureInput } from './measure.ts'
import { moved } from './measure.ts'
import type { Inputs } from './perturb.ts'

export type Simulated = {
  readonly mean: number
  readonly u: number
  readonly low: number
  readonly high: number
}

const summary = (values: number[]): Simulated => {
  const sorted = values.toSorted((a, b) => a - b)
  const mean = sorted.reduce((sum, value) => sum + value, 0) / sorted.length
  const variance = sorted.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (sorted.length - 1)
  const at = (share: number) =>
    sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] as number
  return { mean, u: Math.sqrt(variance), low: at(0.025), high: at(0.975) }
}

/** Mean, standard uncertainty and probabilistically symmetric 95 % interval of each measure with a known budget. */
export const simulateMeasures = (
  input: MeasureInput,
  measured: Measured,
  draws: number,
  seed: number,
): Readonly<Record<string, Simulated>> => {
  const uniform = random(seed)
  const gaussian = normal(uniform)
  const start: Inputs = { columns: input.columns, givens: measured.givens }
  const names = Object.entries(measured.measures).flatMap(([name, measure]) => (measure.parts ? [name] : []))
  const fits = new Map(
    Object.values(measured.measures).flatMap((measure) =>
      Object.entries(measure.parts ?? {}).filter(([source]) => source.startsWith('fit:')),
    ),
  )
  const samples: Record<string, number[]> = Object.fromEntries(names.map((name) => [name, []]))
  for (let draw = 0; draw < draws; draw += 1) {
    let inputs = start
    for (const actions of measured.sources.values()) {
      const [first] = actions
      if (!first || first.unknown) continue
      inputs = moved(inputs, actions, drawOf(first.shape, first.dof, uniform, gaussian))
    }
    const z = new Map([...fits].map(([source, part]) => [source, drawOf('t', part.dof, uniform, gaussian)]))
    const result = input.method.estimate(inputs.columns, inputs.givens, measured.selection)
    if (!result.ok) continue
    for (const name of names) {
      const value = result.value.values[name]
      if (value === undefined || !Number.isFinite(value)) continue
      const scatter = Object.entries(measured.measures[name]?.parts ?? {}).reduce(
        (sum, [source, part]) => sum + part.u * (z.get(source) ?? 0),
        0,
      )
      samples[name]?.push(value + scatter)
    }
  }
  return Object.fromEntries(
    names.flatMap((name) => {
      const values = samples[name] as number[]
      return values.length > 1 ? [[name, summary(values)]] : []
    }),
  )
}
