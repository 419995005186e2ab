/** One card on one article: its rounds and its status. Status is that of the newest round. */
import type { CardRecord, ItemRecord, Person } from '../format/types.ts'
import type { Judgement } from '../judge/types.ts'
import type { Method } from '../methods/method.ts'
import { concessionInForce } from './concession.ts'
import { type CardFormulas, evaluateAll, type Functions } from './formulas.ts'
import { worstOf } from './history/shifts.ts'
import { judgeAll, worst } from './judging.ts'
import { counts, decidingRuns, poolDraws, poolMeasures } from './pool.ts'
import type { Span } from './rounds.ts'
import { schemaOfColumns } from './schema.ts'
import { simulated } from './simulate.ts'
import { knownBefore } from './targets.ts'
import type { CardState, CardStatus, Round, Run } from './types.ts'

export type CardContext = {
  readonly card: CardRecord
  readonly article: string
  readonly method: Method
  readonly formulas: CardFormulas
  readonly functions: Functions
  readonly items: readonly ItemRecord[]
  readonly people: Readonly<Record<string, Person>>
  readonly asOf: string
}

/** Judged anew over the pool: the bars of single runs were looked at before they came in. */
const judgePool = (context: CardContext, pool: readonly Run[]): Pick<Round, 'judgements' | 'measures'> => {
  const [only, second] = pool
  const computed = only?.computed
  if (!only || !computed) return { judgements: [], measures: {} }
  if (!second) return { judgements: only.judgements, measures: { ...computed.measures, ...computed.derived } }
  const { card, method, formulas, functions } = context
  const pooled = poolMeasures(pool)
  const known = knownBefore(computed.inputs, computed.targets)
  const { measures, derived, trials } = simulated({
    card,
    formulas,
    functions,
    known,
    measures: pooled,
    derived: evaluateAll(formulas.derive, { ...known, ...pooled }, functions),
    draws: poolDraws(pool) ?? undefined,
  })
  const schema = schemaOfColumns(method, card, computed.columns)
  const judgements = judgeAll({
    card,
    schema,
    formulas,
    functions,
    measures,
    derived,
    known,
    barsAt: () => [],
    ...trials,
  })
  return { judgements, measures: { ...measures, ...derived } }
}

const conceded = (context: CardContext, runs: readonly Run[], newest: boolean): boolean => {
  const failing = runs.flatMap((run) =>
    run.verdict === 'fail'
      ? run.counting.filter((each) => each.verdict === 'fail').map((each) => ({ run, each }))
      : [],
  )
  return (
    failing.length > 0 &&
    failing.every(({ run, each }) =>
      context.items.some(
        (item) =>
          item.concession?.run === run.id &&
          item.concession.criterion === each.criterion &&
          concessionInForce(item, context.people, context.asOf, newest),
      ),
    )
  )
}

const statusOf = (
  context: CardContext,
  runs: readonly Run[],
  pool: readonly Run[],
  judgements: readonly Judgement[],
  newest: boolean,
): Round['status'] => {
  if (runs.some((run) => run.verdict === 'fail')) return conceded(context, runs, newest) ? 'conceded' : 'fail'
  if (!runs.some((run) => run.verdict !== null)) return 'not-run'
  if (pool.length < context.card.runsPerRound) return 'undetermined'
  return worst(judgements)
}

const countsOf = (runs: readonly Run[]): Round['counts'] => ({
  pass: runs.filter((run) => run.verdict === 'pass').length,
  fail: runs.filter((run) => run.verdict === 'fail').length,
  undetermined: runs.filter((run) => run.verdict === 'undetermined').length,
  stopped: runs.filter((run) => run.record.stopped !== undefined).length,
  void: runs.filter((run) => run.record.void !== undefined).length,
})

/** What an unreviewed change of a card or record holds down, a pool does not lift again. */
const heldDown = (pool: readonly Run[], judgements: readonly Judgement[]): readonly Judgement[] => {
  const held = pool.filter((run) => run.wouldBe !== run.presentVerdict)
  return held.length === 0 ? judgements : worstOf(judgements, ...held.map((run) => run.counting))
}

/** The worst of the runs that decide; what they pool to where no card has moved. */
const asRunOf = (pool: readonly Run[], judgements: readonly Judgement[]): Round['asRun'] => {
  if (pool.some((run) => run.asRun === null)) return null
  const moved = pool.flatMap((run) =>
    run.asRun && run.asRun.differs.length > 0 ? [run.asRun.judgements] : [],
  )
  const all = moved.length === 0 ? judgements : worstOf(...pool.map((run) => run.asRun?.judgements ?? []))
  return Object.fromEntries(all.map(({ criterion, verdict }) => [criterion, verdict]))
}

const roundOf = (context: CardContext, span: Span, newest: boolean): Round => {
  const pool = decidingRuns(span.runs)
  const last = span.runs.filter((run) => run.verdict !== null && counts(run)).at(-1)
  const deciding = pool.length > 0 ? pool : last ? [last] : []
  const pooled = judgePool(context, deciding)
  const judgements = heldDown(deciding, pooled.judgements)
  return {
    number: span.number,
    begunBy: span.begunBy,
    runs: span.runs.map((run) => run.id),
    status: statusOf(context, span.runs, pool, judgements, newest),
    judgements,
    asRun: asRunOf(deciding, pooled.judgements),
    measures: pooled.measures,
    counts: countsOf(span.runs),
  }
}

/** Status and rounds; targets, decidability and gates are added by the caller. */
export const cardRounds = (
  context: CardContext,
  spans: readonly Span[],
): Pick<CardState, 'rounds' | 'round' | 'status' | 'dueBecause'> => {
  const rounds = spans.map((span, index) => roundOf(context, span, index === spans.length - 1))
  const newest = rounds.at(-1) as Round
  const again = newest.number > 1 && newest.status === 'not-run'
  const status: CardStatus = again ? 'due-again' : newest.status
  return { rounds, round: newest.number, status, dueBecause: again ? newest.begunBy : null }
}
