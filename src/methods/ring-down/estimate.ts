/** Readings → frequency, damping and what speaks for or against one clean mode, with the scatter of the fits. */
import type { Kind } from '../../quantity/kinds.ts'
import { KINDS } from '../../quantity/kinds.ts'
import type { Part, Result } from '../../quantity/types.ts'
import type { Columns, Estimate, Givens, Selection } from '../method.ts'
import { blocksOf, decrementOf, noiseNear } from './blocks.ts'
import { type Halves, halvesOf } from './halves.ts'
import type { Fit } from './least-squares.ts'
import {
  amplitudeOf,
  type Derived,
  dampingOf,
  fitOscillation,
  frequencyOf,
  naturalFrequencyOf,
  OMEGA,
  partsOf,
} from './oscillation.ts'
import { signalKinds } from './schema.ts'
import { asDecay, type Decay, pointsOf } from './select.ts'

type Scatter = Readonly<Record<string, Part>>

/** Kind of the signal that was read. */
export const kindOfSignal = (columns: Columns): Kind =>
  signalKinds.find((kind) => columns.signal?.dim.every((x, i) => x === KINDS[kind].dim[i])) ?? 'acceleration'

export type Fitted = {
  readonly t: Float64Array
  readonly fit: Fit
  readonly halves: Halves
  readonly blocks: ReturnType<typeof blocksOf>
}

/** The fits themselves, for estimate, conditions and figures. */
export const fitDecay = (columns: Columns, decay: Decay): Fitted | null => {
  if (decay.refused) return null
  const { t, y } = pointsOf(columns, decay.rows)
  const fit = fitOscillation(t, y, decay.start)
  if (!fit) return null
  return {
    t,
    fit,
    halves: halvesOf(t, y, fit, decay.half, decay.halves),
    blocks: blocksOf(t, y, fit, decay.blocks),
  }
}

export const estimate = (columns: Columns, _: Givens, selection: Selection): Result<Estimate, string> => {
  const decay = asDecay(selection)
  const fitted = fitDecay(columns, decay)
  if (!fitted)
    return { ok: false, error: decay.refused ?? 'The fit of one damped oscillation does not settle.' }
  const { fit, halves, blocks } = fitted
  const single = Math.sqrt(fit.squares / fit.dof)
  const noise = noiseNear(blocks, columns.signal?.resolution ?? 0)
  const values: Record<string, number> = {}
  const scatter: Record<string, Scatter> = {}

  const part = (u: number): Part => ({ u, dof: noise?.dof ?? 1, pool: 'noise', shape: 't' })
  const put = (name: string, of: Fit | null | undefined, derive: (fit: Fit) => Derived, pool: string) => {
    if (!of || !noise) return
    const derived = derive(of)
    values[name] = derived.value
    const parts = partsOf(of, derived, noise.s)
    scatter[name] = Object.fromEntries(parts.map((u, k) => [`${pool}/${k}`, part(u)]))
  }
  put('frequency', fit, frequencyOf, 'decay')
  put('natural_frequency', fit, naturalFrequencyOf, 'decay')
  put('damping_ratio', fit, dampingOf, 'decay')
  put('amplitude', fit, amplitudeOf, 'decay')
  const [early, late] = halves
  put('damping_early', early, dampingOf, 'early')
  put('damping_late', late, dampingOf, 'late')
  if (values.damping_early !== undefined && values.damping_late !== undefined) {
    values.damping_change = values.damping_late - values.damping_early
    const negative = Object.entries(scatter.damping_early ?? {}).map(([k, { u }]) => [k, part(-u)])
    scatter.damping_change = { ...scatter.damping_late, ...Object.fromEntries(negative) }
  }
  const decrement =
    noise && decrementOf(blocks.slice(0, decay.clear), fit.parameters[OMEGA] as number, noise.s)
  if (decrement) {
    values.log_decrement = decrement.value
    scatter.log_decrement = { 'decrement/slope': part(decrement.u) }
  }
  const amplitude = amplitudeOf(fit).value
  values.fit_residual = single / amplitude
  // A standard deviation from ν degrees of freedom is known to 1/√(2ν) (JCGM 100, E.4.3).
  scatter.fit_residual = { 'residual/size': part(values.fit_residual / Math.sqrt(2 * fit.dof)) }
  return {
    ok: true,
    value: {
      values,
      scatter,
      residual: { signal: single },
      kinds: { amplitude: kindOfSignal(columns) },
    },
  }
}
