/** The schema of a method for one card, as concrete as what is known of its columns allows. */
import type { CardRecord, GivenText, RunRecord } from '../format/types.ts'
import type { Columns, Method, Schema } from '../methods/method.ts'
import type { Dimension } from '../quantity/types.ts'

type Dimensions = Readonly<Record<string, Dimension>>

/** Givens and targets that the card names for itself or for one of its articles. */
const givenNames = (card: CardRecord): string[] => [
  ...new Set(
    [card.given, card.targets, ...Object.values(card.articles)].flatMap((each) => Object.keys(each)),
  ),
]

/** Dimensions of the givens that are written as quantities. */
const givenDims = (...written: readonly Readonly<Record<string, GivenText>>[]): Dimensions =>
  Object.fromEntries(
    written.flatMap((each) =>
      Object.entries(each).flatMap(([name, given]) =>
        given.form === 'quantity' ? [[name, given.stated.unit.dim] as const] : [],
      ),
    ),
  )

const schemaOf = (
  method: Method,
  card: CardRecord,
  dims: Dimensions,
  columns: readonly string[],
  given: readonly string[] = [],
  more: Dimensions = {},
): Schema =>
  method.describe?.(card.fields, columns, dims, [...givenNames(card), ...given], {
    ...givenDims(card.given, ...Object.values(card.articles)),
    ...more,
  }) ?? method.schema

/** Before any run: the columns are those that the card asks instruments for, of the dimension of their ranges. */
export const plannedSchema = (method: Method, card: CardRecord, targets: Dimensions = {}): Schema => {
  const dims = Object.entries(card.instruments).flatMap(([name, { range, resolution }]) => {
    const stated = range?.low ?? resolution
    return stated ? [[name, stated.unit.dim] as const] : []
  })
  return schemaOf(method, card, Object.fromEntries(dims), Object.keys(card.instruments), [], targets)
}

export const schemaOfReadings = (method: Method, card: CardRecord, run: RunRecord): Schema => {
  const dims = Object.fromEntries(run.readings.columns.map(({ name, dim }) => [name, dim]))
  return schemaOf(method, card, dims, Object.keys(dims), Object.keys(run.given), givenDims(run.given))
}

export const schemaOfColumns = (method: Method, card: CardRecord, columns: Columns): Schema => {
  const dims = Object.fromEntries(Object.entries(columns).map(([name, { dim }]) => [name, dim]))
  return schemaOf(method, card, dims, Object.keys(dims))
}
