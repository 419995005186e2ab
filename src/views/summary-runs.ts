/** Runs that are new, or that come out differently, with what each criterion says. */
import type { Review } from '../campaign/history/types.ts'
import type { Run } from '../campaign/types.ts'
import type { Judgement, Term } from '../judge/types.ts'
import { limitText, probabilityText, resultText } from './show.ts'
import type { CriterionLine, RunLine } from './summary-types.ts'
import { nameWords } from './words.ts'

const verdictOf = (run: Run): string => {
  const word = run.verdict ?? `void, would be ${run.wouldBe}`
  return run.record.stopped === undefined ? word : `${word}, stopped`
}

const termLine = (judgement: Judgement, term: Term, several: boolean): CriterionLine => ({
  name: nameWords(judgement.criterion),
  result: resultText(term.value, term.unit),
  before: null,
  limit: limitText(term),
  probability: probabilityText(term),
  verdict: several ? term.verdict : judgement.verdict,
})

const criterionLines = (run: Run): CriterionLine[] =>
  run.counting.flatMap((judgement) =>
    judgement.terms.length === 0
      ? [
          {
            name: nameWords(judgement.criterion),
            result: 'not computed',
            before: null,
            limit: judgement.accept,
            probability: '',
            verdict: judgement.verdict,
          },
        ]
      : judgement.terms.map((term) => termLine(judgement, term, judgement.terms.length > 1)),
  )

/** What stood there before, where it was something else. */
const against = (now: readonly CriterionLine[], then: readonly CriterionLine[]): CriterionLine[] =>
  now.map((line) => {
    const nth = now.filter(({ name }) => name === line.name).indexOf(line)
    const old = then.filter(({ name }) => name === line.name)[nth]
    if (!old) return { ...line, before: then.length > 0 ? 'not judged' : null }
    const words = [
      ...(old.result === line.result ? [] : [old.result]),
      ...(old.limit === line.limit ? [] : [`limit ${old.limit}`]),
      ...(old.verdict === line.verdict ? [] : [old.verdict]),
    ]
    return { ...line, before: words.length > 0 ? words.join(', ') : null }
  })

/** `touched`: its own file differs, be it in what does not count. Null: it is new neither nor changed. */
export const runLine = (
  run: Run,
  old: Run | undefined,
  touched: boolean,
  reviewed: readonly Review[],
): RunLine | null => {
  const now = criterionLines(run)
  const then = old ? criterionLines(old) : []
  const criteria = old ? against(now, then) : now
  const lost = then.some(({ name }) => !now.some((line) => line.name === name))
  const before = old ? verdictOf(old) : null
  const verdict = verdictOf(run)
  const differs = before !== verdict || lost || criteria.some((line) => line.before !== null)
  if (old && !differs && !touched) return null
  return {
    id: run.id,
    is: old ? 'changed' : 'new',
    card: run.card.title,
    article: run.article,
    by: run.record.by,
    reviewed: [...new Set(reviewed.map(({ by, how }) => `${by} (${how})`))],
    before,
    verdict,
    reasons: run.verdict === 'pass' ? [] : run.reasons,
    criteria,
  }
}
