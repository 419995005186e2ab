/** What a method finds wrong with readings and givens together, at its place in the file. */
import type { CardRecord, RunRecord } from '../format/types.ts'
import type { Columns, Givens, Method } from '../methods/method.ts'
import { makeProblem } from '../problems/make.ts'
import type { Place, Problem } from '../problems/types.ts'

type Finding = ReturnType<NonNullable<Method['validate']>>[number]

const placeOf = (finding: Finding, run: RunRecord, card: CardRecord, article: string): Place => {
  const { column, given, row } = finding
  const index = run.readings.columns.findIndex((each) => each.name === column)
  if (index >= 0) return run.source.locateCell(row ?? -2, index)
  if (given && given in run.given) return run.source.locate(['given', given])
  if (given && given in (card.articles[article] ?? {}))
    return card.source.locate(['articles', article, given])
  if (given && given in card.given) return card.source.locate(['given', given])
  return run.source.locate(['readings'], 'key')
}

export const findingsOf = (
  method: Method,
  columns: Columns,
  givens: Givens,
  run: RunRecord,
  card: CardRecord,
  article: string,
): Problem[] =>
  (method.validate?.(columns, givens) ?? []).map((finding) => {
    const { code, message, severity, why, hint } = finding
    return makeProblem({ code, message, severity, why, hint, at: placeOf(finding, run, card, article) })
  })
