/** Units that stand in the head of pasted cells, against those of the table. */
import { columnUnit } from '../format/column-units.ts'
import { sameDimension } from '../quantity/dimension.ts'
import { KINDS } from '../quantity/kinds.ts'
import type { Dimension } from '../quantity/types.ts'
import { typedNumber } from './numbers.ts'
import type { ColumnEntry } from './state.ts'

export type HeadUnit = {
  /** As the table writes it; empty where the head says none. */
  readonly unit: string
  /** It stands in a line of units, so it is meant as one whatever it is. */
  readonly meant: boolean
}

const isClock = (unit: string): boolean => unit === 'hh:mm' || unit === 'hh:mm:ss'

const dimensionOf = (unit: string): Dimension | null => {
  if (isClock(unit)) return KINDS.time.dim
  const read = columnUnit(unit)
  return read.ok ? read.value.dim : null
}

/** A dash below a name says that there is none. */
const bare = (cell: string): string =>
  cell
    .trim()
    .replace(/^[[(]|[\])]$/g, '')
    .trim()
    .replaceAll(' ', '·')
    .replace(/^[-–—]$/, '')

/** Of `Pressure (mbar)`, `Pressure [mbar]` and `Pressure, mbar`: `mbar`. */
const behind = (head: string): string => {
  const [, bracketed, listed] = /[([]([^)\]]*)[)\]]|,(.*)$/.exec(head) ?? []
  return (bracketed ?? listed ?? '').trim()
}

/** A line with a unit in it and no number. */
export const isUnits = (row: readonly string[] = []): boolean =>
  row.every((cell) => typedNumber(cell).is === 'other' || cell.trim() === '1') &&
  row.some((cell) => cell.trim() !== '1' && dimensionOf(bare(cell)) !== null)

export const headUnit = (head: string | undefined, below: string | undefined): HeadUnit => {
  const meant = bare(below ?? '')
  return meant === '' ? { unit: behind(head ?? ''), meant: false } : { unit: meant, meant: true }
}

export type UnitsAgree = {
  /** The column with the unit that its cells are in. */
  readonly column: ColumnEntry
  /** What was understood. */
  readonly note: string
  /** Why the cells cannot be taken; empty where they can. */
  readonly refused: string
}

/** `isEmpty`: nothing stands in that column of the table yet, so the pasted unit may be taken over. */
export const agreeOn = (column: ColumnEntry, { unit, meant }: HeadUnit, isEmpty: boolean): UnitsAgree => {
  const { name, unit: own } = column
  const same = { column, note: '', refused: '' }
  if (unit === '' || own === 'text' || unit.replaceAll(' ', '·') === own) return same
  const written = unit.replaceAll(' ', '·')
  const [there, here] = [dimensionOf(written), dimensionOf(own)]
  if (there === null)
    return meant
      ? { ...same, refused: `${name}: \`${unit}\` below its name is no unit` }
      : { ...same, note: `${name}: \`${unit}\` in its head is no unit; read as ${own}` }
  if (here === null || !sameDimension(there, here))
    return { ...same, refused: `${name} is pasted in ${unit}, which does not go with ${own}` }
  if (isEmpty)
    return { ...same, column: { ...column, unit: written }, note: `${name}: in ${unit}, as pasted` }
  return {
    ...same,
    refused: `${name} is pasted in ${unit} and stands in ${own} in the table: paste it in ${own}, or convert the table first`,
  }
}
