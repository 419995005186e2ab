/** Each measure that a criterion uses, over the rounds of one card and article. */

import type { ReworkRecord } from '../format/types.ts'
import type { Judgement, Term, Verdict } from '../judge/types.ts'
import { subtract } from '../quantity/combine.ts'
import { expanded } from '../quantity/quantity.ts'
import { worst } from './judging.ts'
import type { CardState, Round, Run, Trend, TrendPoint } from './types.ts'
import { siUnit } from './units.ts'

/** Limits of terms that are over this measure alone: those of others cannot be drawn on its axis. */
const limitsOf = (judgements: readonly Judgement[], measure: string): Trend['limits'] => {
  const terms = judgements.flatMap((judgement) => judgement.terms).filter((term) => isAlone(term, measure))
  return terms.flatMap((term) =>
    term.limits.map((limit, index) => ({
      value: limit.value,
      side:
        term.direction === 'below' || (term.direction === 'between' && index === 1)
          ? ('above' as const)
          : ('below' as const),
      text: term.text,
    })),
  )
}

const isAlone = (term: Term, measure: string): boolean =>
  term.measures.length === 1 &&
  term.measures[0] === measure &&
  new RegExp(`^([^a-z_]*)${measure}\\s*[<>]|[<>]=?\\s*${measure}\\b`).test(term.text)

const gainsOf = (rounds: readonly Round[], measure: string): Trend['gains'] =>
  rounds.slice(1).flatMap((round, index) => {
    const before = rounds[index]?.measures[measure]
    const after = round.measures[measure]
    if (!before || !after) return []
    const gain = subtract(after, before)
    const U = expanded(gain)?.U ?? null
    return [
      {
        from: round.number - 1,
        to: round.number,
        gain,
        significant: U === null ? null : Math.abs(gain.value) > U,
      },
    ]
  })

/** The verdict on this measure, not that of the run: a run may fail by something else. */
const verdictOn = (run: Run, measure: string): Verdict | null => {
  const own = run.counting.filter((judgement) =>
    judgement.terms.some((term) => term.measures.includes(measure)),
  )
  return run.verdict === null || own.length === 0 ? null : worst(own)
}

export const trendsOf = (
  state: CardState,
  runs: readonly Run[],
  reworks: Readonly<Record<string, ReworkRecord>>,
): Trend[] => {
  const own = runs.filter((run) => run.card.id === state.id && run.article === state.article && run.computed)
  const names = [
    ...new Set(
      own.flatMap((run) => run.judgements.flatMap((each) => each.terms.flatMap((term) => term.measures))),
    ),
  ]
  const newest = own.at(-1)
  if (!newest) return []
  return names.map((measure) => {
    const points: TrendPoint[] = own.flatMap((run) => {
      const value = run.computed?.measures[measure] ?? run.computed?.derived[measure]
      return value
        ? [
            {
              run: run.id,
              round: run.round,
              when: run.record.when.text,
              value,
              verdict: verdictOn(run, measure),
              limits: limitsOf(run.judgements, measure),
              limitsAsRun:
                run.asRun && run.asRun.unreadable === null ? limitsOf(run.asRun.judgements, measure) : null,
            },
          ]
        : []
    })
    return {
      card: state.id,
      article: state.article,
      measure,
      unit: newest.units[measure] ?? siUnit(points[0]?.value.dim ?? [0, 0, 0, 0, 0, 0]),
      points,
      limits: limitsOf(newest.judgements, measure),
      reworks: state.rounds.flatMap((round) => {
        const rework = reworks[round.begunBy?.id ?? '']
        return rework
          ? [{ id: rework.id, title: rework.title, when: rework.when.text, beforeRound: round.number }]
          : []
      }),
      gains: gainsOf(state.rounds, measure),
    }
  })
}
