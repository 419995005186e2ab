/** Items raised by hand. A concession in force is no open item: it settles one. */
import type { ItemRecord, Records } from '../../format/types.ts'
import type { OpenItem } from '../types.ts'
import { gatesOfCard } from './item.ts'

/** Its own gates; where it names none, those of the cards it is about, also through their runs. */
const gatesOf = (item: ItemRecord, records: Records): readonly string[] => {
  if (item.gates.length > 0) return item.gates
  const cards = item.about.map((id) => records.runs[id]?.card ?? id)
  return [...new Set(cards.flatMap((card) => gatesOfCard(records, card)))]
}

const openItem = (item: ItemRecord, records: Records): OpenItem => ({
  id: item.id,
  kind: item.itemKind,
  title: item.title,
  about: item.about,
  gates: item.itemKind === 'concession' ? [] : gatesOf(item, records),
  owner: item.owner ?? item.raised.by,
  since: item.raised.when.date,
  closes:
    item.itemKind === 'concession'
      ? 'a passing run, or the end of its term'
      : 'closing it with what was done and the evidence',
  due: item.due ?? null,
  raisedByHand: true,
})

export const handItems = (records: Records): { open: OpenItem[]; closed: OpenItem[] } => {
  const all = Object.values(records.items)
  return {
    open: all.filter((item) => !item.closed).map((item) => openItem(item, records)),
    closed: all.filter((item) => item.closed).map((item) => openItem(item, records)),
  }
}
