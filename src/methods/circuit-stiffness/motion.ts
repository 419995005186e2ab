/**
 * From what was read to what is fitted: moment and angle where there is an arm (or where both were read), force
 * and length otherwise; fixture motion taken off; station motion referred to the surface.
 *
 * moment = F·arm·cos(load angle), angle = asin(x/arm).
 */
import { divideDimension, sameDimension } from '../../quantity/dimension.ts'
import { KINDS, type Kind } from '../../quantity/kinds.ts'
import { mapped } from '../../quantity/loops.ts'
import type { Dimension } from '../../quantity/types.ts'
import type { Column, Columns, Givens } from '../method.ts'

export type Form = 'angular' | 'linear'

/** A place along the circuit and its motion, referred to the surface (angle, or length in linear form). */
export type Node = { readonly name: string; readonly motion: Float64Array; readonly readPerMotion: number }

export type Motion = {
  readonly form: Form
  /** Moment or force at the loaded end. */
  readonly load: Float64Array
  /** Angle or length at the loaded end, fixture motion taken off. */
  readonly deflection: Float64Array
  /** Force and net length as read, where both are lengths: for the linear stiffness beside the angular one. */
  readonly asRead: { readonly load: Float64Array; readonly deflection: Float64Array } | null
  /** Limit load in the same terms as `load`. */
  readonly limit: number
  /** Movement in the terms of `full_travel`: length by length where both are lengths, else angle by angle. */
  readonly travelled: Float64Array
  readonly fullTravel: number | null
  /** From the loaded end to the fixture; empty where the card names no stations. */
  readonly nodes: readonly Node[]
  /** Load referred to the surface, for the segments. */
  readonly surfaceLoad: Float64Array
  /** Surface motion per motion of the loaded end: 1, or the gearing; null where it is not known. */
  readonly gearing: number | null
  readonly fixtureKnown: boolean
  /** Size of a unit of the working terms in the terms as read, for resolution and scatter. */
  readonly readPerMotion: number
  readonly travelledPerMotion: number
  readonly loadPerRead: number
}

export const isKind = (dim: Dimension, kind: Kind): boolean => sameDimension(dim, KINDS[kind].dim)

export const stationsOf = (givens: Pick<Givens, 'fields'>): readonly string[] => {
  const { stations } = givens.fields
  return Array.isArray(stations) ? stations.filter((name): name is string => typeof name === 'string') : []
}

export const cockpitLoaded = (givens: Givens): boolean => givens.words.loaded_end === 'cockpit'

/** Null where a force stands beside an angle, or a moment beside a length, and no arm joins them. */
export const formOf = (columns: Columns, givens: Givens): Form | null => {
  const { load, deflection } = columns
  if (!load || !deflection) return null
  if (givens.numbers.arm !== undefined) return 'angular'
  const force = isKind(load.dim, 'force')
  if (force !== isKind(deflection.dim, 'length')) return null
  return force ? 'linear' : 'angular'
}

/** Dimension of a station's motion after division by its ratio. */
export const referredDimension = (column: Column, ratio: Dimension | undefined): Dimension =>
  ratio ? divideDimension(column.dim, ratio) : column.dim

/** Times one factor; the values themselves where it is 1. */
const scaled = (values: Float64Array, factor: number): Float64Array =>
  factor === 1 ? values : mapped(values, (value) => value * factor)

type Fixture = { readonly values: Float64Array; readonly length: boolean } | null

/** Motion of the fixture at the loaded end, as read or as load times its compliance. */
const fixtureOf = (columns: Columns, givens: Givens, load: Float64Array, toSurface: number): Fixture => {
  const { numbers, dims } = givens
  const column = columns.at_fixture
  if (column) {
    const ratio = numbers.ratio_fixture
    const scale = ratio === undefined ? 1 : 1 / (ratio * toSurface)
    const dim = referredDimension(column, dims?.ratio_fixture)
    return { values: scaled(column.values, scale), length: isKind(dim, 'length') }
  }
  const compliance = numbers.fixture_compliance
  const read = columns.load
  if (compliance === undefined || !read) return null
  const length = dims?.fixture_compliance
    ? isKind(dims.fixture_compliance, 'linear-compliance')
    : isKind(read.dim, 'force') &&
      columns.deflection !== undefined &&
      isKind(columns.deflection.dim, 'length')
  const by = length ? read.values : load
  return { values: mapped(by, (value) => value * compliance), length }
}

