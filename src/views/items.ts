/** Open items: what must be settled, who owns it, what closes it. */
import type { OpenItem } from '../campaign/types.ts'
import type { ItemRecord } from '../format/types.ts'
import { awaitsReview } from './history-review.ts'
import { cell, joined, lineBreak, prose, section, table, text, viewOf } from './page.ts'
import { proseOf } from './prose.ts'
import { itemAnchor, type Site } from './site.ts'
import type { Block, Cell, Rich, Row, Table, View } from './view.ts'
import { dateWords, ITEM_WORDS, momentWords, nameWords, stamp } from './words.ts'

const COLUMNS = ['item', 'kind', 'about', 'gates', 'owner', 'since', 'due', 'what closes it']

/** Articles that an item is about, directly or through its runs. */
const articlesOf = (item: OpenItem, site: Site): string[] => {
  const { records, runs } = site.campaign
  const found = item.about.flatMap((id) =>
    records.articles[id] ? [id] : runs.filter((run) => run.id === id).map((run) => run.article),
  )
  return [...new Set(found)]
}

const gateTitle = (id: string, site: Site): string =>
  site.campaign.gates.find((gate) => gate.id === id)?.title ?? id

/** Days are written so that they sort. */
const itemRow = (item: OpenItem, site: Site, anchored: boolean): Row => {
  const overdue = item.due !== null && item.due < site.campaign.asOf
  const title: Rich = item.raisedByHand ? [site.link(item.id, item.title)] : site.linked(item.title)
  return {
    ...(anchored ? { id: itemAnchor(item.id) } : {}),
    tags: {
      gate: item.gates.map((gate) => gateTitle(gate, site)),
      article: articlesOf(item, site),
      owner: [site.person(item.owner)],
      kind: [ITEM_WORDS[item.kind]],
    },
    cells: [
      title,
      [ITEM_WORDS[item.kind]],
      joined(
        item.about.map((id) => site.link(id)),
        lineBreak,
      ),
      joined(item.gates.map((gate) => site.link(gate, gateTitle(gate, site)))),
      [site.person(item.owner)],
      [item.since],
      item.due === null
        ? []
        : [item.due, ...(overdue ? [' ', { is: 'strong', text: 'overdue' } as const] : [])],
      site.linked(item.closes),
    ],
  }
}

export const itemsTable = (items: readonly OpenItem[], site: Site): Block[] =>
  table(
    'Open items',
    COLUMNS,
    items.map((item) => itemRow(item, site, false)),
  )

const valuesOf = (rows: readonly Row[], name: string): string[] =>
  [...new Set(rows.flatMap((row) => row.tags?.[name] ?? []))].sort()

export const itemsView = (site: Site): View => {
  const { items, closedItems } = site.campaign
  const rows = items.map((item) => itemRow(item, site, true))
  const open: Table = {
    caption: 'Open items',
    columns: COLUMNS.map((name) => ({ text: name })),
    rows,
    narrow: 'stack',
  }
  const by = [
    { name: 'gate', label: 'gate', values: valuesOf(rows, 'gate') },
    { name: 'article', label: 'article', values: valuesOf(rows, 'article') },
    { name: 'owner', label: 'owner', values: valuesOf(rows, 'owner') },
    { name: 'kind', label: 'kind', values: valuesOf(rows, 'kind') },
  ]
  const waiting = awaitsReview(site)
  const blocks: Block[] = [
    ...(waiting.length > 0 ? [text({ is: 'link', text: 'What awaits a review', to: '#review' })] : []),
    items.length > 0 ? { is: 'filter', by, table: open } : text('Nothing is open.'),
    ...section('review', 'What awaits a review', waiting),
    ...section(
      'closed',
      'Closed',
      table(
        'Closed items',
        ['item', 'kind', 'about', 'owner'],
        closedItems.map((item) => [
          [site.link(item.id, item.title)],
          [ITEM_WORDS[item.kind]],
          joined(item.about.map((id) => site.link(id))),
          [site.person(item.owner)],
        ]),
      ),
    ),
  ]
  return viewOf(site, {
    path: 'items/',
    kind: 'items',
    title: 'What is still open?',
    description: `${items.length} open items.`,
    blocks,
  })
}

const concessionCells = (item: ItemRecord, site: Site): Cell[] => {
  const { concession } = item
  if (!concession) return []
  const until = concession.until === 'round' ? 'the round ends' : dateWords(concession.until)
  return [
    cell(
      'Accepted in spite of',
      [`${nameWords(concession.criterion)} of `, site.link(concession.run)],
      'half',
    ),
    cell('Agreed by', site.person(concession.agreed)),
    cell('Until', until),
  ]
}

/** Items raised by hand have a page of their own; the others are rows of the list. */
export const itemView = (record: ItemRecord, site: Site): View => {
  const written = proseOf(record.body, record.source.path, site)
  const { closed } = record
  const cells: Cell[] = [
    cell('Kind', record.itemKind),
    cell('Owner', record.owner ? site.person(record.owner) : 'not named'),
    cell('Raised', `${momentWords(record.raised.when)}, ${site.person(record.raised.by)}`),
    cell('Due', record.due ? dateWords(record.due) : 'no day named'),
    cell('About', joined(record.about.map((id) => site.link(id))), 'half'),
    cell(
      'Holds',
      record.gates.length > 0
        ? joined(record.gates.map((gate) => site.link(gate, gateTitle(gate, site))))
        : 'no gate',
      'half',
    ),
    ...concessionCells(record, site),
    ...(closed
      ? [
          cell(
            'Closed',
            [
              `${momentWords(closed.when)} by ${site.person(closed.by)}: ${closed.how} `,
              ...joined(closed.evidence.map((id) => site.link(id))),
            ],
            'full',
          ),
        ]
      : []),
  ]
  const blocks: Block[] = [
    {
      is: 'title-block',
      label: 'Item',
      stamps: [closed ? stamp('closed', 'pass') : stamp('open', 'undetermined')],
      cells,
    },
    ...section('said', 'What it is about', prose(written)),
  ]
  const title = record.title
  return viewOf(site, {
    path: `items/${record.id}/`,
    kind: 'item',
    title,
    description: title,
    blocks,
    files: written.files,
  })
}

export const openAbout = (ids: readonly string[], site: Site): Block[] =>
  itemsTable(
    site.campaign.items.filter((item) => item.about.some((id) => ids.includes(id))),
    site,
  )
