/** Runs as computed → runs with what git knows of them, those that are gone among them, and what else follows. */
import type { Records } from '../../format/types.ts'
import { commitsNamed, textOfBlob as landedTextOf } from '../../history/state.ts'
import type { History, KnownHistory } from '../../history/types.ts'
import type { Method } from '../../methods/method.ts'
import { makeProblem } from '../../problems/make.ts'
import { placeOfFile } from '../../problems/place.ts'
import type { Problem } from '../../problems/types.ts'
import type { Functions } from '../formulas.ts'
import type { Run } from '../types.ts'
import { type Begins, newBeginning } from './begins.ts'
import { changesOf, idleAmendments } from './changes.ts'
import { type Lost, readGone } from './gone.ts'
import { casesOf, withPast } from './judge-past.ts'
import { judgedBy } from './judged-by.ts'
import { judgeStates, type StateContext, type StateResult } from './other-states.ts'
import { type Facts, SETTINGS } from './past.ts'
import { dataPathOf, landedText, provenanceOf } from './provenance.ts'
import { peopleBook, reviewsOf } from './reviews.ts'
import type { RunText } from './run-text.ts'
import { type Thinned, thinnedGates } from './thinned.ts'
import type { CardVersion } from './types.ts'
import { amendmentsOf } from './unknown.ts'
import { cardVersions } from './versions.ts'

/** What follows from history and belongs to no run; absent where history is not known. */
export type HistoryFacts = {
  /** The campaign accepts reviews of some kind: without one, a run is not settled. */
  readonly reviewAsked: boolean
  readonly lost: readonly Lost[]
  readonly thinned: readonly Thinned[]
  readonly begins: Begins | null
  /** By id of the card. */
  readonly versions: ReadonlyMap<string, readonly CardVersion[]>
}

export type HistoryInput = {
  readonly history: History
  /** Texts of today, by path. */
  readonly texts: ReadonlyMap<string, string>
  readonly records: Records
  readonly methods: Readonly<Record<string, Method>>
  readonly functions: Functions
  readonly runs: readonly Run[]
}

export type Followed = {
  readonly runs: readonly Run[]
  readonly facts: HistoryFacts | null
  readonly problems: readonly Problem[]
}

const withoutHistory = (
  { runs }: HistoryInput,
  history: Extract<History, { state: 'unknown' }>,
): Followed => {
  const { message, hint, why } = history
  const warning = makeProblem({
    code: 'history/unknown',
    severity: 'warning',
    message,
    hint,
    why: 'without the history nobody can say who recorded a run, whether it was reviewed, or what changed since',
    at: placeOfFile(SETTINGS),
  })
  return { runs, facts: null, problems: why === 'not-read' ? [] : [warning] }
}

const factsOf = ({ texts, methods }: HistoryInput, history: KnownHistory): Facts => {
  const textOfBlob = (blob: string): string | undefined =>
    landedTextOf(history, blob, (path) => texts.get(path)) ?? undefined
  const lastText = (path: string): string | undefined => {
    if (history.blobs.has(path)) return undefined
    const last = history.files.get(path)?.landed.findLast((version) => version.blob !== null)
    return last?.blob ? textOfBlob(last.blob) : undefined
  }
  return {
    history,
    textOf: (path) => texts.get(path) ?? lastText(path),
    textOfBlob,
    judgedBy: judgedBy(methods),
  }
}

const stateContext = (input: HistoryInput, facts: Facts, runs: readonly Run[]): StateContext => {
  const { records, methods, functions } = input
  const paths = new Map(records.seen.map(({ id, path }) => [id, path]))
  for (const path of facts.history.files.keys()) {
    const id = path.slice(path.lastIndexOf('/') + 1).replace(/\.[a-z]+$/, '')
    if (path.endsWith('.md') && !paths.has(id)) paths.set(id, path)
  }
  return {
    methods,
    functions,
    textOf: facts.textOf,
    articles: Object.values(records.articles).map((article) => article.source.path),
    pathOf: (id) => paths.get(id),
    runs: new Map(runs.map((run) => [run.id, run])),
  }
}

