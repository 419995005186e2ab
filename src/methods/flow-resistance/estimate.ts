/** Readings and givens → what the vent or line drops, and at which flow that counts. */
import type { Part, Result } from '../../quantity/types.ts'
import type { Columns, Estimate, Givens, Selection } from '../method.ts'
import { type Curve, curveOf, dropAt, intercept, scatterOf } from './curve.ts'
import { askedOf, type Choice } from './select.ts'
import { wayWords } from './words.ts'

type Scatter = Record<string, Part>
type Found = { readonly value: number; readonly scatter: Scatter }

const times = (scatter: Scatter, factor: number): Scatter =>
  Object.fromEntries(Object.entries(scatter).map(([key, part]) => [key, { ...part, u: factor * part.u }]))

/** Measures of one way under their bare names. What cannot be had is left out. */
const ofWay = (curve: Curve, givens: Givens): Record<string, Found> => {
  const { fit, highest } = curve
  const asked = askedOf(givens, curve.way)
  const found: Record<string, Found> = { highest_flow: { value: highest, scatter: {} } }
  if (asked !== undefined) {
    found.required_flow = { value: asked, scatter: {} }
    found.flow_reached = { value: highest / asked, scatter: {} }
  }
  if (!fit) return found
  const drop = (flow: number): Found => ({
    value: dropAt(curve, flow),
    scatter: scatterOf(curve, flow, flow * flow),
  })
  found.laminar_coefficient = { value: fit.coefficients[0] ?? Number.NaN, scatter: scatterOf(curve, 1, 0) }
  found.turbulent_coefficient = { value: fit.coefficients[1] ?? Number.NaN, scatter: scatterOf(curve, 0, 1) }
  if (asked !== undefined) found.drop_at_required = drop(asked)
  const top = drop(highest)
  const density = givens.numbers.gas_density
  if (density !== undefined && top.value > 0) {
    const area = highest * Math.sqrt(density / (2 * top.value))
    found.effective_area = { value: area, scatter: times(top.scatter, -area / (2 * top.value)) }
  }
  const start = intercept(curve)
  if (start) {
    const pool = `start-${curve.way}`
    const part: Part = { u: start.u, dof: start.dof, pool, shape: 't' }
    found.drop_at_no_flow = { value: start.value, scatter: { [pool]: part } }
  }
  return found
}

const ratioOf = (curves: readonly Curve[]): Found | null => {
  const inwards = curves.find(({ way }) => way === 'in')
  const outwards = curves.find(({ way }) => way === 'out')
  if (!inwards || !outwards) return null
  const flow = Math.min(inwards.highest, outwards.highest)
  const [top, bottom] = [dropAt(inwards, flow), dropAt(outwards, flow)]
  if (!(bottom > 0)) return null
  const value = top / bottom
  const scatter = {
    ...times(scatterOf(inwards, flow, flow * flow), 1 / bottom),
    ...times(scatterOf(outwards, flow, flow * flow), -value / bottom),
  }
  return { value, scatter }
}

/** Scatter of single readings about the curves: of the drop, and what it would be as one of the flow. */
const residualOf = (curves: readonly Curve[]): Record<string, number> => {
  const fits = curves.filter(({ fit }) => fit && fit.dof > 0)
  const dof = fits.reduce((sum, { fit }) => sum + (fit?.dof ?? 0), 0)
  if (dof === 0) return {}
  const squares = fits.reduce((sum, { fit }) => sum + (fit?.dof ?? 0) * (fit?.residual ?? 0) ** 2, 0)
  const drop = Math.sqrt(squares / dof)
  const steepest = Math.max(...fits.map((curve) => Math.abs(dropAt(curve, curve.highest)) / curve.highest))
  return { pressure_drop: drop, flow: steepest > 0 ? drop / steepest : 0 }
}

export const estimate = (
  columns: Columns,
  givens: Givens,
  selection: Selection,
): Result<Estimate, string> => {
  const { groups, worst } = selection as Choice
  if (groups.length === 0)
    return { ok: false, error: 'No row has both a flow and a drop, and a direction where that was read.' }
  const curves = groups.map((group) => curveOf(columns, group))
  const against = curves.find((curve) => dropAt(curve, curve.highest) < 0)
  if (against)
    return {
      ok: false,
      error: `The drop ${wayWords(against.way)} is negative: it is counted positive along the flow, both ways.`,
    }
  const values: Record<string, number> = {}
  const scatter: Record<string, Scatter> = {}
  const put = (name: string, found: Found) => {
    values[name] = found.value
    scatter[name] = found.scatter
  }
  curves.forEach((curve, k) => {
    for (const [name, found] of Object.entries(ofWay(curve, givens))) {
      if (curve.way !== 'any') put(`${name}_${curve.way}`, found)
      if (k === worst) put(name, found)
    }
  })
  const ratio = ratioOf(curves)
  if (ratio) put('direction_ratio', ratio)
  return { ok: true, value: { values, scatter, residual: residualOf(curves) } }
}
