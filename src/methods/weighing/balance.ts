/** Masses at arms → weight and centre of gravity. */
import type { Columns, Givens } from '../method.ts'
import { meanOf } from '../repeats.ts'
import { gravityFactor } from './gravity.ts'
import { type Choice, type ItemRow, netOf } from './select.ts'

type Load = { readonly mass: number; readonly arm: number; readonly side: number }

/** Mean of the arms read in these rows, else the given; NaN where there is neither. */
const armAt = (columns: Columns, givens: Givens, name: string, rows: readonly number[]): number => {
  const read = rows.map((row) => columns.arm?.values[row] ?? Number.NaN).filter((arm) => !Number.isNaN(arm))
  return read.length > 0
    ? meanOf((k) => read[k] as number, [...read.keys()])
    : (givens.numbers[`arm_${name}`] ?? Number.NaN)
}

const sideAt = (givens: Givens, name: string): number => givens.numbers[`side_${name}`] ?? Number.NaN

/** Each point: the mean of its rows on all scales, with the mean of cell k moved by `moves[k]`. */
export const pointLoads = (
  columns: Columns,
  givens: Givens,
  choice: Choice,
  moves?: Float64Array,
): Load[] => {
  const factor = gravityFactor(givens)
  return choice.points.map((point) => {
    const cells = choice.cells.map((cell, k) => ({ ...cell, k })).filter((cell) => cell.point === point)
    const rows = cells.flatMap((cell) => cell.rows)
    const sum = cells.reduce((total, cell) => {
      const mean = meanOf((row) => netOf(columns, cell.column, row), cell.rows) + (moves?.[cell.k] ?? 0)
      return total + mean * cell.rows.length
    }, 0)
    return {
      mass: (factor * sum) / rows.length,
      arm: armAt(columns, givens, point, rows),
      side: sideAt(givens, point),
    }
  })
}

/** By scale where it was weighed, else the given mass, else volume times density. */
export const itemMass = (columns: Columns, givens: Givens, { item, row, column }: ItemRow): number => {
  if (column) return gravityFactor(givens) * netOf(columns, column, row)
  const { numbers } = givens
  const mass = numbers[`mass_${item}`]
  return mass ?? (numbers[`volume_${item}`] ?? Number.NaN) * (numbers[`density_${item}`] ?? Number.NaN)
}

const itemLoads = (columns: Columns, givens: Givens, choice: Choice): Load[] =>
  choice.items.map((entry) => ({
    mass: (entry.action === 'remove' ? -1 : 1) * itemMass(columns, givens, entry),
    arm: armAt(columns, givens, entry.item, [entry.row]),
    side: sideAt(givens, entry.item),
  }))

const total = (loads: readonly Load[], of: (load: Load) => number): number =>
  loads.reduce((sum, load) => sum + of(load), 0)

export type Balance = {
  readonly weighed: number
  readonly weighedMoment: number
  readonly weight: number
  readonly moment: number
  readonly sideMoment: number
}

/**
 * Scales feel the line of gravity. Off level by θ, nose up, a centre of gravity h above the contacts has moved aft by
 * h·tan θ along the body as the contacts see it; that is taken back before anything is added or removed. Sideways alike.
 */
export const balanceOf = (
  columns: Columns,
  givens: Givens,
  choice: Choice,
  moves?: Float64Array,
): Balance => {
  const { pitch = Number.NaN, roll = Number.NaN, cg_height: height = Number.NaN } = givens.numbers
  const points = pointLoads(columns, givens, choice, moves)
  const items = itemLoads(columns, givens, choice)
  const weighed = total(points, ({ mass }) => mass)
  const weighedMoment = total(points, ({ mass, arm }) => mass * arm) - weighed * height * Math.tan(pitch)
  const sideMoment = total(points, ({ mass, side }) => mass * side) - weighed * height * Math.tan(roll)
  return {
    weighed,
    weighedMoment,
    weight: weighed + total(items, ({ mass }) => mass),
    moment: weighedMoment + total(items, ({ mass, arm }) => mass * arm),
    sideMoment: sideMoment + total(items, ({ mass, side }) => mass * side),
  }
}
