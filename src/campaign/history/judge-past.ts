/** Every run under the states of then: by its card as run, and as it landed. The worse counts until it was reviewed. */
import { firstVersion } from '../../history/state.ts'
import type { Judgement, Verdict } from '../../judge/types.ts'
import type { Run } from '../types.ts'
import type { StateRequest, StateResult } from './other-states.ts'
import { cardCame, type Facts, type OldFile, oldFiles, type Past, pastOfRun } from './past.ts'
import { dataPathOf, todaysText } from './provenance.ts'
import type { ReviewsOf } from './reviews.ts'
import type { RunText } from './run-text.ts'
import { shiftsOf, worse, worstOf } from './shifts.ts'
import type { AsLanded, AsRun } from './types.ts'

/** What is to be judged beside the run as it is; nulls: nothing differs. */
export type Cases = {
  readonly run: Run
  readonly past: Past | null
  readonly old: readonly OldFile[]
  readonly landed: RunText | null
  readonly asRun: StateRequest | null
  readonly asLanded: StateRequest | null
  /** What was really done: the readings as they landed, by the card of then. */
  readonly both: StateRequest | null
}

/** `landed`: the run as it landed, where a protected field has changed since. */
export const casesOf = (facts: Facts, run: Run, landed: RunText | null): Cases => {
  const past = pastOfRun(facts, run)
  const old = past ? oldFiles(facts, run, past) : []
  const request = (as: StateRequest['as'], text: RunText, files: readonly OldFile[]): StateRequest => ({
    id: run.id,
    as,
    path: run.record.source.path,
    cardPath: run.card.source.path,
    run: text,
    old: files,
  })
  const changed = run.provenance.changes?.length ? landed : null
  return {
    run,
    past,
    old,
    landed: changed,
    asRun:
      old.length > 0
        ? request('today', todaysText(facts, run.record.source, dataPathOf(run.record)), old)
        : null,
    asLanded: changed ? request('landed', changed, []) : null,
    both: changed && old.length > 0 ? request('landed', changed, old) : null,
  }
}

const NOT_JUDGED: readonly Judgement[] = []

const outcomeOf = (
  result: StateResult | undefined,
  run: Run,
): Pick<AsRun, 'judgements' | 'verdict' | 'unreadable'> => {
  if (!result) return { judgements: run.judgements, verdict: run.presentVerdict, unreadable: null }
  return result.ok
    ? { judgements: result.judgements, verdict: result.verdict, unreadable: null }
    : { judgements: NOT_JUDGED, verdict: 'undetermined', unreadable: result.why }
}

/** All files by which it would be judged otherwise were reviewed as they are today. */
const reviewedSince = (old: readonly OldFile[], run: Run, reviews: ReviewsOf): boolean =>
  old.every(({ path }) => {
    const id = path.slice(path.lastIndexOf('/') + 1).replace(/\.[a-z]+$/, '')
    return reviews(path, id, run.record.by).reviewed.length > 0
  })

const asRunOf = (
  facts: Facts,
  { run, past, old }: Cases,
  result: StateResult | undefined,
  reviews: ReviewsOf,
): AsRun => {
  const outcome = outcomeOf(result, run)
  const landing = firstVersion(facts.history, run.record.source.path)?.commit ?? null
  return {
    ...outcome,
    revision: past?.cardCommit ?? null,
    when: past?.when ?? null,
    writtenAfter: past?.writtenAfter ?? false,
    togetherWithRun: cardCame(facts, run.card.source.path) === landing,
    cardReviewed: reviews(run.card.source.path, run.card.id, run.record.by).reviewed.length > 0,
    differs: old.map(({ path }) => path),
    shifts: result?.ok && run.computed ? shiftsOf(outcome.judgements, run.judgements) : [],
    counts: old.length > 0 && !reviewedSince(old, run, reviews),
  }
}

const asLandedOf = ({ run }: Cases, result: StateResult | undefined): AsLanded | null => {
  if (!result) return null
  const { changes, reviewed } = run.provenance
  const settled = (changes ?? []).every((change) => change.amended) && reviewed.length > 0
  return { ...outcomeOf(result, run), counts: !settled }
}

const heldDown = (verdict: Verdict, by: string): string =>
  `by ${by} it is ${verdict === 'fail' ? 'a fail' : verdict}, and that counts until the change is reviewed`

/** The run with the verdict that counts. */
export const withPast = (
  facts: Facts,
  cases: Cases,
  resultOf: (request: StateRequest | null) => StateResult | undefined,
  reviews: ReviewsOf,
): Run => {
  const { run } = cases
  const asRun = asRunOf(facts, cases, resultOf(cases.asRun), reviews)
  const asLanded = asLandedOf(cases, resultOf(cases.asLanded))
  const both = outcomeOf(resultOf(cases.both), run)
  const counting = [
    { counts: asRun.counts, state: asRun, by: 'the card and instruments as they were when it was made' },
    { counts: asLanded?.counts ?? false, state: asLanded, by: 'the record as it landed' },
    {
      counts: cases.both !== null && asRun.counts && (asLanded?.counts ?? false),
      state: both,
      by: 'the record as it landed and the card as it was when it was made',
    },
  ].flatMap(({ counts, state, by }) => (counts && state && state.unreadable === null ? [{ state, by }] : []))
  const wouldBe = counting.reduce((worst, { state }) => worse(state.verdict, worst), run.presentVerdict)
  const reasons = counting
    .filter(({ state }) => worse(state.verdict, run.presentVerdict) !== run.presentVerdict)
    .map(({ state, by }) => heldDown(state.verdict, by))
  const unread = [asRun.unreadable, asLanded?.unreadable ?? null].flatMap((why) =>
    why === null ? [] : [`it cannot be judged by the files of then: ${why}`],
  )
  return {
    ...run,
    asRun,
    asLanded,
    counting: worstOf(run.judgements, ...counting.map(({ state }) => state.judgements)),
    wouldBe,
    verdict: run.record.void ? null : wouldBe,
    reasons: [...run.reasons, ...reasons],
    notes: [...run.notes, ...unread],
  }
}
