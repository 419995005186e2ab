/** Readings to measures, in SI, with the scatter of the fits. */

import type { Result } from '../../quantity/types.ts'
import type { Columns, Estimate, Givens, Selection } from '../method.ts'
import { limitMeasures } from './at-limit.ts'
import { cycleMeasures } from './cycles.ts'
import { extentOf } from './extent.ts'
import {
  average,
  bendOf,
  combine,
  type Fitted,
  type Line,
  type Loaded,
  lineAt,
  linesOver,
  loadedLegs,
  pooledScatter,
  rowScatter,
  type Scatter,
  sharedSlope,
  slopesOver,
} from './fits.ts'
import {
  difference,
  type Found,
  inverse,
  kindsIn,
  kindsOf,
  type Put,
  putInto,
  scatterOf,
  times,
} from './found.ts'
import { type Motion, motionOf } from './motion.ts'
import { segmentsOf, shareScatter } from './segments.ts'
import { type Choice, choiceOf } from './select.ts'
import { armFaults, validate } from './validate.ts'

const fail = (error: string): Result<Estimate, string> => ({ ok: false, error })

export const estimate = (
  columns: Columns,
  givens: Givens,
  selection: Selection,
  valuesOnly = false,
): Result<Estimate, string> => {
  // Moved readings are of the same kinds as those that were looked at first; only the arm may come out too short.
  const faults = valuesOnly ? armFaults(columns, givens) : validate(columns, givens)
  const wrong = faults.find((fault) => fault.severity !== 'warning')
  if (wrong) return fail(wrong.message)
  const motion = motionOf(columns, givens)
  if (!motion) return fail('the readings need the columns `load` and `deflection`')
  const choice = choiceOf(selection)
  const legs = loadedLegs(choice.legs, motion.load)
  const lines = linesOver(legs, motion.deflection)
  if (lines.length === 0)
    return fail(
      'no branch has two readings at different loads on the elastic line: load in more and larger steps',
    )
  const compliance = sharedSlope(lines)
  if (compliance.value < 0)
    return fail(
      'the deflection falls while the load rises: turn the sign of one of the two, so that both agree',
    )
  if (compliance.value === 0)
    return fail(
      'the deflection does not change with the load: the gauge is too coarse, or not on the circuit',
    )

  const found: Found = { values: {}, entries: [] }
  const put = putInto(found)
  const scatter = pooledScatter(lines)
  stiffnesses(motion, choice, lines, compliance, scatter, put, valuesOnly)
  looseness(motion, choice, lines, compliance, scatter, put)
  bends(choice, lines, compliance, put)
  cycleMeasures(lines, scatter, put)
  const single = valuesOnly ? 0 : rowScatter(lines, motion.load, motion.deflection)
  limitMeasures(motion, choice, { s: single, dof: scatter.dof }, put)
  const atSurface = motion.surfaceLoad === motion.load ? legs : loadedLegs(choice.legs, motion.surfaceLoad)
  const stations = segments(motion, choice, atSurface, put, valuesOnly)
  const { values } = found
  if (valuesOnly) return { ok: true, value: { values, scatter: {}, residual: {} } }
  // The load's own scatter is not seen apart from the deflection's, so its resolution is always carried.
  const residual = { deflection: single * motion.readPerMotion, ...stations }
  return { ok: true, value: { values, kinds: kindsIn(found), scatter: scatterOf(found), residual } }
}

const stiffnesses = (
  motion: Motion,
  choice: Choice,
  lines: readonly Line[],
  compliance: Fitted,
  scatter: Scatter,
  put: Put,
  valuesOnly: boolean,
): void => {
  const kinds = kindsOf(motion.form)
  const stiffness = inverse(compliance)
  put('compliance', compliance, scatter, 'lines', kinds.compliance)
  for (const [side, name] of [
    [1, 'stiffness_positive'],
    [-1, 'stiffness_negative'],
  ] as const) {
    const own = lines.filter((line) => line.side === side)
    if (own.length > 0) put(name, inverse(sharedSlope(own)), scatter, 'lines', kinds.stiffness)
  }
  if (motion.form === 'linear') put('linear_stiffness', stiffness, scatter, 'lines', kinds.stiffness)
  else {
    put('stiffness', stiffness, scatter, 'lines', kinds.stiffness)
    const { gearing } = motion
    if (gearing !== null) {
      put('surface_stiffness', times(stiffness, 1 / gearing ** 2), scatter, 'lines', kinds.stiffness)
    }
    if (motion.asRead) {
      const { load, deflection } = motion.asRead
      const read = loadedLegs(choice.legs, load)
      const slope = inverse(sharedSlope(slopesOver(read, deflection)))
      const own = valuesOnly ? scatter : pooledScatter(linesOver(read, deflection))
      if (read.length > 0) put('linear_stiffness', slope, own, 'lines as read', 'linear-stiffness')
    }
  }
}

