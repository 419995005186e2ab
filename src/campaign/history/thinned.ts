/** What a gate, or a card on one, asked for in a landed state and asks for no more: until that change is reviewed. */
import { classify } from '../../format/classify.ts'
import type { Records } from '../../format/types.ts'
import type { Fields } from '../../format/yaml.ts'
import { goneFiles } from '../../history/state.ts'
import type { Facts } from './past.ts'
import type { ReviewsOf } from './reviews.ts'
import { frontMatter } from './run-text.ts'

export type Thinned = {
  readonly gate: string
  /** What was taken off: id of a card or gate, an article, `run 2`. */
  readonly what: string
  readonly title: string
  /** Whose present content is to be reviewed; null: its file is gone. */
  readonly by: string | null
  /** Commit and day; nulls: not committed yet. */
  readonly commit: string | null
  readonly since: string | null
}

const fieldsOf = (text: string | undefined): Fields => (text === undefined ? {} : (frontMatter(text) ?? {}))

const list = (fields: Fields, name: string): string[] => {
  const plain = fields[name]
  if (typeof plain === 'string') return [plain]
  return Array.isArray(plain) ? plain.filter((each) => typeof each === 'string') : []
}

/** Lists of a card whose shrinking asks for less, and how that is said. */
const OF_CARDS: readonly {
  readonly entries: (fields: Fields) => readonly string[]
  readonly says: string
}[] = [
  {
    entries: (fields) =>
      typeof fields.article === 'string' ? [fields.article] : Object.keys(fields.articles ?? {}),
    says: 'no longer serves',
  },
  { entries: (fields) => list(fields, 'after'), says: 'no longer waits for' },
  { entries: (fields) => list(fields, 'overtaken-by'), says: 'is no longer overtaken by' },
  {
    entries: (fields) => {
      const length = Math.min(Number(fields['runs-per-round'] ?? 1), 99)
      return Array.from({ length }, (_, n) => `run ${n + 1}`)
    },
    says: 'no longer asks in a round for',
  },
]

type Loss = Pick<Thinned, 'what' | 'commit' | 'since'>

/** Entries that some landed state had and today's has not, with the commit that first was without them. */
const lostSince = (
  { history, textOfBlob, textOf }: Facts,
  path: string,
  entries: (fields: Fields) => readonly string[],
): Loss[] => {
  const file = history.files.get(path)
  const landed = file?.landed.filter((version) => version.blob !== null) ?? []
  const today = history.blobs.get(path)
  if (landed.every((version) => version.blob === today)) return []
  const now = new Set(entries(fieldsOf(textOf(path))))
  const states = landed.map(({ commit, blob }) => ({
    commit,
    had: entries(fieldsOf(blob === today ? textOf(path) : textOfBlob(blob ?? ''))),
  }))
  const lost = new Set(states.flatMap(({ had }) => had).filter((entry) => !now.has(entry)))
  return [...lost].map((what) => {
    const last = states.findLastIndex(({ had }) => had.includes(what))
    const pending = history.uncommitted.has(path) ? undefined : file?.touched.at(-1)?.commit
    const commit = states[last + 1]?.commit ?? pending ?? null
    const since = commit === null ? undefined : history.commits.get(commit)?.committed.slice(0, 10)
    return { what, commit, since: since ?? null }
  })
}

/** A gate whose file is gone holds all others: nobody can say what it asked for. */
const goneGates = ({ history }: Facts, records: Records): Thinned[] =>
  goneFiles(history, 'shared/gates').flatMap((path) => {
    const classified = classify(path)
    if (classified.kind !== 'gate') return []
    const { id } = classified
    const commit = history.files.get(path)?.touched.findLast(({ blob }) => blob === null)?.commit ?? null
    const since = commit === null ? null : (history.commits.get(commit)?.committed.slice(0, 10) ?? null)
    return Object.keys(records.gates).map((gate) => ({
      gate,
      what: id,
      by: null,
      title: `The gate ${id} was taken away`,
      commit,
      since,
    }))
  })

export const thinnedGates = (facts: Facts, records: Records, reviews: ReviewsOf): Thinned[] => {
  const unreviewed = (path: string, id: string): boolean => reviews(path, id, []).reviewed.length === 0
  const found = goneGates(facts, records)
  for (const gate of Object.values(records.gates)) {
    const { path } = gate.source
    const titled = (what: string, loss: Loss): Thinned => ({
      ...loss,
      gate: gate.id,
      by: gate.id,
      title: `${what} was taken off the gate ${gate.title}`,
    })
    const cards = lostSince(facts, path, (fields) => list(fields, 'cards'))
    const needs = lostSince(facts, path, (fields) => list(fields, 'needs'))
    const all = [
      ...cards.map((loss) => titled(`The card ${loss.what}`, loss)),
      ...needs.map((loss) => titled(`What it waits for, ${loss.what},`, loss)),
    ]
    if (all.length > 0 && unreviewed(path, gate.id)) found.push(...all)
    for (const id of gate.cards) {
      const card = records.cards[id]
      if (!card || !unreviewed(card.source.path, id)) continue
      for (const { entries, says } of OF_CARDS) {
        for (const loss of lostSince(facts, card.source.path, entries))
          found.push({ ...loss, gate: gate.id, by: id, title: `The card ${card.title} ${says} ${loss.what}` })
      }
    }
  }
  return found
}
