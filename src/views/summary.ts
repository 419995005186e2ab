/** What a branch changes: the campaign as it was where the branch began against the one that is here. */
import type { Reviewed, ReviewsOf } from '../campaign/history/reviews.ts'
import type { Campaign, CardState, GateState, OpenItem, Run } from '../campaign/types.ts'
import type { Problem } from '../problems/types.ts'
import { gateWord } from './overtakes.ts'
import { type FileChange, type FileChanges, fileChanges, type Texts } from './summary-files.ts'
import { deciding, isSuspicious, looksOf, newItems, type Pair } from './summary-looks.ts'
import { runLine } from './summary-runs.ts'
import type { CardLine, FileLine, GateLine, ItemLine, RunLine, SharedLine, Summary } from './summary-types.ts'
import { ITEM_WORDS, statusWord } from './words.ts'

export type SummaryState = { readonly campaign: Campaign; readonly texts: Texts }

const byId = (runs: readonly Run[]): ReadonlyMap<string, Run> => new Map(runs.map((run) => [run.id, run]))

const runLines = ({ before, after, changes: { files, moved }, reviews }: Pair): RunLine[] => {
  const old = byId(before.runs)
  const oldByPath = new Map(before.runs.map((run) => [run.record.source.path, run]))
  const touched = new Set(files.filter(({ is }) => is === 'changed').map(({ path }) => path))
  const came = new Map([...moved].map(([from, to]) => [to, from]))
  return after.runs.flatMap((run) => {
    const { path } = run.record.source
    if (run.gone) return []
    const from = came.get(path)
    const then = old.get(run.id) ?? (from === undefined ? undefined : oldByPath.get(from))
    return runLine(run, then, touched.has(path), reviews(run).reviewed) ?? []
  })
}

const cardLines = (before: Campaign, after: Campaign): CardLine[] => {
  const key = ({ id, article }: CardState): string => `${id} ${article}`
  const words = (state: CardState | undefined): string =>
    state ? `${statusWord(state.status)}, round ${state.round}` : '–'
  const old = new Map(before.cards.map((state) => [key(state), state]))
  const now = new Map(after.cards.map((state) => [key(state), state]))
  return [...new Set([...now.keys(), ...old.keys()])].flatMap((each) => {
    const [was, is] = [old.get(each), now.get(each)]
    const state = is ?? was
    if (!state || words(was) === words(is)) return []
    return [{ card: state.card.title, article: state.article, before: words(was), after: words(is) }]
  })
}

const gateWords = (gate: GateState | undefined): string => {
  if (!gate) return '–'
  const count = gate.heldBy.length
  return count > 0 ? `${gateWord(gate)}, ${count} against it` : gateWord(gate)
}

const gateLines = (before: Campaign, after: Campaign): GateLine[] => {
  const old = new Map(before.gates.map((gate) => [gate.id, gate]))
  const now = new Map(after.gates.map((gate) => [gate.id, gate]))
  return [...new Set([...now.keys(), ...old.keys()])].flatMap((id) => {
    const [was, is] = [old.get(id), now.get(id)]
    const said = new Set(was?.words)
    const more = (is?.words ?? []).filter((words) => !said.has(words))
    if (gateWords(was) === gateWords(is) && more.length === 0) return []
    return [{ title: (is ?? was)?.title ?? id, before: gateWords(was), after: gateWords(is), more }]
  })
}

/** Two runs may have left the same sentence. */
const itemLines = (items: readonly OpenItem[]): ItemLine[] => [
  ...new Map(
    items.map(({ kind, title, closes }) => [`${kind} ${title}`, { kind: ITEM_WORDS[kind], title, closes }]),
  ).values(),
]

const closedItems = (before: Campaign, after: Campaign): OpenItem[] => {
  const open = new Set(after.items.map(({ id }) => id))
  return before.items.filter(({ id }) => !open.has(id))
}

/** Changes of fields that are not among the looks. */
const sharedLines = (files: readonly FileChange[]): SharedLine[] =>
  files
    .filter(({ kind }) => kind !== 'run')
    .flatMap((file) => {
      const said = new Set(deciding(file))
      return file.fields.filter((field) => !said.has(field)).map((field) => ({ path: file.path, ...field }))
    })

const WORDS = { added: 'new', removed: 'taken away', changed: 'text only' } as const

const fileLines = ({ files, moved }: FileChanges): FileLine[] => [
  ...files
    .filter((file) => file.kind !== 'run' || file.is === 'changed')
    .filter((file) => file.fields.length === 0)
    .map(({ path, is }) => ({ path, what: WORDS[is] })),
  ...[...moved]
    .filter(([from]) => !from.startsWith('records/runs/'))
    .map(([from, to]) => ({ path: from, what: `now ${to}` })),
]

const problemKey = ({ code, message, at }: Problem): string => `${code} ${at.file} ${message}`

/** Errors, whoever brought them, and warnings that were not there before. */
const problemLines = (before: Campaign, after: Campaign): Pick<Summary, 'problems' | 'oldWarnings'> => {
  const old = new Set(before.problems.map(problemKey))
  const isShown = (problem: Problem): boolean => problem.severity === 'error' || !old.has(problemKey(problem))
  const problems = after.problems.filter(isShown)
  return { problems, oldWarnings: after.problems.length - problems.length }
}

/** `reviewsOf`: those that count once all has landed; null where that is not known. */
export const summaryOf = (
  before: SummaryState,
  after: SummaryState,
  reviewsOf: ReviewsOf | null,
): Summary => {
  const changes = fileChanges(before.texts, after.texts)
  const reviews = (run: Run): Reviewed =>
    reviewsOf?.(run.record.source.path, run.id, run.record.by) ?? run.provenance
  const pair: Pair = { before: before.campaign, after: after.campaign, changes, reviews }
  const looks = looksOf(pair)
  const opened = newItems(pair).filter((item) => !isSuspicious(item))
  const closed = closedItems(before.campaign, after.campaign)
  const same = changes.files.length + changes.moved.size === 0
  return {
    title: after.campaign.records.settings.title,
    asOf: after.campaign.asOf,
    nothing: same && looks.length + opened.length + closed.length === 0,
    looks,
    runs: runLines(pair),
    cards: cardLines(before.campaign, after.campaign),
    gates: gateLines(before.campaign, after.campaign),
    opened: itemLines(opened),
    closed: itemLines(closed),
    shared: sharedLines(changes.files),
    files: fileLines(changes),
    ...problemLines(before.campaign, after.campaign),
  }
}
