/** Readings and givens → weight, centre of gravity and what is left to the envelope. */
import { lazily } from '../../quantity/lazily.ts'
import type { Result } from '../../quantity/types.ts'
import type { Columns, Estimate, Givens, Selection } from '../method.ts'
import { digitsByGroup, meanOf, ofSpread, scatterOfMeans } from '../repeats.ts'
import { balanceOf, pointLoads } from './balance.ts'
import { envelopeOf, highestMass, limitsAt } from './envelope.ts'
import { gravityFactor } from './gravity.ts'
import { scalesOf } from './names.ts'
import { type Cell, type Choice, netOf } from './select.ts'

/** What cannot be had is not a number here, and left out by `estimate`. */
const valuesOf = (
  columns: Columns,
  givens: Givens,
  choice: Choice,
  moves?: Float64Array,
): Record<string, number> => {
  const { mac = Number.NaN, mac_leading_edge: leadingEdge = Number.NaN } = givens.numbers
  const { weighed, weighedMoment, weight, moment, sideMoment } = balanceOf(columns, givens, choice, moves)
  const cg = moment / weight
  const envelope = envelopeOf(givens)
  const limits = envelope && limitsAt(envelope, weight, cg)
  const at = pointLoads(columns, givens, choice, moves)
  const mean = (cell: Cell) =>
    meanOf((row) => netOf(columns, cell.column, row), cell.rows) + (moves?.[choice.cells.indexOf(cell)] ?? 0)
  return {
    weight,
    moment,
    cg,
    cg_mac: (cg - leadingEdge) / mac,
    cg_lateral: sideMoment / weight,
    weight_as_weighed: weighed,
    cg_as_weighed: weighedMoment / weighed,
    ...(limits ? { cg_forward_margin: cg - limits.forward, cg_aft_margin: limits.aft - cg } : {}),
    ...(envelope ? { weight_margin: highestMass(envelope) - weight } : {}),
    ...Object.fromEntries(choice.points.map((point, k) => [`at_${point}`, at[k]?.mass ?? Number.NaN])),
    ...(choice.apart
      ? { scale_difference: gravityFactor(givens) * (mean(choice.apart[0]) - mean(choice.apart[1])) }
      : {}),
  }
}

const finite = (values: Readonly<Record<string, number>>): Record<string, number> =>
  Object.fromEntries(Object.entries(values).filter(([, value]) => Number.isFinite(value)))

export const estimate = (
  columns: Columns,
  givens: Givens,
  selection: Selection,
): Result<Estimate, string> => {
  const choice = selection as Choice
  const { cells, points, spread } = choice
  const bare = points.filter((point) => !cells.some((cell) => cell.point === point))
  if (points.length === 0) return { ok: false, error: 'the card names no points of support' }
  if (bare.length > 0)
    return { ok: false, error: `no scale was read under ${bare.join(', ')}: the weight on it is not known` }
  const values = finite(valuesOf(columns, givens, choice))
  if (!((values.weight ?? Number.NaN) > 0))
    return { ok: false, error: 'what is left after all that is removed is not a positive mass' }
  if (spread.dof >= 2) values.repeatability = spread.sd
  const scatter = lazily(() => ({
    ...scatterOfMeans((moves) => valuesOf(columns, givens, choice, moves), cells, spread, 'repeats'),
    ...ofSpread(spread),
  }))
  const none = { sd: Number.NaN, dof: 0 }
  const residual = Object.fromEntries([
    ...scalesOf(columns).map((name) => [name, digitsByGroup(columns[name], spread)]),
    ...['tare', 'arm'].map((name) => [name, digitsByGroup(columns[name], none)]),
  ])
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
