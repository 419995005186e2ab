/** The criteria of then beside those of today, where they differ: both limits, both verdicts, which counts and why. */
import type { Shift } from '../campaign/history/types.ts'
import type { Run } from '../campaign/types.ts'
import type { Judgement } from '../judge/types.ts'
import { code, joined, lineBreak, list, small, strong, table, text } from './page.ts'
import { limitText, resultText } from './show.ts'
import type { Site } from './site.ts'
import type { Block, Rich } from './view.ts'
import { listWords, nameWords, verdictStamp } from './words.ts'

const SHIFT_WORDS: Readonly<Record<Shift['is'], string>> = {
  same: 'the same',
  stricter: 'stricter than then',
  laxer: 'milder than then',
  'not comparable': 'not comparable',
}

const judgedWords = (judgement: Judgement | undefined, none: string): Rich => {
  if (!judgement) return [none]
  const terms = judgement.terms.map(
    (term): Rich => [small(`${resultText(term.value, term.unit)}, to be ${limitText(term)}`)],
  )
  return joined(
    [[code(judgement.accept)], ...terms, [small(judgement.rule.text)], [verdictStamp(judgement.verdict)]],
    lineBreak,
  )
}

const named = (judgements: readonly Judgement[], criterion: string): Judgement | undefined =>
  judgements.find((each) => each.criterion === criterion)

/** Where the judgement that counts was made. */
const originOf = (run: Run, counting: Judgement): string => {
  if (run.judgements.includes(counting)) return 'today'
  if (run.asRun?.judgements.includes(counting)) return 'as run'
  return run.asLanded?.judgements.includes(counting) ? 'as it landed' : 'as it landed, by the card as run'
}

const countsWords = (run: Run, criterion: string): Rich => {
  const counting = named(run.counting, criterion)
  if (!counting) return ['none']
  return [verdictStamp(counting.verdict), lineBreak, small(originOf(run, counting))]
}

const asRunRows = (run: Run): Rich[][] => {
  const { asRun } = run
  if (!asRun) return []
  return asRun.shifts
    .filter(({ is }) => is !== 'same')
    .map(({ criterion, is }) => [
      [strong(nameWords(criterion))],
      judgedWords(named(asRun.judgements, criterion), 'no such criterion then'),
      judgedWords(named(run.judgements, criterion), 'no such criterion today'),
      [SHIFT_WORDS[is]],
      countsWords(run, criterion),
    ])
}

/** Where a file was written, relative to the test; and why the one or the other verdict counts. */
const asRunReasons = (run: Run): string[] => {
  const { asRun, card } = run
  if (!asRun) return []
  const files = asRun.differs.length > 0 ? `\`${listWords(asRun.differs)}\`` : ''
  const written = asRun.togetherWithRun
    ? [`${card.id} came, or changed in what it judges by, together with this run`]
    : asRun.writtenAfter
      ? [`${card.id} reached the main line only after the test`]
      : []
  const unread =
    asRun.unreadable === null
      ? []
      : [`By the files of then it cannot be judged any more: ${asRun.unreadable}`]
  const counts =
    files === ''
      ? []
      : asRun.counts
        ? [
            `Changed since the test, and not all of it is reviewed: ${files}. Until it is, the worse verdict counts`,
          ]
        : [`Changed since the test, and reviewed: ${files}. The criteria of today count`]
  return [...written, ...unread, ...counts].map((each) => `${each}.`)
}

export const asRunBlocks = (run: Run, site: Site): Block[] => [
  ...table(
    'Criteria as run and today',
    ['criterion', 'as run', 'today', 'today is', 'counts'],
    asRunRows(run),
    { titled: true },
  ),
  ...list(asRunReasons(run).map(site.linked)),
]

/** Only where readings, givens or the like were changed since it landed. */
export const asLandedBlocks = (run: Run): Block[] => {
  const { asLanded } = run
  if (!asLanded) return []
  if (asLanded.unreadable !== null)
    return [text(`The record as it landed cannot be judged any more: ${asLanded.unreadable}.`)]
  const ids = [...new Set([...run.judgements, ...asLanded.judgements].map(({ criterion }) => criterion))]
  const why = asLanded.counts
    ? 'The record was changed since it landed, and not all of it is amended and reviewed: until then the worse verdict counts.'
    : 'The record was changed since it landed; the changes are amended and reviewed, and the record of today counts.'
  return [
    ...table(
      'The record as it landed and today',
      ['criterion', 'as it landed', 'today', 'counts'],
      ids.map((id) => [
        [strong(nameWords(id))],
        judgedWords(named(asLanded.judgements, id), 'no such criterion'),
        judgedWords(named(run.judgements, id), 'no such criterion'),
        countsWords(run, id),
      ]),
      { titled: true },
    ),
    text(why),
  ]
}
