/** What bars a pass: the record does not show one clean mode with viscous damping, or not enough of it. */
import { coverageFactor, standardUncertainty } from '../../quantity/quantity.ts'
import type { Quantity } from '../../quantity/types.ts'
import { vonNeumann } from '../../quantity/von-neumann.ts'
import type { Columns, Givens, Measures, Remark, Selection } from '../method.ts'
import { type Fitted, fitDecay } from './estimate.ts'
import { OMEGA } from './oscillation.ts'
import { asDecay } from './select.ts'
import { standingLine } from './spectrum.ts'
import { percent, plain } from './words.ts'

/** Largest scatter about the fit over the amplitude at its beginning. */
export const MOST_RESIDUAL = 0.03
/** Fewer turns cannot be told from drift, and have no early and late. */
const LEAST_TURNS = 4
/** Below this an oscillation above half the sampling rate may look like a slower one. */
const LEAST_READINGS_A_TURN = 4

const CAUSE =
  'a second mode, or friction, which makes the damping look large at small amplitude; look at damping against amplitude'

const bar = (text: string): Remark => ({ effect: 'bars-pass', text })

const sampling = (selection: Selection): Remark[] => {
  const { turns, rows } = asDecay(selection)
  const each = rows.length / turns
  return [
    ...(turns < LEAST_TURNS
      ? [
          bar(
            `The decay was recorded over ${plain(turns)} turns; fewer than ${LEAST_TURNS} do not show a mode.`,
          ),
        ]
      : []),
    ...(each < LEAST_READINGS_A_TURN
      ? [
          bar(
            `There are ${plain(each)} readings a turn: with fewer than ${LEAST_READINGS_A_TURN} a faster oscillation may look like this one.`,
          ),
        ]
      : []),
  ]
}

const residual = (measures: Measures): Remark[] => {
  const value = measures.fit_residual?.value ?? Number.POSITIVE_INFINITY
  if (value <= MOST_RESIDUAL) return []
  return [
    bar(
      `The signal scatters by ${percent(value)} of its amplitude about one damped oscillation, more than ${percent(MOST_RESIDUAL)}: noise, or ${CAUSE}.`,
    ),
  ]
}

const halves = (measures: Measures, p: number): Remark[] => {
  const change = measures.damping_change
  const u = change ? standardUncertainty(change) : null
  if (!change || u === null)
    return [
      bar('Damping could not be fitted in both halves of the decay: whether it stays the same is not known.'),
    ]
  const limit = coverageFactor(change, p) * u
  if (Math.abs(change.value) <= limit) return []
  const [early, late] = [measures.damping_early, measures.damping_late].map((each) =>
    percent(each?.value ?? Number.NaN),
  )
  return [
    bar(
      `The damping is ${early} early and ${late} late in the decay: they differ by more than their uncertainty of ${percent(limit)}: ${CAUSE}.`,
    ),
  ]
}

/** What is left after the fit swings with the mode from block to block. */
const wandering = ({ blocks }: Fitted): Remark[] => {
  const parts = [blocks.map(({ cosine }) => cosine), blocks.map(({ sine }) => sine)]
  if (!parts.some((part) => part.length >= 8 && vonNeumann(part).correlated)) return []
  return [
    bar(
      `What is left after the fit swings at the frequency of the mode and wanders on from block to block (von Neumann ratio, 1 %): ${CAUSE}.`,
    ),
  ]
}

/** A line in the spectrum of what is left, within an octave of the mode. */
const neighbour = ({ t, fit }: Fitted): Remark[] => {
  const frequency = (fit.parameters[OMEGA] as number) / (2 * Math.PI)
  const line = standingLine(t, fit.residuals, { low: frequency / 2, high: 2 * frequency })
  if (line === null) return []
  return [
    bar(
      `What is left after the fit has a line at ${plain(line)} Hz beside the mode at ${plain(frequency)} Hz: ${CAUSE}.`,
    ),
  ]
}

/** The line through the amplitudes and the fit must tell the same. */
const decrement = (measures: Measures, p: number): Remark[] => {
  const measured: Quantity | undefined = measures.log_decrement
  const ratio = measures.damping_ratio?.value
  const u = measured ? standardUncertainty(measured) : null
  if (!measured || u === null || ratio === undefined)
    return [bar('The logarithmic decrement, the cross-check of the fit, could not be had.')]
  const expected = (2 * Math.PI * ratio) / Math.sqrt(1 - ratio * ratio)
  if (Math.abs(measured.value - expected) <= coverageFactor(measured, p) * u) return []
  return [
    bar(
      `The amplitudes fall with a logarithmic decrement of ${plain(measured.value)}, the fit says ${plain(expected)}: more apart than the uncertainty: ${CAUSE}.`,
    ),
  ]
}

export const conditions = (
  measures: Measures,
  columns: Columns,
  _: Givens,
  selection: Selection,
  p: number,
): readonly Remark[] => {
  const decay = asDecay(selection)
  const fitted = fitDecay(columns, decay)
  if (!fitted) return [bar(decay.refused ?? 'No damped oscillation could be fitted.')]
  return [
    ...sampling(selection),
    ...residual(measures),
    ...halves(measures, p),
    ...wandering(fitted),
    ...neighbour(fitted),
    ...decrement(measures, p),
    ...(decay.skipped > 0
      ? [
          {
            effect: 'note',
            text: `${decay.skipped} rows are left out: time or signal is missing in them.`,
          } as const,
        ]
      : []),
  ]
}
