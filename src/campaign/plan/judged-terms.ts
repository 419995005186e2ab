/** Judged criteria as a method's advice needs them: numbers, and what each measure would have to be. */
import type { Judgement, Term } from '../../judge/types.ts'
import type { JudgedTerm } from '../../methods/method.ts'
import { conjuncts } from '../../quantity/formula/index.ts'
import type { Node } from '../../quantity/formula/types.ts'
import { lazily } from '../../quantity/lazily.ts'
import type { Quantity } from '../../quantity/types.ts'
import type { CardFormulas, Functions } from '../formulas.ts'
import { type Numbers, neededValue } from './needed.ts'

const neededOf = (term: Term, compare: Node | undefined, numbers: Numbers, functions: Functions) => {
  if (term.verdict === 'pass' || compare?.type !== 'compare') return undefined
  const found = term.measures.flatMap((name) => {
    const value = neededValue(compare, name, numbers[name] ?? 0, numbers, functions)
    return value === null ? [] : [[name, value] as const]
  })
  return Object.fromEntries(found)
}

export const judgedTerms = (
  judgements: readonly Judgement[],
  formulas: CardFormulas,
  values: Readonly<Record<string, Quantity>>,
  functions: Functions,
): JudgedTerm[] => {
  const numbers = Object.fromEntries(Object.entries(values).map(([name, { value }]) => [name, value]))
  return judgements.flatMap((judgement) => {
    const formula = formulas.criteria.get(judgement.criterion)
    const compares = formula && conjuncts(formula)
    return judgement.terms.map((term, index): JudgedTerm => {
      // A search for each measure, which only some methods ask for.
      const needed = lazily(() =>
        neededOf(term, compares?.ok ? compares.value[index] : undefined, numbers, functions),
      )
      return {
        criterion: judgement.criterion,
        verdict: term.verdict,
        measures: term.measures,
        value: term.value.value,
        limits: term.limits.map((limit) => limit.value),
        direction: term.direction,
        get needed() {
          return needed()
        },
      }
    })
  })
}
