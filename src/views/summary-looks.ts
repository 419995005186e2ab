/** What is suspicious in a branch. Not everything here is wrong; all of it is to be looked at before the rest. */
import { NOTHING } from '../campaign/history/addresses.ts'
import { withAmendments } from '../campaign/history/changes.ts'
import type { Reviewed } from '../campaign/history/reviews.ts'
import type { NotCounted } from '../campaign/history/types.ts'
import { amendmentsOf } from '../campaign/history/unknown.ts'
import type { Campaign, ItemKind, OpenItem, Run } from '../campaign/types.ts'
import type { FieldChange, FileChange, FileChanges } from './summary-files.ts'
import type { Look } from './summary-types.ts'
import { ITEM_WORDS, plural } from './words.ts'

/** Worst first. */
const SUSPICIOUS: readonly ItemKind[] = [
  'changed',
  'run-gone',
  'limit-moved',
  'voided',
  'amendment-unreviewed',
  'limit-with-reading',
  'off-gate',
  'begins',
  'same-readings',
  'calibration',
  'instrument-found-wrong',
  'two-roles',
  'basis-differs',
  'beyond-stop',
  'out-of-range',
  'instrument-worse',
  'deviation',
  'prerequisite',
  'source-newer',
  'concession-expired',
]

export const isSuspicious = ({ kind }: OpenItem): boolean => SUSPICIOUS.includes(kind)

export type Pair = {
  readonly before: Campaign
  readonly after: Campaign
  readonly changes: FileChanges
  /** Reviews of a run as it is now, as they would count once all has landed. */
  readonly reviews: (run: Run) => Reviewed
}

const look = (what: string, text: string, details: readonly FieldChange[] = []): Look => ({
  what,
  text,
  details,
})

const amendedWords = (run: Run, fields: readonly FieldChange[]): string => {
  const amended = withAmendments(fields, amendmentsOf(run.record))
  const silent = amended.filter((change) => !change.amended).length
  return silent === 0 ? 'each with an amendment' : `${silent} of ${fields.length} without an amendment`
}

/** Runs that were there and say something else now, whoever says that they had landed. */
const changedRuns = ({ before, after, changes }: Pair): Look[] =>
  changes.files.flatMap(({ id, kind, is, fields }) => {
    const run = after.runs.find((each) => each.id === id)
    const old = before.runs.some((each) => each.id === id)
    if (kind !== 'run' || is !== 'changed' || fields.length === 0) return []
    const words = run ? `: ${amendedWords(run, fields)}` : ''
    return [
      look(
        'record changed',
        `${id} ${old ? 'was there before' : 'could not be read before'}${words}`,
        fields,
      ),
    ]
  })

const goneRuns = ({ before, after, changes }: Pair): Look[] => [
  ...changes.files
    .filter(({ kind, is }) => kind === 'run' && is === 'removed')
    .map(({ id }) => {
      const old = before.runs.find((run) => run.id === id)
      const kept = after.runs.some((run) => run.id === id && run.gone)
      const word = old ? `it was ${old.verdict ?? 'void'}` : 'it could not be read before'
      return look('run gone', `${id} is taken away; ${word}${kept ? ', and its page stays' : ''}`)
    }),
  ...[...changes.moved]
    .filter(([path]) => path.startsWith('records/runs/'))
    .map(([from, to]) => look('run moved', `${from} is now ${to}, unchanged`)),
]

/** Where history is known an item says it, with what it takes to settle it. */
const voidedRuns = ({ before, after }: Pair): Look[] =>
  after.runs.flatMap((run) => {
    if (!run.record.void) return []
    const old = before.runs.find(({ id }) => id === run.id)
    const said = after.items.some(({ kind, about }) => kind === 'voided' && about[0] === run.id)
    if (!old || old.record.void || said) return []
    const { why, by } = run.record.void
    return [look('voided', `${run.id}, ${old.verdict ?? 'void'} before, is void now (${why}), by ${by}`)]
  })

/** Fields that decide what counts, by the kind of file. */
const DECIDING: Partial<Record<FileChange['kind'], RegExp>> = {
  card: /^(criteria|given|articles|article|derive|targets|covers|overtaken-by|after|runs-per-round|stop-at|instruments|method)\b/,
  campaign: /^(rule|review|begins|main)\b/,
  people: /\b(roles|emails|login)$/,
  instrument: /^(calibrations|accuracy|resolution|linearity|hysteresis|drift|range|density|liquid)\b/,
  gate: /^(cards|needs)\b/,
  article: /^parts\b/,
}

const WHAT: Partial<Record<FileChange['kind'], string>> = {
  card: 'card changed',
  campaign: 'rules changed',
  people: 'roles changed',
  instrument: 'instrument changed',
  gate: 'gate changed',
  article: 'article changed',
}

const isCalibrationAdded = ({ at, before }: FieldChange): boolean =>
  at.startsWith('calibrations') && before === NOTHING

