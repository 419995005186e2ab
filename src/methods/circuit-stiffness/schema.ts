/** Givens, columns, measures and card field; `describe` makes them definite for one card and run. */

import { sameDimension } from '../../quantity/dimension.ts'
import { KINDS } from '../../quantity/kinds.ts'
import type { Dimension } from '../../quantity/types.ts'
import type { MeasureField, Schema } from '../method.ts'
import { columns, stationColumn } from './columns.ts'
import { givens, ratio } from './givens.ts'
import { measures, segment } from './measures.ts'
import { type Form, stationsOf } from './motion.ts'
import { segmentNames } from './segments.ts'
import { stations } from './stations.ts'

const withStations = (
  names: readonly string[],
  segments: readonly (readonly [string, string])[],
): Schema => ({
  givens: [...givens, ...names.map(ratio), ratio('fixture')],
  columns: [...columns, ...names.map(stationColumn)],
  measures: [...measures, ...segments.flatMap(([from, to]) => segment(from, to))],
  cardFields: [stations],
})

/** The general schema: `<station>` and `<a>_<b>` stand for the names that a card gives. */
const named = withStations(['<station>'], [['<a>', '<b>']])
const optional = <T extends { readonly name: string; readonly required: boolean }>(
  fields: readonly T[],
): T[] => fields.map((field) => (field.name.includes('<') ? { ...field, required: false } : field))

export const schema: Schema = { ...named, givens: optional(named.givens), columns: optional(named.columns) }

/** Null where it is not settled: force and length may still have an arm. */
const formFrom = (
  dims: Readonly<Record<string, Dimension>>,
  given: readonly string[] | undefined,
): Form | null => {
  const { load, deflection } = dims
  if (given?.includes('arm')) return 'angular'
  if (load && sameDimension(load, KINDS.moment.dim)) return 'angular'
  if (deflection && sameDimension(deflection, KINDS.angle.dim)) return 'angular'
  return given && load && deflection ? 'linear' : null
}

const ONLY_ANGULAR = ['stiffness', 'surface_stiffness']

/** A measure in one form: the first kind is the angular one, `or` the linear one. */
const inForm = (field: MeasureField, form: Form): MeasureField => ({
  ...field,
  or: undefined,
  kind: (form === 'linear' ? field.or?.[0] : undefined) ?? field.kind,
})

/**
 * The schema for the stations of one card. Where the dimensions of the columns and the names of the givens are at
 * hand, the measures are of one kind each: with an arm, or with moment or angle read, angular; else linear.
 */
export const describe = (
  fields: Readonly<Record<string, unknown>>,
  _columns: readonly string[] = [],
  dims: Readonly<Record<string, Dimension>> = {},
  given?: readonly string[],
): Schema => {
  const names = stationsOf({ fields })
  const open = withStations(names, segmentNames(names))
  const form = formFrom(dims, given)
  if (form === null) return open
  const possible = open.measures.filter((field) => form === 'angular' || !ONLY_ANGULAR.includes(field.name))
  return { ...open, measures: possible.map((field) => inForm(field, form)) }
}
