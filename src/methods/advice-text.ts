/** What the advice of several methods shares: which criteria were missed, and which station is the worst. */
import { expanded } from '../quantity/quantity.ts'
import type { JudgedTerm, Measures } from './method.ts'

/** Terms that did not pass and rest on a measure of this stem, with or without the name of a station behind it. */
export const missedOn = (judged: readonly JudgedTerm[], stem: string): readonly JudgedTerm[] =>
  judged.filter(
    ({ verdict, measures }) =>
      verdict !== 'pass' && measures.some((name) => name === stem || name.startsWith(`${stem}_`)),
  )

/** The limit of a term where the measure itself stands in it alone; null for a formula over it. */
export const ownLimit = (term: JudgedTerm, measures: Measures): number | null => {
  const [name, ...others] = term.measures
  const measure = name === undefined ? undefined : measures[name]
  const limit = term.limits[0]
  if (!measure || others.length > 0 || limit === undefined) return null
  return Math.abs(term.value - measure.value) <= 1e-9 * Math.abs(measure.value) ? limit : null
}

export type AtStation = { readonly station: string; readonly value: number; readonly U: number | null }

/** A measure at all stations, the largest first. */
export const byStation = (measures: Measures, stem: string, suffixes: readonly string[]): AtStation[] =>
  suffixes
    .flatMap((station) => {
      const measure = measures[`${stem}_${station}`]
      return measure ? [{ station, value: measure.value, U: expanded(measure)?.U ?? null }] : []
    })
    .sort((a, b) => b.value - a.value)

/** Two significant figures, with a real minus. */
export const rounded = (value: number, figures = 2): string =>
  `${Number(value.toPrecision(figures))}`.replace('-', '−')

/** A reading to be reached, away from zero, so that rounding never takes it below what is needed. */
export const roundedUp = (value: number, figures = 4): string => {
  const step = 10 ** (Math.floor(Math.log10(Math.abs(value))) + 1 - figures)
  return rounded(Math.sign(value) * Math.ceil(Math.abs(value) / step - 1e-9) * step, figures)
}

export const inMillimetres = (length: number): string => `${rounded(1000 * length, 3)} mm`
export const inPercent = (share: number): string => `${rounded(100 * share)} %`