const mayJudge = ({ before, after }: FieldChange): boolean =>
  before === NOTHING && /\broles: [^:]*\b(review|concede)\b/.test(after)

/** One more card on a gate takes nothing away. */
const onlyAdds = ({ before, after }: FieldChange): boolean => {
  const now = after.split(', ')
  return before === NOTHING || before.split(', ').every((each) => now.includes(each))
}

export const deciding = ({ kind, fields }: FileChange): readonly FieldChange[] =>
  fields.filter((change) => {
    if (kind === 'people' && mayJudge(change)) return true
    if (!DECIDING[kind]?.test(change.at) || isCalibrationAdded(change)) return false
    return kind !== 'gate' || !onlyAdds(change)
  })

const limitsFirst = (changes: readonly FieldChange[]): FieldChange[] => {
  const limit = ({ at }: FieldChange): number => (at.startsWith('criteria') ? 0 : 1)
  return [...changes].sort((a, b) => limit(a) - limit(b))
}

/** What runs are judged by, where it decides. A card that nobody has run yet may change freely. */
const changedRules = ({ before, changes }: Pair): Look[] =>
  changes.files.flatMap((file) => {
    const fields = limitsFirst(deciding(file))
    const runs = before.runs.filter((run) => run.card.id === file.id).length
    if (fields.length === 0 || (file.kind === 'card' && runs === 0)) return []
    const moved = fields.some(({ at }) => /^criteria \S+ (accept|rule)$/.test(at))
    const what = moved ? 'limit moved' : (WHAT[file.kind] ?? 'changed')
    const judged = file.kind === 'card' ? `, by which ${plural(runs, 'run is', 'runs are')} judged` : ''
    return [look(what, `${file.path}${judged}`, fields)]
  })

const goneRules = ({ changes }: Pair): Look[] =>
  changes.files
    .filter(({ path, is, kind }) => is === 'removed' && kind !== 'run' && kind !== 'other' && path !== '')
    .map(({ path }) => look('file gone', `${path} is taken away`))

const reviewKey = (run: Run, { by, commit, reason }: NotCounted): string =>
  `${run.id} ${by} ${commit} ${reason}`

/** Reviews that somebody made and that cannot count. */
const badReviews = ({ before, after, reviews }: Pair): Look[] => {
  const old = new Set(
    before.runs.flatMap((run) => run.provenance.notCounted.map((each) => reviewKey(run, each))),
  )
  return after.runs.flatMap((run) =>
    reviews(run)
      .notCounted.filter((each) => each.reason !== 'of older content' && !old.has(reviewKey(run, each)))
      .map(({ by, reason }) =>
        look(
          reason === 'own work' ? 'own review' : 'review without effect',
          `${run.id}: the review by ${by} does not count: ${reason}`,
        ),
      ),
  )
}

/** Said in full by the comparison of the files already. */
const alreadySaid = ({ kind, about }: OpenItem, { files, moved }: FileChanges): boolean => {
  const run = files.find((file) => file.kind === 'run' && file.id === about[0])
  if (kind === 'changed' || kind === 'amendment-unreviewed') return (run?.fields.length ?? 0) > 0
  if (kind !== 'run-gone') return false
  return run?.is === 'removed' || [...moved.keys()].some((path) => path.endsWith(`/${about[0]}.md`))
}

/** Items that were not there, or that say more than before. */
export const newItems = ({ before, after }: Pair): OpenItem[] => {
  const old = new Map(before.items.map((item) => [item.id, item.title]))
  return after.items.filter((item) => old.get(item.id) !== item.title)
}

/** These come a run each where one card has changed: said once a card. */
const BY_CARD: readonly ItemKind[] = ['limit-moved', 'limit-with-reading']

const grouped = (items: readonly OpenItem[]): OpenItem[][] => {
  const groups = new Map<string, OpenItem[]>()
  for (const item of items) {
    const key = BY_CARD.includes(item.kind) ? `${item.kind} ${item.about[1]}` : item.id
    groups.set(key, [...(groups.get(key) ?? []), item])
  }
  return [...groups.values()]
}

const itemLooks = (pair: Pair): Look[] => {
  const items = newItems(pair).filter((item) => isSuspicious(item) && !alreadySaid(item, pair.changes))
  const rank = ({ kind }: OpenItem): number => SUSPICIOUS.indexOf(kind)
  return grouped([...items].sort((a, b) => rank(a) - rank(b))).flatMap(([first, ...others]) => {
    if (!first) return []
    const more = others.length > 0 ? `; and so with ${plural(others.length, 'more run')} of this card` : ''
    return [look(ITEM_WORDS[first.kind], `${first.title}${more}`)]
  })
}

export const looksOf = (pair: Pair): Look[] => [
  ...changedRuns(pair),
  ...goneRuns(pair),
  ...voidedRuns(pair),
  ...changedRules(pair),
  ...goneRules(pair),
  ...badReviews(pair),
  ...itemLooks(pair),
]
