/** Digits: each position was rounded anew. */
import type { Columns, ExtraSource, Givens, Selection } from '../method.ts'
import { digitSources } from '../repeats.ts'
import type { Choice } from './select.ts'

export const sources = (columns: Columns, _: Givens, selection: Selection): readonly ExtraSource[] => {
  const { cells, spreads } = selection as Choice
  return (['angle', 'offset', 'force'] as const).flatMap((column) =>
    digitSources(
      column,
      `the ${column}`,
      columns,
      cells
        .filter((cell) => cell.column === column)
        .map(({ name, rows }) => ({ name: name.replaceAll(' ', '_'), rows })),
      spreads[column],
    ),
  )
}
