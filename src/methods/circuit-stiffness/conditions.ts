/** What bars a pass, and what is said beside it. */
import { tCdf, tQuantile } from '../../quantity/distribution.ts'
import { effectiveDof, expanded, standardUncertainty } from '../../quantity/quantity.ts'
import type { Quantity } from '../../quantity/types.ts'
import { vonNeumann } from '../../quantity/von-neumann.ts'
import type { Columns, Givens, Measures, Remark, Selection } from '../method.ts'
import { linesOf, pooledScatter } from './fits.ts'
import { kindsOf } from './found.ts'
import { cockpitLoaded, type Motion, motionOf, stationsOf } from './motion.ts'
import { STIFFNESS, segmentMeasures } from './names.ts'
import { segmentNames } from './segments.ts'
import { type Choice, choiceOf } from './select.ts'
import { inWords, percent } from './words.ts'
import { RESTING_ON_ZERO, shiftText, zeroShift } from './zero.ts'

/** Differences below these are of no account for a circuit, however well they are seen (common practice, no source). */
const BOW_OF_ACCOUNT = 0.02
const DIRECTIONS_OF_ACCOUNT = 0.1
const CYCLES_OF_ACCOUNT = 0.05
/** A diagnostic speaks at 1 %: at 5 % one sound test in twenty would be barred. */
const SIGNIFICANT = 0.99
/** With fewer degrees of freedom an estimated scatter says next to nothing. */
const FEWEST_DOF = 3

export const conditions = (
  measures: Measures,
  columns: Columns,
  givens: Givens,
  selection: Selection,
  p: number,
): Remark[] => {
  const motion = motionOf(columns, givens)
  if (!motion) return []
  const choice = choiceOf(selection)
  const concerned = [...STIFFNESS, ...segmentMeasures(segmentNames(stationsOf(givens)))]
  const bar = (text: string, only?: readonly string[]): Remark => ({
    effect: 'bars-pass',
    text,
    ...(only ? { measures: only } : {}),
  })
  return [
    ...reached(measures, motion, p).map((text) => bar(text)),
    ...preload(measures, motion).map((text) => bar(text, concerned)),
    ...unlike(measures).map((text) => bar(text, concerned)),
    ...zeroMoved(measures, columns, choice, motion).map((text) => bar(text, RESTING_ON_ZERO)),
    ...scatterKnown(choice, motion).map((text) => bar(text)),
    ...notes(measures, columns, givens, choice, motion).map((text): Remark => ({ effect: 'note', text })),
  ]
}

const reached = (measures: Measures, motion: Motion, p: number): string[] => {
  const kind = kindsOf(motion.form).load
  return (['positive', 'negative'] as const).flatMap((side) => {
    const peak = measures[`reached_${side}`]
    const limit = inWords(motion.limit, kind)
    if (!peak)
      return [
        `there is no reading under load in the ${side} direction; the limit load of ${limit} must be reached in each`,
      ]
    const u = standardUncertainty(peak)
    if (u === null)
      return [
        `whether the limit load was reached in the ${side} direction is not known: ${peak.why[0] ?? 'the load has no stated uncertainty'}`,
      ]
    const room = peak.value - motion.limit
    const tail = 1e-12 * motion.limit
    const probability = u > tail ? tCdf(room / u, effectiveDof(peak)) : room >= -tail ? 1 : 0
    if (probability >= p) return []
    const U = inWords(tQuantile(p, effectiveDof(peak)) * u, kind)
    return [
      `the limit load of ${limit} was not reached in the ${side} direction with ${percent(p)} confidence: the greatest was ${inWords(peak.value, kind)}, and ${U} more than the limit is needed`,
    ]
  })
}

const preload = (measures: Measures, motion: Motion): string[] => {
  const texts: string[] = []
  const kind = kindsOf(motion.form)
  const play = measures.free_play
  const spread = play ? expanded(play) : null
  const secant = measures.secant_at_limit
  const shown = secant ? `; measured at the limit load: ${inWords(secant.value, kind.stiffness)}` : ''
  if (play && spread && play.value < -spread.U)
    texts.push(
      `preload: the lines of both directions cross before zero load (play ${inWords(play.value, kind.motion)}), so the fitted slope is not that of the loaded circuit${shown}`,
    )
  const bow = measures.nonlinearity
  if (bow && stands(bow, BOW_OF_ACCOUNT))
    texts.push(
      `preload or a knee: the curve is bent by ${percent(Math.abs(bow.value))} of its deflection (${bow.value > 0 ? 'softer' : 'stiffer'} at high load), so one slope does not describe it${shown}`,
    )
  return texts
}