/** Everything in working terms. Call it only where `validate` found no error. */
export const motionOf = (columns: Columns, givens: Givens): Motion | null => {
  const form = formOf(columns, givens)
  const { load: loadRead, deflection: read } = columns
  if (form === null || !loadRead || !read) return null
  const { numbers, dims } = givens
  const angular = form === 'angular'
  const force = isKind(loadRead.dim, 'force')
  const length = isKind(read.dim, 'length')
  const arm = numbers.arm ?? 1
  const lever = angular ? arm * Math.cos(numbers.load_angle ?? 0) : 1
  const angle = (x: number) => Math.asin(x / arm)
  const gearing = cockpitLoaded(givens) ? (numbers.gearing ?? null) : 1
  const toSurface = gearing ?? 1

  const load = angular && force ? scaled(loadRead.values, lever) : loadRead.values
  const fixture = fixtureOf(columns, givens, load, toSurface)
  const still = (row: number) => fixture?.values[row] ?? 0
  const gross = angular && length ? mapped(read.values, angle) : read.values
  const netLength =
    length && (fixture === null || fixture.length) ? mapped(read.values, (x, row) => x - still(row)) : null
  const deflection = ((): Float64Array => {
    if (netLength) return angular ? mapped(netLength, angle) : netLength
    if (fixture === null) return gross
    return mapped(gross, (value, row) => value - (fixture.length ? angle(still(row)) : still(row)))
  })()

  const limitRead = numbers.limit_load ?? Number.NaN
  const limitIsForce = dims?.limit_load ? isKind(dims.limit_load, 'force') : force
  const travel = numbers.full_travel
  const travelIsLength = dims?.full_travel ? isKind(dims.full_travel, 'length') : length
  const inLengths = travelIsLength && netLength !== null
  const fullTravel =
    travel === undefined ? null : angular && travelIsLength && !inLengths ? angle(travel) : travel

  const stations = stationsOf(givens).flatMap((name): Node[] => {
    const column = columns[`at_${name}`]
    const ratio = numbers[`ratio_${name}`]
    if (!column || ratio === undefined || gearing === null) return []
    const asLength = isKind(referredDimension(column, dims?.[`ratio_${name}`]), 'length')
    const motion = mapped(column.values, (value) =>
      angular && asLength ? angle(value / ratio) : value / ratio,
    )
    return [{ name, motion, readPerMotion: Math.abs(ratio) * (angular && asLength ? arm : 1) }]
  })
  const nodes =
    stations.length === 0
      ? []
      : [
          { name: 'load', motion: scaled(gross, toSurface), readPerMotion: 1 },
          ...stations,
          // Whatever was taken off as fixture motion, so that the segments add up to the whole exactly.
          {
            name: 'fixture',
            motion: mapped(gross, (value, row) => (value - (deflection[row] as number)) * toSurface),
            readPerMotion: 1,
          },
        ]

  return {
    form,
    load,
    deflection,
    asRead: force && netLength ? { load: loadRead.values, deflection: netLength } : null,
    limit: angular && limitIsForce ? limitRead * lever : limitRead,
    travelled: inLengths ? netLength : deflection,
    fullTravel,
    nodes,
    surfaceLoad: toSurface === 1 ? load : mapped(load, (value) => value / toSurface),
    gearing,
    fixtureKnown: fixture !== null,
    readPerMotion: angular && length ? arm : 1,
    travelledPerMotion: angular && inLengths ? arm : 1,
    loadPerRead: angular && force ? lever : 1,
  }
}
