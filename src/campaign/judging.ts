/** All criteria of a card over one set of measures: of a single run, or of the pooled runs of a round. */

import type { CardRecord, CriterionRecord } from '../format/types.ts'
import { type Bar, judgeCriterion } from '../judge/judge.ts'
import type { Scope } from '../judge/term.ts'
import type { Judgement, Verdict } from '../judge/types.ts'
import type { Measures, Schema } from '../methods/method.ts'
import { sourceWords } from '../methods/source-words.ts'
import type { Draws } from '../quantity/draws.ts'
import { conjuncts, dimensionOf, namesIn } from '../quantity/formula/index.ts'
import type { Node } from '../quantity/formula/types.ts'
import { expanded } from '../quantity/quantity.ts'
import type { Quantity, Unit } from '../quantity/types.ts'
import { basisOf, type CardFormulas, type Functions } from './formulas.ts'
import { criterionUnit, siUnit } from './units.ts'

export type JudgingInput = {
  readonly card: CardRecord
  readonly schema: Schema
  readonly formulas: CardFormulas
  readonly functions: Functions
  readonly measures: Measures
  readonly derived: Measures
  /** Givens and targets that criteria may name. */
  readonly known: Readonly<Record<string, Quantity>>
  /** Where the card asks for Monte Carlo. */
  readonly draws?: Draws
  /** What bars a pass of a criterion at its own confidence. */
  readonly barsAt: (p: number) => readonly Bar[]
}

/** What cannot be judged is undetermined, with the reason; it is never left out. */
const notJudged = (criterion: CriterionRecord, reason: string): Judgement => ({
  criterion: criterion.id,
  accept: criterion.accept,
  rule: criterion.rule,
  why: criterion.why,
  terms: [],
  verdict: 'undetermined',
  barred: true,
  reasons: [reason],
  settle: [],
})

/** A leak, play, friction or damping below −U cannot be: something in the model or the readings is wrong. */
export const negativeBars = (schema: Schema, measures: Measures): Bar[] =>
  schema.measures.flatMap((field) => {
    const measure = measures[field.name]
    if (!field.positive || !measure || measure.value >= 0) return []
    const U = expanded(measure)?.U
    if (U === undefined || measure.value >= -U) return []
    return [
      {
        text: `${field.meaning} cannot be negative, yet it comes out below minus its uncertainty`,
        measures: [field.name],
      },
    ]
  })

const unitOfTerm = (
  input: JudgingInput,
  criterion: CriterionRecord,
  scope: Readonly<Record<string, Quantity>>,
  measured: ReadonlySet<string>,
  node: Node,
): Unit => {
  const all = namesIn(node, input.functions)
  const dims = Object.fromEntries(all.flatMap((name) => (scope[name] ? [[name, scope[name].dim]] : [])))
  const first = node.type === 'compare' ? node.operands[0] : undefined
  const dim = first && dimensionOf(first, dims, input.functions)
  const names = all.filter((name) => measured.has(name))
  return dim?.ok ? criterionUnit(input.card, criterion.show, names, dim.value) : siUnit([0, 0, 0, 0, 0, 0])
}

/** What all criteria of a card have in common. */
type Common = { readonly scope: Scope; readonly negative: readonly Bar[] }

const commonOf = (input: JudgingInput): Common => {
  const { schema, formulas, functions, measures, derived, known, draws } = input
  return {
    scope: {
      values: { ...known, ...derived, ...measures },
      measures: new Set([...schema.measures.map((field) => field.name), ...formulas.derive.keys()]),
      positive: new Set(schema.measures.filter((field) => field.positive).map((field) => field.name)),
      functions,
      ...(draws ? { draws } : {}),
    },
    negative: negativeBars(schema, measures),
  }
}

const judgeOne = (
  input: JudgingInput,
  { scope, negative }: Common,
  criterion: CriterionRecord,
): Judgement => {
  const formula = input.formulas.criteria.get(criterion.id)
  if (!formula) return notJudged(criterion, 'its formula cannot be read')
  const { values } = scope
  const missing = namesIn(formula, input.functions).filter((name) => !(name in values))
  if (missing.length > 0) return notJudged(criterion, `the readings do not give ${missing.join(', ')}`)
  const compares = conjuncts(formula)
  const judged = judgeCriterion({
    criterion,
    formula,
    scope,
    unitOf: (term) =>
      unitOfTerm(input, criterion, values, scope.measures, (compares.ok && compares.value[term]) || formula),
    bars: [...input.barsAt(criterion.rule.kind === 'guarded' ? criterion.rule.p : 0.95), ...negative],
    basis: basisOf(input.formulas.derive, input.functions),
    sourceWords,
  })
  return judged.ok ? judged.value : notJudged(criterion, judged.error)
}

export const judgeAll = (input: JudgingInput): Judgement[] => {
  const common = commonOf(input)
  return input.card.criteria.map((criterion) => judgeOne(input, common, criterion))
}

export const worst = (judgements: readonly Judgement[]): Verdict => {
  if (judgements.some((judgement) => judgement.verdict === 'fail')) return 'fail'
  if (judgements.length === 0 || judgements.some((judgement) => judgement.verdict === 'undetermined'))
    return 'undetermined'
  return 'pass'
}
