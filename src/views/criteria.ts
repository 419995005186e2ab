/** Judged criteria as rows: result, limit, drawing, margin, probability, verdict, reasons. */
import type { Judgement, Term } from '../judge/types.ts'
import { toUnit, toUnitDifference } from '../quantity/convert.ts'
import { expanded } from '../quantity/quantity.ts'
import { limitText, marginText, probabilityText, resultNotes, resultText } from './show.ts'
import type { Site } from './site.ts'
import type { Against, CriterionRow } from './view.ts'
import { nameWords, verdictStamp } from './words.ts'

const againstOf = (term: Term): Against | null => {
  const value = toUnit(term.value.value, term.unit)
  const limits = term.limits.map((limit) => toUnit(limit.value, term.unit))
  if (limits.length === 0 || ![value, ...limits].every(Number.isFinite)) return null
  const wide = expanded(term.value)
  const words = `${resultText(term.value, term.unit)}, to be ${limitText(term)}: ${term.verdict}`
  const U = wide === null ? null : toUnitDifference(wide.U, term.unit)
  return { value, U, limits, direction: term.direction, style: term.verdict, words }
}

export const criterionRows = (judgements: readonly Judgement[], site: Pick<Site, 'linked'>): CriterionRow[] =>
  judgements.map((judgement) => ({
    id: judgement.criterion,
    name: nameWords(judgement.criterion),
    accept: judgement.accept,
    rule: judgement.rule.text,
    why: judgement.why.trim(),
    stamp: verdictStamp(judgement.verdict),
    terms: judgement.terms.map((term) => ({
      text: term.text,
      result: resultText(term.value, term.unit),
      more: resultNotes(term),
      limit: limitText(term),
      margin: marginText(term),
      probability: probabilityText(term),
      against: againstOf(term),
      stamp: verdictStamp(term.verdict),
    })),
    reasons: judgement.reasons.map(site.linked),
    settle: judgement.settle.map(site.linked),
  }))
