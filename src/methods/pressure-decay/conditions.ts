/** What bars a pass: the test pressure was not there, or the readings do not follow the model. */
import { tCdf } from '../../quantity/distribution.ts'
import { fitLine } from '../../quantity/fit.ts'
import { coverageFactor, effectiveDof, standardUncertainty } from '../../quantity/quantity.ts'
import type { Quantity } from '../../quantity/types.ts'
import { vonNeumann } from '../../quantity/von-neumann.ts'
import type { Columns, Givens, Measures, Remark, Selection } from '../method.ts'
import { testSign } from './constants.ts'
import { digitScatter } from './digits.ts'
import { pointsOf } from './points.ts'
import { asHold, type Hold } from './select.ts'
import { minutes, pascals, percent } from './words.ts'

const bar = (text: string): Remark => ({ effect: 'bars-pass', text })
const note = (text: string): Remark => ({ effect: 'note', text })

/** Probability that the pressure is at or beyond the bound, seen from ambient; null where its u is not known. */
const probabilityBeyond = (pressure: Quantity, bound: number): number | null => {
  const u = standardUncertainty(pressure)
  if (u === null) return null
  const beyond = Math.sign(bound) * (pressure.value - bound)
  return u > 0 ? tCdf(beyond / u, effectiveDof(pressure)) : beyond >= 0 ? 1 : 0
}

const pressureRemark = (
  pressure: Quantity | undefined,
  bound: number,
  p: number,
  words: { what: string; done: string },
): Remark[] => {
  if (!pressure) return []
  const probability = probabilityBeyond(pressure, bound)
  if (probability !== null && probability >= p) return []
  const read = `${words.what} was ${pascals(pressure.value)}`
  if (probability === null) {
    return [bar(`${read}; whether ${words.done} is not known: ${pressure.why.join('; ')}.`)]
  }
  const sure = `with ${percent(p)} confidence (P = ${percent(Math.floor(probability * 1000) / 1000)})`
  return [bar(`${read}: it is not shown ${sure} that ${words.done}.`)]
}

/**
 * Twice the test pressure is as far from it as half of it (both common practice, no source): the leak at the test
 * pressure would be extrapolated. Most often an absolute pressure was written as gauge pressure.
 */
const MOST = 2

const beyondRemark = (pressure: Quantity | undefined, testPressure: number): Remark[] =>
  pressure && pressure.value / testPressure > MOST
    ? [
        bar(
          `The pressure at the first fitted reading was ${pascals(pressure.value)}, more than twice the test pressure of ${pascals(testPressure)}: the leak would be extrapolated. An absolute pressure written as gauge pressure, or an article loaded beyond its test: look at it before it is loaded again.`,
        ),
      ]
    : []

const halvesRemark = (halves: Quantity | undefined, p: number): Remark[] => {
  const u = halves ? standardUncertainty(halves) : null
  if (!halves || u === null) return []
  const limit = coverageFactor(halves, p) * u
  if (Math.abs(halves.value) <= limit) return []
  const [difference, most] = [halves.value, limit].map((rate) => `${pascals(Math.abs(rate) * 60)}/min`)
  return [
    bar(
      `The two halves of the hold differ in slope by ${difference}, more than their uncertainty of ${most}: settling, creep or heating is not over.`,
    ),
  ]
}

const scatterRemarks = (columns: Columns, givens: Givens, hold: Hold): Remark[] => {
  const points = pointsOf(columns, givens, hold)
  const count = points.effective.length
  if (count < 5) {
    return [
      bar(`${count} readings after the settle time are too few to show their scatter: five are needed.`),
    ]
  }
  const { residual, residuals } = fitLine(points.effective, points.compensated)
  // Steps of digits are alike from row to row and are in the budget as such.
  const onlyDigits = residual <= digitScatter(columns, hold, points)
  if (onlyDigits || !vonNeumann(residuals).correlated) return []
  return [
    bar(
      'The readings wander about the line together (von Neumann ratio, 1 %): their scatter understates the uncertainty of the slope.',
    ),
  ]
}

const CONTENTS: Readonly<Record<string, string>> = {
  water:
    'Water is in the volume: its vapour pressure moves by 144 Pa/K at 20 °C beside 346 Pa/K of the gas, and what evaporates hides a leak under pressure.',
  fuel: 'Fuel is in the volume: vapour of petrol moves the pressure by about 1 kPa/K, and what evaporates hides a leak under pressure.',
}

export const conditions = (
  measures: Measures,
  columns: Columns,
  givens: Givens,
  selection: Selection,
  p: number,
): readonly Remark[] => {
  const hold = asHold(selection)
  const testPressure = givens.numbers.test_pressure ?? Number.NaN
  const asked = givens.numbers.hold ?? 0
  const held = hold.span.end - hold.span.start
  const contents = CONTENTS[givens.words.contents ?? 'dry']
  return [
    ...pressureRemark(measures.pressure_at_start, testPressure, p, {
      what: 'The pressure at the first fitted reading',
      done: `the test pressure of ${pascals(testPressure)} was reached`,
    }),
    ...pressureRemark(measures.pressure_least, testPressure / 2, p, {
      what: 'The pressure that was left in the hold',
      done: `at least half of the test pressure of ${pascals(testPressure)} was kept`,
    }),
    ...beyondRemark(measures.pressure_at_start, testPressure),
    ...(held < asked * (1 - 1e-9)
      ? [bar(`The hold was ${minutes(held)} after settling; ${minutes(asked)} are asked for.`)]
      : []),
    ...halvesRemark(measures.halves, p),
    ...(contents ? [bar(contents)] : []),
    ...scatterRemarks(columns, givens, hold),
    ...(hold.skipped > 0
      ? [
          note(
            `${hold.skipped === 1 ? 'One row of the hold is' : `${hold.skipped} rows of the hold are`} left out because a reading is missing.`,
          ),
        ]
      : []),
    note(
      testSign(givens) < 0
        ? 'Under vacuum a flap or crack may be pulled shut that pressure opens: this says nothing of the article under pressure.'
        : 'Pressure may open a path that suction shuts, and the other way round: this says nothing of the article under vacuum.',
    ),
  ]
}
