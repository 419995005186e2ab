/** One run: readings → columns → measures → derived → judged. The runs whose results it needs come before it. */
import type { CardRecord, InstrumentRecord, RunRecord } from '../format/types.ts'
import type { Bar } from '../judge/judge.ts'
import type { Judgement, Verdict } from '../judge/types.ts'
import { givensOf, measureRun } from '../methods/measure.ts'
import type { Method, Remark } from '../methods/method.ts'
import { drawsOf } from '../methods/monte-carlo.ts'
import type { Problem } from '../problems/types.ts'
import type { Unit } from '../quantity/types.ts'
import { prepareColumns } from './columns.ts'
import { findingsOf } from './findings.ts'
import { type CardFormulas, evaluateAll, type Functions } from './formulas.ts'
import { unknownProvenance } from './history/unknown.ts'
import { inputsOf } from './inputs.ts'
import { modelOf, usesOf } from './instruments.ts'
import { judgeAll, worst } from './judging.ts'
import { misusesOfRun } from './misuse.ts'
import { judgedTerms } from './plan/judged-terms.ts'
import { schemaOfReadings } from './schema.ts'
import { simulated } from './simulate.ts'
import { knownBefore, workTargets } from './targets.ts'
import type { Computed, Run } from './types.ts'
import { measureUnit } from './units.ts'

export type RunContext = {
  readonly record: RunRecord
  readonly card: CardRecord
  readonly article: string
  readonly method: Method
  readonly formulas: CardFormulas
  readonly functions: Functions
  readonly instruments: Readonly<Record<string, InstrumentRecord>>
  readonly runs: ReadonlyMap<string, Run>
}

type Outcome = Pick<Run, 'computed' | 'judgements' | 'reasons' | 'notes' | 'advice' | 'units'> & {
  readonly problems: readonly Problem[]
}

const nothing = (reasons: readonly string[], problems: readonly Problem[] = []): Outcome => ({
  computed: null,
  judgements: [],
  reasons,
  notes: [],
  advice: [],
  units: {},
  problems,
})

