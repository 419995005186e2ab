/** Readings and givens → moment of the mass about the hinge. */
import { lazily } from '../../quantity/lazily.ts'
import type { Result } from '../../quantity/types.ts'
import type { Columns, Estimate, Givens, Selection } from '../method.ts'
import { digitsByGroup, meanOf, ofSpread, rowsOf, scatterOfMeans } from '../repeats.ts'
import { at, type Choice, netOf } from './select.ts'

/**
 * The hinge carries no moment, so the scales carry that of the weight: S = Σ r x. Off level by θ, leading edge up, a
 * centre of gravity h above the hinge line lies h·tan θ further aft than along the chord; that is taken back.
 */
const valuesOf = (
  columns: Columns,
  givens: Givens,
  choice: Choice,
  moves?: Float64Array,
): Record<string, number> => {
  const { mass = Number.NaN, chord = Number.NaN, balance_arm: balanceArm = Number.NaN } = givens.numbers
  const { tilt = 0, cg_height: height = 0 } = givens.numbers
  const carried = choice.points.reduce((sum, { rows }, k) => {
    const load = meanOf((row) => netOf(columns, row), rows) + (moves?.[k] ?? 0)
    return sum + load * meanOf((row) => at(columns, 'arm', row), rows)
  }, 0)
  const unbalance = carried - (tilt === 0 ? 0 : mass * height * Math.tan(tilt))
  const lightest = choice.points[choice.lightest]
  return {
    unbalance,
    cg_arm: unbalance / mass,
    balance_ratio: unbalance / (mass * chord),
    weight_to_add: -unbalance / balanceArm,
    least_load: lightest
      ? meanOf((row) => at(columns, 'reading', row), lightest.rows) + (moves?.[choice.lightest] ?? 0)
      : Number.NaN,
  }
}

export const estimate = (
  columns: Columns,
  givens: Givens,
  selection: Selection,
): Result<Estimate, string> => {
  const choice = selection as Choice
  const { points, spread } = choice
  if (points.length === 0) return { ok: false, error: 'no row has a point and a reading' }
  const bare = points.find(({ rows }) => rows.some((row) => Number.isNaN(at(columns, 'arm', row))))
  if (bare) return { ok: false, error: `a row of ${bare.name.replaceAll('_', ' ')} has no arm` }
  const values = Object.fromEntries(
    Object.entries(valuesOf(columns, givens, choice)).filter(([, value]) => Number.isFinite(value)),
  )
  if (spread.dof >= 2) values.repeatability = spread.sd
  const scatter = lazily(() => ({
    ...scatterOfMeans((moves) => valuesOf(columns, givens, choice, moves), points, spread, 'repeats'),
    ...ofSpread(spread),
  }))
  const none = { sd: Number.NaN, dof: 0 }
  const residual = {
    reading: digitsByGroup(columns.reading, spread),
    ...(rowsOf(columns.tare).length > 0 ? { tare: digitsByGroup(columns.tare, none) } : {}),
    arm: digitsByGroup(columns.arm, none),
  }
  return {
    ok: true,
    value: {
      values,
      get scatter() {
        return scatter()
      },
      residual,
    },
  }
}