/** Play, hysteresis and friction need loading and unloading in both directions; else they are not known. */
const looseness = (
  motion: Motion,
  choice: Choice,
  lines: readonly Line[],
  compliance: Fitted,
  scatter: Scatter,
  put: Put,
): void => {
  const kinds = kindsOf(motion.form)
  const of = (side: 1 | -1, phase: Line['phase']) =>
    lines.filter((line) => line.side === side && line.phase === phase)
  const quarters = [of(1, 'loading'), of(1, 'unloading'), of(-1, 'loading'), of(-1, 'unloading')] as const
  const [up, upBack, down, downBack] = quarters
  const { positive, negative } = choice.middle
  if (quarters.some((quarter) => quarter.length === 0) || positive === null || negative === null) return
  const at = (quarter: readonly Line[], load: number) => average(quarter.map((line) => lineAt(line, load)))
  const edge = (loading: readonly Line[], unloading: readonly Line[]) =>
    average([at(loading, 0), at(unloading, 0)])

  put('free_play', difference(edge(up, upBack), edge(down, downBack)), scatter, 'lines', kinds.motion)
  const width = average([
    difference(at(upBack, positive), at(up, positive)),
    difference(at(down, negative), at(downBack, negative)),
  ])
  put('hysteresis', width, scatter, 'lines', kinds.motion)
  const stiffness = inverse(compliance)
  const friction = combine((width.value / 2) * stiffness.value, () => [
    [stiffness.value / 2, width],
    [width.value / 2, stiffness],
  ])
  put('friction', friction, scatter, 'lines', kinds.load)
}

/**
 * Of two directions the one is shown that noise, too, has made look more bent: both lie within their intervals at once
 * with 95 % where each does with √95 %, k = 2.2365 for 1.9600 (Šidák, J. Am. Stat. Assoc. 62, 1967, 626).
 */
const LARGER_OF_TWO = 2.2365 / 1.96

/**
 * Bow of the curve over its chord, at the middle of the fitted loads, over the deflection of that span: for
 * x = a + b·F + c·F² over ΔF it is c·ΔF/(4·b). Positive: the circuit gets softer as the load grows.
 */
const bends = (choice: Choice, lines: readonly Line[], compliance: Fitted, put: Put): void => {
  const bow = (side: 1 | -1) => {
    const own = lines.filter((line) => line.side === side)
    return { own, bend: bendOf(own, side) }
  }
  const { own, bend } = bow(choice.bent)
  if (!bend) return
  const both = [bend, bow(choice.bent === 1 ? -1 : 1).bend].filter((each) => each !== null)
  const straight = pooledScatter(lines)
  const dof = straight.dof - both.length
  if (dof < 1) return
  const squares = Math.max(
    0,
    straight.s ** 2 * straight.dof - both.reduce((sum, each) => sum + each.squares, 0),
  )
  const { low, high } = extentOf(own.flatMap((line) => [...line.loads]))
  const scale = (high - low) / (4 * compliance.value)
  const value = times(bend.fitted, scale)
  const s = Math.sqrt(squares / dof) * (both.length > 1 ? LARGER_OF_TWO : 1)
  put('nonlinearity', value, { s, dof }, 'bend', 'number')
}

/** Gives the scatter of the station readings, by column. */
const segments = (
  motion: Motion,
  choice: Choice,
  legs: readonly Loaded[],
  put: Put,
  valuesOnly: boolean,
): Record<string, number> => {
  const all = segmentsOf(motion, legs, valuesOnly)
  const total = all.reduce((sum, segment) => sum + segment.compliance.value, 0)
  for (const { from, to, compliance, scatter } of all) {
    const name = `${from}_${to}`
    const pool = `segment ${name}`
    put(`compliance_${name}`, compliance, scatter, pool, kindsOf(motion.form).compliance)
    const share = compliance.value / total
    const own = valuesOnly ? scatter : shareScatter(motion, choice.legs, { from, to }, share, total)
    put(`share_${name}`, { ...compliance, value: share }, own, `share ${name}`, 'number')
  }
  // A station's reading scatters no more than the quieter of the two segments that it ends.
  const stations = motion.nodes.slice(1, -1)
  return Object.fromEntries(
    stations.map(({ name, readPerMotion }, i) => [
      `at_${name}`,
      Math.min(all[i]?.rows ?? 0, all[i + 1]?.rows ?? 0) * readPerMotion,
    ]),
  )
}
