/** Names that a card gives to points of support and items, and what is made of them. */
import type { Columns, Givens } from '../method.ts'

export type Action = 'weigh' | 'remove' | 'add'
export const ACTIONS: readonly Action[] = ['weigh', 'remove', 'add']

const listOf = (raw: unknown): readonly string[] =>
  Array.isArray(raw) ? raw.filter((name) => typeof name === 'string') : []

export const pointsOf = ({ fields }: Pick<Givens, 'fields'>): readonly string[] => listOf(fields.points)
export const itemsOf = ({ fields }: Pick<Givens, 'fields'>): readonly string[] => listOf(fields.items)

/** `reading`, or one column for each scale (`reading_a`, `reading_left`). */
export const isScale = (column: string): boolean => column === 'reading' || column.startsWith('reading_')

export const scalesOf = (columns: Columns): string[] => Object.keys(columns).filter(isScale)

export const words = (name: string): string => name.replace(/^reading_/, 'scale ').replaceAll('_', ' ')

/** Without the column `action` every row is a point that was weighed. */
export const actionOf = (columns: Columns, row: number): Action => {
  const text = columns.action?.texts?.[row]
  return ACTIONS.find((action) => action === text) ?? 'weigh'
}
