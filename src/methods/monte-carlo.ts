/**
 * The same measures by Monte Carlo (JCGM 101): each source is drawn from its own distribution, all its actions
 * moved together, and the method's `estimate` called anew. The scatter of fits is drawn from Student's t.
 */
import { coverage, type Drawn, drawSources } from '../quantity/monte-carlo.ts'
import { random } from '../quantity/random.ts'
import { mean, standardDeviation } from '../quantity/statistics.ts'
import { type Measured, type MeasureInput, moved } from './measure.ts'
import type { Inputs } from './movements.ts'
import type { Action } from './perturb.ts'

export type Simulated = {
  readonly mean: number
  readonly u: number
  readonly low: number
  readonly high: number
}

const summary = (values: readonly number[]): Simulated => {
  const sorted = Float64Array.from(values).sort()
  const [low, high] = coverage(sorted, 0.95)
  return { mean: mean(sorted), u: standardDeviation(sorted), low, high }
}

/** Mean, standard uncertainty and probabilistically symmetric 95 % interval of each measure with a known budget. */
export const simulateMeasures = (
  input: MeasureInput,
  measured: Measured,
  draws: number,
  seed: number,
): Readonly<Record<string, Simulated>> => {
  const known = Object.entries(measured.measures).flatMap(([name, { parts }]) =>
    parts ? [{ name, fits: Object.entries(parts).filter(([source]) => source.startsWith('fit:')) }] : [],
  )
  const moves = [...measured.sources.values()].filter((actions) => actions[0] && !actions[0].unknown)
  const scatter = new Map(known.flatMap(({ fits }) => fits))
  const drawn: Drawn[] = [
    ...moves.map((actions) => actions[0] as Action),
    ...[...scatter].map(([source, part]) => ({ source, ...part })),
  ]
  const place = new Map(drawn.map(({ source }, at) => [source, at]))
  const z = new Float64Array(drawn.length)
  const generator = random(seed)
  const start: Inputs = { columns: measured.columns, givens: measured.givens }
  const samples = new Map<string, number[]>(known.map(({ name }) => [name, []]))
  for (let draw = 0; draw < draws; draw += 1) {
    drawSources(drawn, z, generator)
    const inputs = moves.reduce((state, actions, at) => moved(state, actions, z[at] as number), start)
    const result = input.method.estimate(inputs.columns, inputs.givens, measured.selection, true)
    if (!result.ok) continue
    for (const { name, fits } of known) {
      const value = result.value.values[name]
      if (value === undefined || !Number.isFinite(value)) continue
      const moveOfFit = fits.reduce(
        (sum, [source, part]) => sum + part.u * (z[place.get(source) ?? -1] ?? 0),
        0,
      )
      samples.get(name)?.push(value + moveOfFit)
    }
  }
  return Object.fromEntries(
    [...samples].flatMap(([name, values]) => (values.length > 1 ? [[name, summary(values)]] : [])),
  )
}
