/** What bars a pass: the required flow not reached, a way not tested, readings that do not follow the curve. */
import { tCdf } from '../../quantity/distribution.ts'
import { coverageFactor, effectiveDof, standardUncertainty } from '../../quantity/quantity.ts'
import type { Quantity } from '../../quantity/types.ts'
import { vonNeumann } from '../../quantity/von-neumann.ts'
import type { Columns, Givens, Measures, Remark, Selection } from '../method.ts'
import { curveOf } from './curve.ts'
import { requiredFlow } from './required.ts'
import type { Choice, Group } from './select.ts'
import { litres, pascals, percent, wayWords } from './words.ts'

const FEWEST_DOF = 3
/** From here on air is thinner at the far end by enough to matter: 5 kPa of 100 kPa. */
const COMPRESSIBLE = 5000
const CURVE = ['laminar_coefficient', 'turbulent_coefficient', 'effective_area', 'drop_at_required']

type Way = Group['way']

/** Names under which measures of a way appear; which way is the worse is not known while one of them is in doubt. */
const names = (way: Way, stems: readonly string[]): string[] =>
  stems.flatMap((stem) => [stem, ...(way === 'any' ? [] : [`${stem}_${way}`])])

const bar = (text: string, measures: readonly string[]): Remark => ({ effect: 'bars-pass', text, measures })
const note = (text: string): Remark => ({ effect: 'note', text })
const after = (way: string): string => (wayWords(way) ? ` ${wayWords(way)}` : '')

/** P(value ≥ bound), null where the uncertainty is not known. */
const probabilityAbove = (quantity: Quantity, bound: number): number | null => {
  const u = standardUncertainty(quantity)
  if (u === null) return null
  const room = quantity.value - bound
  return u > 0 ? tCdf(room / u, effectiveDof(quantity)) : room >= 0 ? 1 : 0
}

const reached = (measures: Measures, way: Way, p: number): Remark[] => {
  const of = (name: string) => measures[way === 'any' ? name : `${name}_${way}`]
  const ratio = of('flow_reached')
  const [asked, highest] = [of('required_flow'), of('highest_flow')]
  if (!ratio || !asked || !highest) return []
  const barred = names(way, ['drop_at_required'])
  const probability = probabilityAbove(ratio, 1)
  if (probability === null)
    return [bar(`Whether the required flow was reached is not known: ${ratio.why.join('; ')}.`, barred)]
  if (probability >= p) return []
  return [
    bar(
      `The required flow of ${litres(asked.value)}${after(way)} was not reached with ${percent(p)} confidence: the highest reading is ${litres(highest.value)}. The drop there is extrapolated.`,
      barred,
    ),
  ]
}

/** A closed flap, or a gauge that was not at zero: then the curve through the origin is not that of the readings. */
const throughZero = (measures: Measures, way: Way, p: number): Remark[] => {
  const start = measures[way === 'any' ? 'drop_at_no_flow' : `drop_at_no_flow_${way}`]
  const u = start ? standardUncertainty(start) : null
  if (!start || u === null || !(u > 0)) return []
  const limit = coverageFactor(start, Math.max(p, 0.95)) * u
  if (Math.abs(start.value) <= limit) return []
  return [
    bar(
      `The drop${after(way)} does not go to zero with the flow: it meets zero flow at ${pascals(start.value)}, more than its uncertainty of ${pascals(limit)}. A flap or valve opens at a pressure, or the gauge was not at zero.`,
      names(way, CURVE),
    ),
  ]
}

const shape = (columns: Columns, group: Group): Remark[] => {
  const { way } = group
  const curve = curveOf(columns, group)
  const barred = names(way, CURVE)
  if (!curve.fit || curve.fit.dof < FEWEST_DOF)
    return [
      bar(
        `${curve.flow.length} flows${after(way)} are too few to show how they scatter about the curve: ${FEWEST_DOF + 2} different ones are needed.`,
        barred,
      ),
    ]
  const { residuals, residual } = curve.fit
  const order = Array.from(curve.flow.keys()).sort((a, b) => (curve.flow[a] ?? 0) - (curve.flow[b] ?? 0))
  const slope = (curve.drop[order.at(-1) ?? 0] ?? 0) / curve.highest
  const digits = Math.hypot(columns.pressure_drop?.resolution ?? 0, slope * (columns.flow?.resolution ?? 0))
  // Steps of digits are alike from flow to flow and are in the budget as such.
  if (residual <= digits / Math.sqrt(12)) return []
  if (!vonNeumann(order.map((row) => residuals[row] ?? 0)).correlated) return []
  return [
    bar(
      `The readings${after(way)} bend away from a Q + b Q² (von Neumann ratio along the flow, 1 %): a flap that moves, or flow that turns from laminar to turbulent.`,
      barred,
    ),
  ]
}

export const conditions = (
  measures: Measures,
  columns: Columns,
  givens: Givens,
  selection: Selection,
  p: number,
): readonly Remark[] => {
  const { groups } = selection as Choice
  const read = new Set(groups.map(({ way }) => way))
  const untested = (['in', 'out'] as const).filter(
    (way) => !read.has('any') && !read.has(way) && requiredFlow(givens, way) !== undefined,
  )
  const bothAsked = requiredFlow(givens, 'in') !== undefined && requiredFlow(givens, 'out') !== undefined
  const highest = Math.max(0, ...(columns.pressure_drop?.values ?? []).filter(Number.isFinite))
  return [
    ...groups.flatMap((group) => [
      ...reached(measures, group.way, p),
      ...shape(columns, group),
      ...throughZero(measures, group.way, p),
    ]),
    ...untested.map((way) =>
      bar(
        `A flow ${wayWords(way)} is required and none was read that way: a flap or check valve passes one way only.`,
        ['drop_at_required', 'flow_reached'],
      ),
    ),
    ...(read.has('any') && bothAsked
      ? [
          note(
            'The direction was not read: the curve is taken for both ways, which holds only without flap or check valve.',
          ),
        ]
      : []),
    ...(highest > COMPRESSIBLE
      ? [
          note(
            `The highest drop is ${pascals(highest)}: above 5 kPa air is not of one density along the vent, and the curve is one of this test only.`,
          ),
        ]
      : []),
    ...(givens.numbers.gas_density === undefined
      ? [note('`gas_density` is not given, so no effective area is.')]
      : []),
  ]
}
