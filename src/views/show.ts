/** Results as texts: value ± U, margins, probabilities. ± is always expanded, for 95 %. */
import type { Target } from '../campaign/types.ts'
import { valueText as workedText } from '../campaign/value-text.ts'
import type { Term } from '../judge/types.ts'
import { toUnit, toUnitDifference } from '../quantity/convert.ts'
import { superscript } from '../quantity/dimension.ts'
import { formatNumber, formatQuantity, printed } from '../quantity/display.ts'
import { expanded, standardUncertainty } from '../quantity/quantity.ts'
import type { Quantity, Simulated, Unit } from '../quantity/types.ts'

/** A unit for differences and uncertainties: a temperature scale has no zero there. */
export const differenceUnit = (unit: Unit): Unit =>
  unit.offset === 0 ? unit : { ...unit, text: unit.text.includes('F') ? 'delta °F' : 'K', offset: 0 }

const spaced = (number: string, unit: string): string =>
  unit === '1' || unit === '' ? number : `${number} ${unit}`

/** A unit as it is printed: `cm^3/min` → `cm³/min`. */
export const unitText = (text: string): string =>
  text.replace(/\^(-?\d+)/g, (_, exponent: string) => superscript(Number(exponent))).replaceAll('*', '·')

const printedUnit = (unit: Unit): Unit => ({ ...unit, text: unitText(unit.text) })

/** `0.14 ± 0.32 cm³/min`; where the uncertainty is not known it says so. */
export const resultText = (quantity: Quantity, unit: Unit): string =>
  formatQuantity(quantity, printedUnit(unit)).text

/** A number for people, to `digits` significant digits. */
export const numberText = (x: number, digits: number): string =>
  printed(formatNumber(x, digits)).replace(
    /e([−-]?)(\d+)$/,
    (_, sign: string, power: string) => `·10${superscript(Number(`${sign ? '-' : ''}${power}`))}`,
  )

/** A value in a unit to `digits` significant digits. */
export const valueText = (si: number, unit: Unit, digits = 4): string =>
  spaced(numberText(toUnit(si, unit), digits), unit.text)

export const differenceText = (si: number, unit: Unit, digits = 2): string => {
  const plain = differenceUnit(unit)
  return spaced(numberText(toUnitDifference(si, unit), digits), plain.text)
}

/** A number as it would be written: no zeros that nobody wrote. */
export const roundText = (si: number, unit: Unit): string =>
  spaced(printed(String(Number(toUnit(si, unit).toPrecision(6)))), unitText(unit.text))

/** A target worked out from exact numbers has five figures; one with an uncertainty is shown with it. */
export const targetText = ({ value, unit }: Target): string =>
  standardUncertainty(value) === 0 ? printed(workedText(value, printedUnit(unit))) : resultText(value, unit)

/** Degrees of freedom; beyond a thousand Student's t is the normal distribution to three figures. */
export const dofText = (dof: number): string =>
  dof > 1000 ? '∞' : formatNumber(Math.floor(dof * 10) / 10, 3)

/** How draws made the uncertainty. */
const drawsText = ({ mean, u, low, high, draws, tolerance }: Simulated, unit: Unit): string => {
  const digits = 3
  const [from, to] = [low, high].map((end) => valueText(end, unit, 4))
  const count = printed(String(draws)).replace(/(\d)(?=(\d{3})+$)/g, '$1\u00a0')
  return `By Monte Carlo (JCGM 101), as the card asks: ${count} joint draws of all sources, each from its own distribution, always the same ones. Their mean is ${valueText(mean, unit, 4)}, their standard deviation ${differenceText(u, unit, digits)}, and 95 % of them lie from ${from} to ${to}, equally many beyond either end. ± is the distance to the farther end. Other draws could move these by ${differenceText(tolerance, unit, 1)}. The lines are those of the first order (JCGM 100).`
}

/** The factor that makes ± of a standard uncertainty, and the degrees of freedom it comes from. */
export const factorText = (quantity: Quantity, unit: Unit): string => {
  if (quantity.simulated) return drawsText(quantity.simulated, unit)
  const wide = expanded(quantity)
  if (wide === null)
    return `The uncertainty is not known${quantity.why.length > 0 ? `: ${quantity.why.join('; ')}` : ''}.`
  if (wide.U === 0) return 'Exact: a count, or numbers that are given as exact.'
  const dof = wide.dof > 1000 ? 'more than 1000' : dofText(wide.dof)
  return `± is the expanded uncertainty for 95 %: ${formatNumber(wide.k, 3)} times the standard uncertainty (Student’s t, degrees of freedom ${dof}).`
}

/** Probability that the true value conforms. Never rounded up to certainty. */
export const probabilityText = (term: Term): string => {
  if (term.probability === null) return 'not known'
  if (expanded(term.value)?.U === 0 && expanded(term.margin)?.U === 0) return 'exact'
  if (term.probability > 0.9995) return '> 99.9 %'
  if (term.probability < 0.0005) return '< 0.1 %'
  return `${(term.probability * 100).toFixed(1)} %`
}

export const limitText = (term: Term): string => {
  const [first, second] = term.limits.map((limit) => resultText(limit, term.unit))
  if (first === undefined) return ''
  if (term.direction === 'between' && second !== undefined) return `${first} to ${second}`
  return `${term.direction} ${first}`
}

export const marginText = (term: Term): string => resultText(term.margin, differenceUnit(term.unit))

/** What stands under a result in small print. */
export const resultNotes = (term: Term): string[] => {
  const less =
    term.lessThan === null ? [] : [`less than ${valueText(term.lessThan, term.unit, 2)} (one-sided, 95 %)`]
  const ratio =
    term.ratio !== null && Number.isFinite(term.ratio) && term.ratio < 4
      ? [`limit over U only ${formatNumber(term.ratio, 2)} : 1`]
      : []
  const unknown = term.value.parts === null ? term.value.why : []
  return [...less, ...ratio, ...unknown]
}
