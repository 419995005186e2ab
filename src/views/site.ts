/** What every view needs to know: where the page of a thing is, what people are called, what a name in a sentence means. */
import type { Campaign, OpenItem, Run } from '../campaign/types.ts'
import type { Inline, Rich, Target } from './view.ts'
import { instantWords } from './words.ts'
import { zoned } from './zone.ts'

export type Site = {
  readonly campaign: Campaign
  readonly title: string
  /** Address of the page of a record or open item; null where there is none. */
  readonly page: (id: string) => Target | null
  /** A link to the page of a thing, or its bare name. */
  readonly link: (id: string, text?: string) => Inline
  readonly person: (id: string) => string
  readonly run: (id: string) => Run | undefined
  /** A sentence in which every id that has a page is a link to it. */
  readonly linked: (sentence: string) => Rich
  /** A time from git, on the clock of the campaign: `4 March 2026, 09:12 +01:00`. */
  readonly at: (iso: string) => string
  /** Its day there: `2026-03-04`. */
  readonly isoDay: (iso: string) => string
}

/** Name of an item's row on the page of open items. */
export const itemAnchor = (id: string): string => `item-${id.replace(/[^A-Za-z0-9-]+/g, '.')}`

const itemPage = (item: OpenItem): Target =>
  item.raisedByHand ? `items/${item.id}/` : `items/#${itemAnchor(item.id)}`

const folders = (campaign: Campaign): ReadonlyMap<string, Target> => {
  const { records } = campaign
  const pages = new Map<string, Target>()
  const add = (ids: Iterable<string>, folder: string): void => {
    for (const id of ids) pages.set(id, `${folder}/${id}/`)
  }
  for (const item of [...campaign.closedItems, ...campaign.items]) pages.set(item.id, itemPage(item))
  add(Object.keys(records.items), 'items')
  add(Object.keys(records.articles), 'articles')
  add(Object.keys(records.instruments), 'instruments')
  add(Object.keys(records.reworks), 'rework')
  add(Object.keys(records.readiness), 'readiness')
  add(Object.keys(records.cards), 'cards')
  add(
    campaign.gates.map((gate) => gate.id),
    'gates',
  )
  add(
    campaign.runs.map((run) => run.id),
    'runs',
  )
  return pages
}

/** Titles that sentences name things by. */
const titles = (campaign: Campaign): ReadonlyMap<string, string> => {
  const { records } = campaign
  const titled = [...Object.values(records.cards), ...Object.values(records.reworks), ...campaign.gates]
  return new Map(titled.map((record) => [record.title, record.id]))
}

const literal = (written: string): string => written.replace(/[.*+?^${}()|[\]\\]/g, '\\$&')

/** Titles, longest first, or the longest run of characters that an id is made of; a full stop at its end belongs to the sentence. */
const namePattern = (known: Iterable<string>): RegExp => {
  const longestFirst = [...known].filter((title) => title.length > 3).sort((a, b) => b.length - a.length)
  return new RegExp([...longestFirst.map(literal), '[a-z0-9][a-z0-9/#@-]*[a-z0-9]'].join('|'), 'g')
}

/** `methods`: ids of the methods that have a page in the handbook. */
export const siteOf = (campaign: Campaign, methods: readonly string[] = []): Site => {
  const pages = new Map([
    ...folders(campaign),
    ...methods.map((id) => [`method:${id}`, `handbook/methods/${id}/`] as const),
  ])
  const titled = titles(campaign)
  const pattern = namePattern(titled.keys())
  const { people, settings } = campaign.records
  const parts = new Set(
    Object.values(campaign.records.articles).flatMap((article) =>
      article.parts.map((part) => `${article.id}/${part}`),
    ),
  )
  const page = (id: string): Target | null =>
    pages.get(id) ?? (parts.has(id) ? (pages.get(id.replace(/\/[^/]*$/, '')) ?? null) : null)
  const link = (id: string, text: string = id): Inline => {
    const to = page(id)
    return to === null ? text : { is: 'link', text, to }
  }
  const linkedPlain = (sentence: string): Rich => {
    const pieces: Inline[] = []
    let end = 0
    for (const match of sentence.matchAll(pattern)) {
      const [name] = match
      // A plain word may be the name of a card too; only what cannot be a word of the sentence becomes a link.
      const id = titled.get(name) ?? (/[-/0-9]/.test(name) ? name : null)
      const to = id === null ? null : page(id)
      if (to === null) continue
      pieces.push(sentence.slice(end, match.index), { is: 'link', text: name, to })
      end = match.index + name.length
    }
    return [...pieces, sentence.slice(end)].filter((piece) => piece !== '')
  }
  // What stands between backticks is text of a file, as it is written there.
  const linked = (sentence: string): Rich =>
    sentence
      .split('`')
      .flatMap((piece, index): Rich => (index % 2 === 1 ? [{ is: 'code', text: piece }] : linkedPlain(piece)))
  const runs = new Map(campaign.runs.map((run) => [run.id, run]))
  const there = zoned(settings.timezone)
  return {
    campaign,
    title: settings.title,
    page,
    link,
    person: (id) => people[id]?.name ?? id,
    run: (id) => runs.get(id),
    linked,
    at: (iso) => instantWords(there(iso)),
    isoDay: (iso) => there(iso).slice(0, 10),
  }
}