/** Beyond its own uncertainty, and of account. */
const stands = (of: Quantity, account: number): boolean => {
  const u = standardUncertainty(of)
  if (Math.abs(of.value) <= account) return false
  // An uncertainty that is not known hides nothing.
  return u === null || Math.abs(of.value) > tQuantile((1 + SIGNIFICANT) / 2, effectiveDof(of)) * u
}

const ratioOf = (a: Quantity | undefined, b: Quantity | undefined): Quantity | null => {
  if (!a || !b || b.value === 0) return null
  if (a.parts === null || b.parts === null)
    return { value: a.value / b.value - 1, dim: a.dim, parts: null, why: [] }
  const parts = { ...a.parts }
  const factor = 1 / b.value
  const scaled = Object.fromEntries(
    Object.entries(parts).map(([key, part]) => [key, { ...part, u: part.u * factor }]),
  )
  for (const [key, part] of Object.entries(b.parts)) {
    const u = (scaled[key]?.u ?? 0) - (part.u * a.value) / b.value ** 2
    scaled[key] = { ...part, u }
  }
  return { value: a.value / b.value - 1, dim: a.dim, parts: scaled, why: [] }
}

const unlike = (measures: Measures): string[] => {
  const texts: string[] = []
  const sides = ratioOf(measures.stiffness_positive, measures.stiffness_negative)
  if (sides && stands(sides, DIRECTIONS_OF_ACCOUNT))
    texts.push(
      `the directions differ: the stiffness under positive load is ${percent(Math.abs(sides.value))} ${sides.value > 0 ? 'above' : 'below'} that under negative load; judge stiffness_positive and stiffness_negative, each on its own card limit`,
    )
  const change = measures.cycle_change
  if (change && stands(change, CYCLES_OF_ACCOUNT))
    texts.push(
      `the cycles differ: the stiffness of the last is ${percent(change.value)} off that of the first; the circuit was still settling`,
    )
  return texts
}

const zeroMoved = (measures: Measures, columns: Columns, choice: Choice, motion: Motion): string[] => {
  const lines = linesOf(choice.legs, motion.load, motion.deflection)
  const shift = zeroShift(lines, pooledScatter(lines), columns, motion, measures.free_play)
  return shift ? [shiftText(shift, motion)] : []
}

const scatterKnown = (choice: Choice, motion: Motion): string[] => {
  const lines = linesOf(choice.legs, motion.load, motion.deflection)
  const { dof } = pooledScatter(lines)
  const texts: string[] = []
  if (lines.length > 0 && dof < FEWEST_DOF)
    texts.push(
      `the scatter rests on ${dof} degrees of freedom, and at least ${FEWEST_DOF} are needed: load in more steps, or in more cycles`,
    )
  if (choice.fast && vonNeumann(lines.flatMap((line) => [...line.residuals])).correlated)
    texts.push(
      'the readings were logged fast and wander about the lines slower than a block lasts: their scatter is not known',
    )
  return texts
}

const notes = (
  measures: Measures,
  columns: Columns,
  givens: Givens,
  choice: Choice,
  motion: Motion,
): string[] => {
  const texts: string[] = []
  if (!motion.fixtureKnown)
    texts.push('the fixture motion was not measured: whatever the fixture gave counts as circuit')
  if (givens.numbers.load_angle === undefined && givens.numbers.arm !== undefined)
    texts.push('the pull is taken as square to the arm; 10° off it, the moment is 1.5 % less')
  if (cockpitLoaded(givens) && motion.gearing === null)
    texts.push('surface_stiffness is not known: the cockpit was loaded, and the gearing is not given')
  if (!measures.free_play)
    texts.push(
      'free_play, hysteresis and friction are not known: they need loading and unloading in both directions, with at least two steps each on the line',
    )
  if (!measures.deflection_at_limit)
    texts.push(
      'deflection_at_limit, secant_at_limit and travel_lost are not known: the limit load must lie between readings in both directions',
    )
  else if (motion.fullTravel === null) texts.push('travel_lost is not known: full_travel is not given')
  if (measures.free_play && !measures.cycle_change)
    texts.push(
      'one cycle alone does not show whether the circuit came back: a clamp that slips looks like other play',
    )
  if (choice.leftOut.length > 0 && columns.load)
    texts.push(
      `${choice.leftOut.length} of ${choice.rows} rows ${choice.leftOut.length === 1 ? 'is' : 'are'} not on the fitted lines: no load, play not taken up, or sticking after a turn`,
    )
  return texts
}
