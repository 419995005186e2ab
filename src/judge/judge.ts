/** A criterion over measures → verdict, after the decision rule that was written before the test (JCGM 106). */

import type { CriterionRecord } from '../format/types.ts'
import { conjuncts } from '../quantity/formula/index.ts'
import type { Node } from '../quantity/formula/types.ts'
import { budget } from '../quantity/quantity.ts'
import type { Result, Unit } from '../quantity/types.ts'
import { judgeTerm, type Scope } from './term.ts'
import type { Judgement, Term, Verdict } from './types.ts'

/** Why a criterion may not pass, whatever its numbers say. */
export type Bar = { readonly text: string; readonly measures?: readonly string[] }

export type CriterionInput = {
  readonly criterion: CriterionRecord
  readonly formula: Node
  readonly scope: Scope
  readonly unitOf: (term: number) => Unit
  readonly bars: readonly Bar[]
  /** Measures that a derived one is made of, so that a bar reaches it. */
  readonly basis: (measure: string) => readonly string[]
  readonly sourceWords: (source: string) => string
}

/** All terms together by Bonferroni: what is missing to certainty adds up. */
const together = (terms: readonly Term[], p: number): Verdict => {
  if (terms.some((term) => term.verdict === 'fail')) return 'fail'
  if (terms.some((term) => term.probability === null)) return 'undetermined'
  const doubt = terms.reduce((sum, term) => sum + 1 - (term.probability as number) + (term.tolerance ?? 0), 0)
  return 1 - doubt >= p ? 'pass' : 'undetermined'
}

const percent = (share: number): string => `${Math.round(share * 100)} %`

const settling = (terms: readonly Term[], words: (source: string) => string): string[] =>
  terms
    .filter((term) => term.verdict === 'undetermined' && term.margin.parts)
    .flatMap((term) => {
      const [largest] = budget(term.margin)
      if (!largest) return []
      return [
        `the largest part of the uncertainty is ${words(largest.source)} (${percent(largest.share)}); a smaller one would settle ${term.text}`,
      ]
    })

/**
 * Judges one criterion.
 * Errors: a sentence naming what cannot be evaluated (a measure that this run does not give, say).
 */
export const judgeCriterion = (input: CriterionInput): Result<Judgement, string> => {
  const { criterion, formula, scope } = input
  const { rule, accept } = criterion
  const compares = conjuncts(formula)
  if (!compares.ok) return { ok: false, error: compares.error[0]?.message ?? 'this is no comparison' }
  const p = rule.kind === 'guarded' ? rule.p : null
  const terms: Term[] = []
  for (const [index, compare] of compares.value.entries()) {
    const text = accept.slice(compare.start, compare.end).trim()
    const term = judgeTerm(compare, text, scope, p, input.unitOf(index))
    if (!term.ok) return term
    terms.push(term.value)
  }
  const judged = p === null ? simple(terms) : together(terms, p)
  const used = new Set(terms.flatMap((term) => term.measures.flatMap((name) => [name, ...input.basis(name)])))
  const bars = input.bars.filter((bar) => !bar.measures || bar.measures.some((name) => used.has(name)))
  const verdict = judged === 'pass' && bars.length > 0 ? 'undetermined' : judged
  const unknown =
    p === null ? [] : terms.flatMap((term) => (term.probability === null ? term.margin.why : []))
  const close =
    verdict === 'undetermined' && unknown.length === 0 && judged === 'undetermined'
      ? terms.flatMap((term) =>
          term.verdict === 'undetermined'
            ? [
                `${term.text} is met with a probability of ${percent(term.probability ?? 0)}, and ${rule.text} asks for more before it passes or fails`,
              ]
            : [],
        )
      : []
  return {
    ok: true,
    value: {
      criterion: criterion.id,
      accept,
      rule,
      why: criterion.why,
      terms,
      verdict,
      barred: bars.length > 0,
      reasons: [...new Set([...bars.map((bar) => bar.text), ...unknown, ...close])],
      settle: verdict === 'undetermined' ? settling(terms, input.sourceWords) : [],
    },
  }
}

const simple = (terms: readonly Term[]): Verdict =>
  terms.some((term) => term.verdict === 'fail') ? 'fail' : 'pass'
