/** Results of other runs that a new run takes over as givens: the newest that stands, of the same card and article. */
import type { CardState, Run } from '../campaign/types.ts'

export type TakenOver =
  | { readonly from: string; readonly measure: string }
  /** Nothing stands that could be taken over. */
  | { readonly from: null; readonly why: string }

type Habit = { readonly card: string; readonly article: string; readonly measure: string }

/** Where earlier runs of this card took the given from; those on this article say more than those on another. */
const habitOf = (name: string, { id, article }: CardState, runs: readonly Run[]): Habit | null => {
  const uses = runs.flatMap((run) => {
    const given = run.card.id === id ? run.record.given[name] : undefined
    const source = given?.form === 'result' ? runs.find((each) => each.id === given.from) : undefined
    return given?.form === 'result' && source ? [{ run, source, measure: given.measure }] : []
  })
  const last = uses.findLast(({ run }) => run.article === article) ?? uses.at(-1)
  if (!last) return null
  const { run, source, measure } = last
  const same = source.article === run.article
  return { card: source.card.id, article: same ? article : source.article, measure }
}

const stands = (run: Run): boolean =>
  run.verdict !== null &&
  run.overtakenBy === null &&
  run.gone === null &&
  run.record.stopped === undefined &&
  run.computed !== null

/** Null: no earlier run of this card took it from another run. */
export const takenOver = (name: string, state: CardState, runs: readonly Run[]): TakenOver | null => {
  const habit = habitOf(name, state, runs)
  if (habit === null) return null
  const { card, article, measure } = habit
  const newest = runs.findLast(
    (run) =>
      run.card.id === card &&
      run.article === article &&
      stands(run) &&
      (run.computed?.measures[measure] ?? run.computed?.derived[measure]) !== undefined,
  )
  if (newest) return { from: newest.id, measure }
  return { from: null, why: `no run of ${card} on ${article} stands; it was ${measure} of one before` }
}