const compute = (context: RunContext): Outcome => {
  const { record, card, article, method, formulas, functions } = context
  const unread = Object.values(record.instruments).filter((id) => !context.instruments[id])
  // Without its instrument a reading would look better than it is.
  if (unread.length > 0)
    return nothing([`the file of ${unread.join(', ')} has errors, so its readings cannot be judged`])
  const schema = schemaOfReadings(method, card, record)
  const given = inputsOf(schema, card, article, record, context.runs)
  if (given.missing.length > 0) return nothing(given.missing)
  const { targets, inputs } = workTargets(card, schema, formulas, functions, given)
  const { columns: readings, zero, notes } = prepareColumns(record, context.instruments)
  const before = givensOf({ inputs: inputs.numbers, words: inputs.words, fields: card.fields })
  const problems = findingsOf(method, readings, before, record, card, article)
  const misused = misusesOfRun(context, before.words)
  if (misused.length > 0)
    return nothing(
      misused.map(({ message }) => message),
      [...problems, ...misused.flatMap(({ problem }) => problem ?? [])],
    )
  const errors = problems.filter((problem) => problem.severity === 'error')
  if (errors.length > 0)
    return nothing(
      errors.map((problem) => problem.message),
      problems,
    )
  const models = Object.fromEntries(
    Object.entries(record.instruments).flatMap(([column, id]) => {
      const instrument = context.instruments[id]
      return instrument ? [[column, modelOf(instrument, record.when.date)]] : []
    }),
  )
  const measured = measureRun({
    runId: record.id,
    method,
    schema,
    columns: readings,
    instruments: models,
    inputs: inputs.numbers,
    words: inputs.words,
    fields: card.fields,
    zero,
  })
  if (!measured.ok) return nothing([measured.error], problems)
  const { measures: firstOrder, columns, givens, selection } = measured.value
  const known = knownBefore(inputs.numbers, targets)
  const draws = card.uncertainty === 'monte-carlo' ? drawsOf({ method }, measured.value) : undefined
  const { measures, derived, trials } = simulated({
    card,
    formulas,
    functions,
    known,
    measures: firstOrder,
    derived: evaluateAll(formulas.derive, { ...known, ...firstOrder }, functions),
    draws,
  })

  const remarks = new Map<number, readonly Remark[]>()
  const remarksAt = (p: number): readonly Remark[] => {
    const known = remarks.get(p) ?? method.conditions(firstOrder, columns, givens, selection, p)
    remarks.set(p, known)
    return known
  }
  const barsAt = (p: number): Bar[] => {
    const bars: Bar[] = remarksAt(p).filter((remark) => remark.effect === 'bars-pass')
    return record.stopped ? [...bars, { text: `the test was broken off: ${record.stopped}` }] : bars
  }
  const judgements = judgeAll({
    card,
    schema,
    formulas,
    functions,
    measures,
    derived,
    known,
    barsAt,
    ...trials,
  })
  const computed: Computed = {
    method,
    schema,
    columns,
    givens,
    inputs: inputs.numbers,
    targets,
    selection,
    measures,
    derived,
    ...(draws ? { draws } : {}),
    // Only pages draw them; a check of ten thousand runs need not.
    get figures() {
      return method.figures(measures, columns, givens, selection)
    },
  }
  const said = remarksAt(0.95).filter((remark) => remark.effect === 'note')
  return {
    computed,
    judgements,
    reasons: reasonsOf(judgements),
    notes: [
      ...notes,
      ...(record.readings.notes ?? []),
      ...said.map((remark) => remark.text),
      ...judgements.flatMap(ratioNotes),
    ],
    advice:
      method.advise?.(
        measures,
        judgedTerms(judgements, formulas, { ...known, ...measures, ...derived }, functions),
        givens,
        columns,
      ) ?? [],
    units: unitsOf(context, computed),
    problems,
  }
}

const unitsOf = ({ card }: RunContext, { schema, measures, derived }: Computed): Record<string, Unit> => {
  const kinds = new Map(schema.measures.map((field) => [field.name, field.kind]))
  return Object.fromEntries(
    Object.entries({ ...measures, ...derived }).map(([name, { dim }]) => [
      name,
      measureUnit(card, name, dim, kinds.get(name)),
    ]),
  )
}

/** A test uncertainty ratio below 1 : 1 is a warning of its own; what is below 4 : 1 is said at the result. */
const ratioNotes = (judgement: Judgement): string[] =>
  judgement.terms.flatMap(({ text, ratio }) =>
    ratio !== null && ratio < 1
      ? [`the uncertainty is larger than the limit of ${text}: such instruments cannot decide it`]
      : [],
  )

const reasonsOf = (judgements: readonly Judgement[]): string[] => [
  ...new Set(
    judgements
      .filter((judgement) => judgement.verdict === 'undetermined')
      .flatMap((judgement) => judgement.reasons),
  ),
]

/** Computes and judges one run. A void run keeps the verdict that it would have had beside it. */
export const computeRun = (context: RunContext): { run: Run; problems: readonly Problem[] } => {
  const { record, card, article } = context
  const { problems, ...outcome } = compute(context)
  const wouldBe: Verdict = worst(outcome.judgements)
  const bare = card.criteria.length === 0 ? ['the card has no criterion, so nothing can pass'] : []
  const run: Run = {
    id: record.id,
    record,
    card,
    article,
    round: 0,
    instruments: usesOf(record, context.instruments),
    ...outcome,
    reasons: [...outcome.reasons, ...bare],
    presentVerdict: wouldBe,
    counting: outcome.judgements,
    wouldBe,
    verdict: record.void ? null : wouldBe,
    overtakenBy: null,
    provenance: unknownProvenance(record),
    asRun: null,
    asLanded: null,
    gone: null,
  }
  return { run, problems }
}
