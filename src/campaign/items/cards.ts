/** Items that follow from the status of a card: failed, undetermined, not run, too few, due again. */
import type { CardState, OpenItem, Run } from '../types.ts'
import { cardItem, type ItemContext } from './item.ts'

/** A name of a formula as words. */
const plain = (name: string): string => name.replaceAll('_', ' ')

const dayOf = (when: string): string => when.slice(0, 10)

const failed = (context: ItemContext, state: CardState, runs: readonly Run[]): OpenItem[] =>
  runs.flatMap((run) =>
    run.counting
      .filter((judgement) => run.verdict === 'fail' && judgement.verdict === 'fail')
      .map((judgement) =>
        cardItem(
          context,
          state,
          {
            kind: 'failed-criterion',
            about: [state.id, state.article, run.id],
            title: `${state.card.title}: ${plain(judgement.criterion)} fails on ${state.article}`,
            closes: 'a rework of what failed and a passing run after it, or a concession',
            since: run.record.when.date,
          },
          judgement.criterion,
          run.id,
        ),
      ),
  )

const undetermined = (context: ItemContext, state: CardState, runs: readonly Run[]): OpenItem[] => {
  const round = state.rounds.at(-1)
  const open = round?.judgements.filter((judgement) => judgement.verdict === 'undetermined') ?? []
  const since = runs.at(-1)?.record.when.date ?? ''
  return open.map((judgement) =>
    cardItem(
      context,
      state,
      {
        kind: 'undetermined-criterion',
        about: [state.id, state.article, ...(round?.runs ?? [])],
        title: `${state.card.title}: ${plain(judgement.criterion)} is undetermined on ${state.article}`,
        closes: judgement.settle[0] ?? judgement.reasons[0] ?? 'a run that decides it',
        since,
      },
      judgement.criterion,
    ),
  )
}

const notComputed = (context: ItemContext, state: CardState, runs: readonly Run[]): OpenItem[] =>
  runs
    .filter((run) => run.computed === null && run.verdict !== null)
    .map((run) =>
      cardItem(
        context,
        state,
        {
          kind: 'not-computed',
          about: [run.id, state.id],
          title: `${run.id} cannot be computed: ${run.reasons[0] ?? 'no reason is known'}`,
          closes: 'readings that the method can use, or a new run',
          since: run.record.when.date,
        },
        run.id,
      ),
    )

/** Every run of the round was broken off or cannot be judged: nothing names a criterion, and still nothing is decided. */
const undecided = (context: ItemContext, state: CardState, runs: readonly Run[]): OpenItem =>
  cardItem(context, state, {
    kind: 'undetermined-criterion',
    about: [state.id, state.article, ...runs.map((run) => run.id)],
    title: `${state.card.title}: no run of round ${state.round} decides it on ${state.article}`,
    closes: 'a run that is carried through',
    since: runs.at(-1)?.record.when.date ?? context.asOf,
  })

const firstRunOf = (context: ItemContext): string => context.runs[0]?.record.when.date ?? context.asOf

const ofState = (context: ItemContext, state: CardState): OpenItem[] => {
  const round = state.rounds.at(-1)
  const runs = context.runs.filter((run) => round?.runs.includes(run.id))
  const about = [state.id, state.article]
  if (state.status === 'not-run') {
    const title = `${state.card.title} has not been run on ${state.article}`
    return [
      cardItem(context, state, {
        kind: 'not-run',
        about,
        title,
        closes: 'a passing run',
        since: firstRunOf(context),
      }),
    ]
  }
  if (state.status === 'due-again') {
    const because = state.dueBecause
    const title = `${state.card.title} is due again on ${state.article} after ${because?.what ?? 'a change'}`
    const since = dayOf(because?.when ?? context.asOf)
    return [
      cardItem(context, state, {
        kind: 'due-again',
        about: [...about, because?.id ?? ''],
        title,
        closes: 'a passing run after that change',
        since,
      }),
    ]
  }
  if (state.status === 'fail') return failed(context, state, runs)
  if (state.status !== 'undetermined') return []
  const needed = state.card.runsPerRound
  const counted = (round?.counts.pass ?? 0) + (round?.counts.undetermined ?? 0) - (round?.counts.stopped ?? 0)
  const few: OpenItem[] =
    counted < needed && needed > 1
      ? [
          cardItem(context, state, {
            kind: 'too-few-runs',
            about,
            title: `${state.card.title} has ${counted} of ${needed} runs on ${state.article} in round ${state.round}`,
            closes: `${needed - counted} more runs in this round`,
            since: runs[0]?.record.when.date ?? context.asOf,
          }),
        ]
      : []
  const why = [...few, ...undetermined(context, state, runs), ...notComputed(context, state, runs)]
  return why.length > 0 ? why : [undecided(context, state, runs)]
}

export const cardItems = (context: ItemContext): OpenItem[] =>
  context.cards.flatMap((state) => ofState(context, state))
