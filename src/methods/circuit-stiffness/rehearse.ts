/**
 * Expected readings of a circuit whose truth is known: planning, simulation, coverage.
 *
 * Truth (SI, by the names of the measures): `stiffness`, or `linear_stiffness` alone for force and length;
 * `free_play`, `friction` (a moment, or a force); `compliance_<a>_<b>` of the segments at the surface (equal shares
 * where not given). Beside them: `cycles` (2), `steps` per quarter (6), `overshoot` of the greatest load over the
 * limit load (0.1), `noise` of a deflection reading as read (half a digit), `load_noise` (0), `fixture_compliance`
 * (as the given, else 0).
 *
 * Columns: force and length where the given `arm` is there or only `linear_stiffness` is known, else moment and angle.
 * Stations are read in the terms of their ratio (length per angle gives a length), where an instrument is named for
 * them; `at_fixture` as the deflection.
 */
import { KINDS } from '../../quantity/kinds.ts'
import { asShown, IDEAL } from '../as-shown.ts'
import type { Column, Columns, Givens, Instruments } from '../method.ts'
import { loadPlan, loopOf } from './loop.ts'
import { cockpitLoaded, isKind, stationsOf } from './motion.ts'
import { segmentNames } from './segments.ts'

type Truth = Readonly<Record<string, number>>

export const rehearse = (givens: Givens, truth: Truth, instruments: Instruments, seed: number): Columns => {
  const { numbers, dims } = givens
  const arm = numbers.arm
  const linear = truth.stiffness === undefined
  const lengths = linear || arm !== undefined
  const lever = linear || arm === undefined ? 1 : arm * Math.cos(numbers.load_angle ?? 0)
  const limit = numbers.limit_load ?? 0
  const limitIsForce = lengths && !(dims?.limit_load && isKind(dims.limit_load, 'moment'))
  const peak = limit * (limitIsForce ? lever : 1) * (1 + (truth.overshoot ?? 0.1))
  const loads = loadPlan(peak, truth.steps ?? 6, truth.cycles ?? 2)
  const stiffness = truth.stiffness ?? truth.linear_stiffness ?? Number.NaN
  const circuit = { compliance: 1 / stiffness, freePlay: truth.free_play ?? 0, friction: truth.friction ?? 0 }
  const moved = loopOf(circuit, loads)
  const fixture = loads.map((load) => load * (truth.fixture_compliance ?? numbers.fixture_compliance ?? 0))
  const gross = moved.map((value, row) => value + (fixture[row] as number))
  const asLength = (angle: number) => (linear || arm === undefined ? angle : arm * Math.sin(angle))

  const show = (
    name: string,
    values: readonly number[],
    kind: 'force' | 'moment' | 'length' | 'angle',
    n: number,
    noise?: number,
  ): Column => {
    const model = instruments[name] ?? IDEAL
    const course = { truth: values, dim: KINDS[kind].dim, noise: noise ?? model.resolution / 2 }
    return asShown(course, model, seed * 31 + n)
  }
  const motionKind = lengths ? 'length' : 'angle'
  const inMotion = (values: readonly number[]) => (lengths ? values.map(asLength) : values)
  const stations = stationMotion(givens, truth, loads, gross, fixture).flatMap(({ name, motion }, i) => {
    if (!instruments[`at_${name}`]) return []
    const ratio = numbers[`ratio_${name}`] ?? 1
    const perAngle =
      linear ||
      (dims?.[`ratio_${name}`]
        ? isKind(dims[`ratio_${name}`] ?? [0, 0, 0, 0, 0, 0], 'length-per-angle')
        : false)
    const read = show(
      `at_${name}`,
      motion.map((value) => value * ratio),
      perAngle ? 'length' : 'angle',
      3 + i,
    )
    return [[`at_${name}`, read] as const]
  })
  return {
    load: show(
      'load',
      loads.map((load) => load / lever),
      lengths ? 'force' : 'moment',
      1,
      truth.load_noise ?? 0,
    ),
    deflection: show('deflection', inMotion(gross), motionKind, 2, truth.noise),
    ...(instruments.at_fixture ? { at_fixture: show('at_fixture', inMotion(fixture), motionKind, 99) } : {}),
    ...Object.fromEntries(stations),
  }
}

/** Motion at each station, in motion of the surface: what lies behind it along the circuit, and the fixture. */
const stationMotion = (
  givens: Givens,
  truth: Truth,
  loads: readonly number[],
  gross: readonly number[],
  fixture: readonly number[],
): { name: string; motion: number[] }[] => {
  const names = stationsOf(givens)
  const toSurface = cockpitLoaded(givens) ? (givens.numbers.gearing ?? 1) : 1
  const segments = segmentNames(names).map(([from, to]) => truth[`compliance_${from}_${to}`] ?? 1)
  const total = segments.reduce((sum, own) => sum + own, 0)
  return names.map((name, i) => {
    const behind = segments.slice(i + 1).reduce((sum, own) => sum + own, 0) / total
    const motion = loads.map((_, row) => {
      const still = fixture[row] as number
      return (still + ((gross[row] as number) - still) * behind) * toSurface
    })
    return { name, motion }
  })
}