/** An amendment that was there when the run landed speaks of what was before; one since then speaks of a change. */
const amendmentProblems = (facts: Facts, run: Run, landed: RunText | null): Problem[] => {
  if (landed === null || run.gone) return []
  const { history, textOfBlob } = facts
  const { path } = run.record.source
  const amendments = amendmentsOf(run.record)
  const idle = idleAmendments(run.provenance.changes ?? [], amendments)
  if (idle.length === 0) return []
  const since = (history.files.get(path)?.landed ?? []).flatMap(({ blob }) => {
    const text = blob === null ? undefined : textOfBlob(blob)
    return text === undefined ? [] : changesOf(landed, { ...landed, text })
  })
  const never = new Set(idleAmendments(since, amendments))
  const known = (run.provenance.changes ?? []).map(({ at }) => at)
  return idle
    .filter((index) => never.has(index) && !landed.text.includes(amendments[index]?.at ?? ''))
    .map((index) =>
      makeProblem({
        code: 'history/amendment',
        severity: 'warning',
        message: `nothing changed at \`${amendments[index]?.at}\` since the run landed`,
        at: run.record.source.locate(['amendments', index, 'at']),
        ...(known.length > 0 ? { expected: known.slice(0, 8) } : {}),
        hint: 'name the field as in `given volume`, `readings row 30 column pressure`, `readings row 30`',
      }),
    )
}

/** A commit of a branch that was squashed away is known as long as something holds it; the time stands for it afterwards. */
const revisionProblems = ({ history }: Facts, { record }: Run): Problem[] => {
  const { cardRevision, source } = record
  if (cardRevision === undefined) return []
  const found = commitsNamed(history, cardRevision)
  if (cardRevision.length >= 7 && found.length === 1) return []
  const message =
    found.length > 1
      ? `\`card-revision: ${cardRevision}\` can be ${found.length} commits`
      : `\`card-revision: ${cardRevision}\` is no commit of this history`
  return [
    makeProblem({
      code: 'history/revision',
      severity: 'warning',
      message,
      why: 'the card is taken as it was at the time of the run',
      at: source.locate(['card-revision']),
      hint: 'copy it from the title block of the sheet, or take the line out',
    }),
  ]
}

const noteProblems = ({ notes }: KnownHistory): Problem[] =>
  notes.map((message) =>
    makeProblem({ code: 'history/note', severity: 'warning', message, at: placeOfFile(SETTINGS) }),
  )

export const withHistory = (input: HistoryInput): Followed => {
  const { history, records } = input
  if (history.state === 'unknown') return withoutHistory(input, history)
  const facts = factsOf(input, history)
  const people = peopleBook(records.people)
  const reviews = reviewsOf(history, people, records.settings.review)
  const context = stateContext(input, facts, input.runs)
  const gone = readGone(facts, people, records, context)
  const problems: Problem[] = []
  const cases = [...input.runs, ...gone.runs].map((run) => {
    const landed = landedText(facts, run.record.source, dataPathOf(run.record))
    const provenance = provenanceOf(facts, people, reviews, run.record, landed)
    const known: Run = { ...run, provenance }
    problems.push(...amendmentProblems(facts, known, landed), ...revisionProblems(facts, known))
    return casesOf(facts, known, landed)
  })
  const requests = cases.flatMap(({ asRun, asLanded, both }) =>
    [asRun, asLanded, both].flatMap((request) => request ?? []),
  )
  const answers = judgeStates(requests, context)
  const results = new Map(requests.map((request, index) => [request, answers[index] as StateResult]))
  return {
    runs: cases.map((each) =>
      withPast(facts, each, (request) => (request ? results.get(request) : undefined), reviews),
    ),
    facts: {
      reviewAsked: records.settings.review.length > 0,
      lost: gone.lost,
      thinned: thinnedGates(facts, records, reviews),
      begins: newBeginning(facts, people, reviews),
      versions: new Map(
        Object.values(records.cards).map((card) => [card.id, cardVersions(facts, people, reviews, card)]),
      ),
    },
    problems: [...noteProblems(history), ...problems],
  }
}
