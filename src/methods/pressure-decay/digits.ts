/** Columns whose digit is not shaken by scatter: it does not average out, and it makes steps in the readings. */
import type { Columns } from '../method.ts'
import { STANDARD_GRAVITY } from './constants.ts'
import type { Points } from './points.ts'
import { columnsUsed } from './readings.ts'
import type { Hold } from './select.ts'

export const coarseColumns = (columns: Columns, hold: Hold): string[] =>
  columnsUsed(columns).filter((name) => (hold.residual[name] ?? 0) < (columns[name]?.resolution ?? 0) / 2)

/** Change of the compensated pressure with a column, Pa per unit of the column. */
const sensitivity = (name: string, columns: Columns, points: Points): number => {
  const absolute = (points.gauge[0] ?? 0) + points.ambient
  switch (name) {
    case 'temperature':
      return columns.reference_pressure_reading ? 0 : absolute / points.temperature
    case 'leg_article':
    case 'leg_open':
      return (columns.leg_article?.density ?? columns.leg_open?.density ?? 0) * STANDARD_GRAVITY
    case 'baro':
      return columns.absolute_pressure ? 0 : 1
    default:
      return 1
  }
}

/** Scatter that the steps of such digits alone make in the compensated pressure, Pa. */
export const digitScatter = (columns: Columns, hold: Hold, points: Points): number =>
  Math.hypot(
    ...coarseColumns(columns, hold).map(
      (name) => (sensitivity(name, columns, points) * (columns[name]?.resolution ?? 0)) / Math.sqrt(12),
    ),
  )
