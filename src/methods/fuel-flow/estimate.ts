/** Readings and givens → flow against what the engine needs, and what stays in the tank. */
import { fitLine } from '../../quantity/fit.ts'
import type { Part, Result } from '../../quantity/types.ts'
import { widening } from '../blocks.ts'
import { halvesOf } from '../halves.ts'
import type { Columns, Estimate, Givens, Selection } from '../method.ts'
import { pointsOf } from './points.ts'
import { isKind } from './schema.ts'
import { at, type Choice } from './select.ts'

type Found = { readonly value: number; readonly scatter?: Record<string, Part> }

export const factorOf = ({ numbers, words }: Givens): number =>
  numbers.factor ?? (words.feed === 'gravity' ? 1.5 : words.feed === 'pump' ? 1.25 : Number.NaN)

/** Volume of an amount that was read or given as volume or as mass; NaN where the density is missing. */
const asVolume = (amount: number, isMass: boolean, { numbers }: Givens): number =>
  isMass ? amount / (numbers.density ?? Number.NaN) : amount

/** The required flow in what was collected, so that a density that cancels is not needed; NaN where one is missing. */
export const requiredAs = (collected: Choice['collected'], givens: Givens): number => {
  const { required = Number.NaN, density = Number.NaN } = givens.numbers
  const asked = factorOf(givens) * required
  const given = isKind(givens.dims?.required, 'mass-flow') ? 'mass' : 'volume'
  if (given === collected) return asked
  return collected === 'mass' ? asked * density : asked / density
}

/** Slope of the second half; the scatter is that about the lines of both halves. Null below five points. */
const lateLine = (
  x: Float64Array,
  y: Float64Array,
): { readonly slope: number; readonly u: number; readonly dof: number } | null => {
  const middle = Math.floor(x.length / 2)
  if (x.length < 5) return null
  const [first, late] = [
    fitLine(x.subarray(0, middle), y.subarray(0, middle)),
    fitLine(x.subarray(middle), y.subarray(middle)),
  ]
  const dof = first.dof + late.dof
  const squares = [...first.residuals, ...late.residuals].reduce((sum, e) => sum + e * e, 0)
  const spread = x.subarray(middle).reduce((sum, value) => sum + (value - late.xMean) ** 2, 0)
  return { slope: late.slope, u: Math.sqrt(squares / dof / spread), dof }
}

const unusableOf = (columns: Columns, givens: Givens, { collected, start, firstSign }: Choice): number => {
  if (firstSign === null) return Number.NaN
  const run = at(columns, collected, firstSign) - at(columns, collected, start)
  const aboard = givens.numbers.fuel_aboard ?? Number.NaN
  return (
    asVolume(aboard, isKind(givens.dims?.fuel_aboard, 'mass'), givens) -
    asVolume(run, collected === 'mass', givens)
  )
}

const stateOf = (columns: Columns, { numbers }: Givens, { lowest }: Choice): Record<string, Found> => {
  const { least_head, least_attitude, attitude } = numbers
  const head = lowest === null ? Number.NaN : at(columns, 'head', lowest)
  return {
    lowest_head: { value: head },
    head_margin: { value: (least_head ?? Number.NaN) - head },
    attitude_margin: { value: (attitude ?? Number.NaN) - (least_attitude ?? Number.NaN) },
  }
}

export const estimate = (
  columns: Columns,
  givens: Givens,
  selection: Selection,
): Result<Estimate, string> => {
  const choice = selection as Choice
  const { time, collected } = pointsOf(columns, choice)
  if (time.length < 2) return { ok: false, error: 'fewer than two readings show a flow' }
  const line = fitLine(time, collected)
  if (!(line.slope > 0)) return { ok: false, error: 'what was collected does not grow with time' }
  const isMass = choice.collected === 'mass'
  const asked = requiredAs(choice.collected, givens)
  const late = lateLine(time, collected)
  const halves = halvesOf(time, collected)

  const wide = choice.rows.length > time.length ? widening(line.residuals) : 1
  const part = (pool: string, u: number, dof: number, by: number): Record<string, Part> =>
    dof >= 1 && u > 0 ? { [pool]: { u: u * by, dof, pool, shape: 't' } } : {}
  const whole = (by: number): Found => ({
    value: line.slope * by,
    scatter: part('line', wide * line.uSlope, line.dof, by),
  })
  const second = (by: number): Found =>
    late
      ? { value: late.slope * by, scatter: part('late', wide * late.u, late.dof, by) }
      : { value: Number.NaN }
  const { density = Number.NaN } = givens.numbers
  const perVolume = isMass ? 1 / density : 1
  const found: Record<string, Found> = {
    flow: whole(perVolume),
    mass_flow: whole(isMass ? 1 : density),
    required_flow: { value: asked * perVolume },
    flow_ratio: whole(1 / asked),
    late_flow: second(perVolume),
    late_ratio: second(1 / asked),
    flow_change: halves
      ? {
          value: halves.value / line.slope,
          scatter: part('halves', wide * halves.u, halves.dof, 1 / line.slope),
        }
      : { value: Number.NaN },
    ...stateOf(columns, givens, choice),
    unusable: { value: unusableOf(columns, givens, choice) },
  }
  const had = Object.entries(found).filter(([, { value }]) => Number.isFinite(value))
  return {
    ok: true,
    value: {
      values: Object.fromEntries(had.map(([name, { value }]) => [name, value])),
      scatter: Object.fromEntries(had.map(([name, { scatter }]) => [name, scatter ?? {}])),
      residual: { [choice.collected]: choice.residual },
    },
  }
}
