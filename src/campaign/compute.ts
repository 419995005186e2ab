/** Records in, one `Campaign` out. No clock: what depends on the day takes `asOf`. */
import type { CardRecord, Records } from '../format/types.ts'
import type { History } from '../history/types.ts'
import type { Method } from '../methods/method.ts'
import type { Problem } from '../problems/types.ts'
import { lazily } from '../quantity/lazily.ts'
import { assemble } from './assemble.ts'
import { checkCard } from './check-card.ts'
import { decidable } from './decidable.ts'
import { type CardFormulas, type Functions, functionsFor, parseCard } from './formulas.ts'
import { withHistory } from './history/with-history.ts'
import { inputsOf } from './inputs.ts'
import { inOrder } from './order.ts'
import { planOf } from './plan/plan.ts'
import { computeRun } from './run.ts'
import { plannedSchema } from './schema.ts'
import { workExpected, workTargets } from './targets.ts'
import { trendsOf } from './trends.ts'
import type { Campaign, CardState, Run } from './types.ts'

export type CampaignInput = {
  readonly records: Records
  /** Problems of the files; those of formulas are added. */
  readonly problems: readonly Problem[]
  readonly methods: Readonly<Record<string, Method>>
  /** General formula functions. */
  readonly functions: Functions
  /** `YYYY-MM-DD` */
  readonly asOf: string
  readonly tool: string
  /** What git knows; left out: nobody asked. */
  readonly history?: History
  /** Texts of the files, by path: needed with a history that is known. */
  readonly texts?: ReadonlyMap<string, string>
}

const NOT_READ: History = { state: 'unknown', why: 'not-read', message: '', hint: '' }

const articleOf = (record: { article?: string }, card: CardRecord): string =>
  record.article ?? Object.keys(card.articles)[0] ?? ''

const computeRuns = (
  input: CampaignInput,
  formulas: ReadonlyMap<string, CardFormulas>,
): { runs: Run[]; problems: Problem[] } => {
  const runs = new Map<string, Run>()
  const problems: Problem[] = []
  for (const record of inOrder(input.records.runs)) {
    const card = input.records.cards[record.card]
    const method = card && input.methods[card.method]
    const parsed = card && formulas.get(card.id)
    if (!card || !method || !parsed) continue
    const computed = computeRun({
      record,
      card,
      article: articleOf(record, card),
      method,
      formulas: parsed,
      functions: functionsFor(method, input.functions),
      instruments: input.records.instruments,
      runs,
    })
    runs.set(record.id, computed.run)
    problems.push(...computed.problems)
  }
  return { runs: [...runs.values()], problems }
}

const byTime = (a: Run, b: Run): number => a.record.when.epoch - b.record.when.epoch || (a.id < b.id ? -1 : 1)

/** What a card asks for on one article before any test: targets, the plan, and whether its instruments can decide. */
const plan = (
  input: CampaignInput,
  state: CardState,
  formulas: CardFormulas | undefined,
  runs: readonly Run[],
  results: ReadonlyMap<string, Run>,
): CardState => {
  const { card, method, article } = state
  if (!method || !formulas) return state
  const functions = functionsFor(method, input.functions)
  const schema = plannedSchema(method, card)
  const given = inputsOf(schema, card, article, null, results)
  const worked = workTargets(card, schema, formulas, functions, given)
  const { targets, inputs } = worked
  const planned = { card, article, method, schema, formulas, functions, inputs, targets, runs }
  // Only pages show these; a check of ten thousand runs need not rehearse a test.
  const expected = lazily(() => workExpected(card, schema, formulas, functions, worked))
  const decided = lazily(() => decidable(planned))
  const before = lazily(() => planOf({ ...planned, records: input.records, asOf: input.asOf }))
  return {
    ...state,
    targets,
    get expected() {
      return expected()
    },
    get decidable() {
      return decided()
    },
    get plan() {
      return before()
    },
  }
}

export const computeCampaign = (input: CampaignInput): Campaign => {
  const { records, methods } = input
  const formulas = new Map(Object.values(records.cards).map((card) => [card.id, parseCard(card)]))
  const cardProblems = Object.values(records.cards).flatMap((card) => {
    const method = methods[card.method]
    const parsed = formulas.get(card.id)
    return method && parsed ? checkCard(card, method, parsed, functionsFor(method, input.functions)) : []
  })
  const computed = computeRuns(input, formulas)
  const followed = withHistory({
    history: input.history ?? NOT_READ,
    texts: input.texts ?? new Map(),
    records,
    methods,
    functions: input.functions,
    runs: computed.runs,
  })
  const runs = [...followed.runs].sort(byTime)
  const assembly = assemble({
    records,
    runs,
    methods,
    functions: input.functions,
    formulas,
    asOf: input.asOf,
    history: followed.facts,
  })
  const results = new Map(runs.map((run) => [run.id, run]))
  const cards = assembly.cards.map((state) => plan(input, state, formulas.get(state.id), runs, results))
  const trends = lazily(() => cards.flatMap((state) => trendsOf(state, assembly.runs, records.reworks)))
  return {
    asOf: input.asOf,
    tool: input.tool,
    records,
    ...assembly,
    cards,
    reworks: Object.values(records.reworks).sort((a, b) => a.when.epoch - b.when.epoch),
    get trends() {
      return trends()
    },
    problems: [...input.problems, ...cardProblems, ...computed.problems, ...followed.problems],
  }
}
