/** The schema of one run: its stations by name, and force or moment as the load was read. */
import { KINDS, type Kind } from '../../quantity/kinds.ts'
import type { Dimension } from '../../quantity/types.ts'
import type { ColumnField, Field, MeasureField, Schema } from '../method.ts'
import { alternatives, cardFields, columns, givens, loadMeasures, schema, stationMeasures } from './schema.ts'

export type Dims = Readonly<Record<string, Dimension>>

/** Columns of movement in the order of the run: `deflection` and every `station_…`. */
export const channelsOf = (names: readonly string[]): string[] =>
  names.filter((name) => name === 'deflection' || name.startsWith('station_'))

/** `station_tip` → `tip`: what measures of one station end in. */
export const suffixOf = (channel: string): string => channel.replace(/^station_/, '')

const equal = (a: Dimension, b: Dimension): boolean => a.every((exponent, i) => exponent === b[i])

/** Of the kinds that a field allows, the one that was read; the first where nothing is known. */
const kindRead = (field: Field, dim: Dimension | undefined): Kind =>
  [field.kind, ...(field.or ?? [])].find((kind) => dim && equal(KINDS[kind].dim, dim)) ?? field.kind

/** With the readings at hand only the kind that was read is left, so that a moment is not asked for as a force. */
const settle = <T extends Field>(field: T, dim: Dimension | undefined): T =>
  dim ? { ...field, kind: kindRead(field, dim), or: undefined } : field

const STIFFNESS: readonly Kind[] = ['linear-stiffness', 'angular-stiffness']

/** Load over movement, where that has a name; a force per angle has none, and no stiffness is then given. */
const stiffnessDim = (
  load: Dimension | undefined,
  movement: Dimension | undefined,
): Dimension | undefined => {
  const kind = STIFFNESS.find((one) => load?.every((x, i) => x - (movement?.[i] ?? 0) === KINDS[one].dim[i]))
  return kind && KINDS[kind].dim
}

const station = (columnFields: readonly ColumnField[], name: string): ColumnField[] => {
  const general = columnFields.find((field) => field.name === 'station_<n>')
  return general ? [{ ...general, name, meaning: `movement at station ${suffixOf(name)}, signed` }] : []
}

/** Measures of movement: bare for one station, each with its suffix and the worst bare for several. */
const movementMeasures = (channels: readonly string[], dims: Dims): MeasureField[] =>
  stationMeasures.flatMap((field) => {
    const named =
      channels.length > 1 ? channels.map((channel) => [`${field.name}_${suffixOf(channel)}`, channel]) : []
    return [[field.name, channels[0] ?? ''], ...named].flatMap(([name = '', channel = '']) => {
      const movement = dims[channel]
      if (field.kind === 'number') return [{ ...field, name }]
      if (!STIFFNESS.includes(field.kind)) return [{ ...settle(field, movement), name }]
      if (!movement || !dims.load) return [{ ...field, name }]
      const dim = stiffnessDim(dims.load, movement)
      return dim ? [{ ...settle(field, dim), name }] : []
    })
  })

export const describe = (_: unknown, names: readonly string[], dims: Dims = {}): Schema => {
  if (names.length === 0) return schema
  const channels = channelsOf(names)
  const fields = [
    ...columns.filter((field) => field.name !== 'station_<n>'),
    ...channels.filter((name) => name !== 'deflection').flatMap((name) => station(columns, name)),
  ]
  return {
    givens: givens.map((field) => (field.name === 'target' ? settle(field, dims.load) : field)),
    columns: fields.map((field) => settle(field, dims[field.name])),
    measures: [
      ...loadMeasures.map((field) => (field.or ? settle(field, dims.load) : field)),
      ...movementMeasures(channels, dims),
    ],
    cardFields,
    alternatives,
  }
}
