/** From documents to drafts: the fields of every file as its kind's schema reads them, before references are checked. */
import type { z } from 'zod'
import { problemOfFault } from '../problems/make.ts'
import type { Problem } from '../problems/types.ts'
import { readCard } from './card-draft.ts'
import type { Document } from './document.ts'
import { readFields } from './issues.ts'
import { articleFields, articleRecord } from './kinds/article.ts'
import { campaignFields, campaignSettings } from './kinds/campaign.ts'
import { gateFields } from './kinds/gate.ts'
import { instrumentFields } from './kinds/instrument.ts'
import { type InstrumentFault, instrumentRecord } from './kinds/instrument-record.ts'
import { itemFields } from './kinds/item.ts'
import { peopleById, peopleFields } from './kinds/people.ts'
import { readinessFields } from './kinds/readiness.ts'
import { reworkFields } from './kinds/rework.ts'
import { runFields } from './kinds/run.ts'
import { makeSource } from './source.ts'
import type { ArticleRecord, CampaignSettings, InstrumentRecord, Person, RecordBase } from './types.ts'
import type { CardDraft, Draft, Known, MethodSchemas } from './world.ts'

type Fields<T extends z.ZodType> = Draft<z.output<T>>
type Read =
  | { readonly ok: true; readonly value: Document }
  | { readonly ok: false; readonly error: Problem[] }
type Report = (path: string, problems: readonly Problem[]) => void

export type Drafts = {
  settings: CampaignSettings
  people: Readonly<Record<string, Person>> | undefined
  readonly articles: Map<string, ArticleRecord>
  readonly instruments: Map<string, InstrumentRecord>
  readonly cards: Map<string, CardDraft>
  readonly runs: Map<string, Fields<typeof runFields>>
  readonly gates: Map<string, Fields<typeof gateFields>>
  readonly reworks: Map<string, Fields<typeof reworkFields>>
  readonly items: Map<string, Fields<typeof itemFields>>
  readonly readiness: Map<string, Fields<typeof readinessFields>>
}

export function readDrafts(
  documents: readonly { readonly known: Known; readonly read: Read }[],
  schemas: MethodSchemas,
  report: Report,
): Drafts {
  const drafts: Drafts = {
    settings: defaultSettings(),
    people: undefined,
    articles: new Map(),
    instruments: new Map(),
    cards: new Map(),
    runs: new Map(),
    gates: new Map(),
    reworks: new Map(),
    items: new Map(),
    readiness: new Map(),
  }
  for (const { known, read } of documents) {
    if (!read.ok) continue
    const document = read.value
    const base: RecordBase = { id: known.id, source: document.source, body: document.body }
    const add = <T>(schema: z.ZodType<T>, into: Map<string, Draft<T>>) => {
      const fields = readFields(schema, document.fields, document.source)
      if (fields.ok) into.set(known.id, { base, document, fields: fields.value })
      else report(known.path, fields.error)
    }
    if (known.kind === 'run') add(runFields, drafts.runs)
    else if (known.kind === 'gate') add(gateFields, drafts.gates)
    else if (known.kind === 'rework') add(reworkFields, drafts.reworks)
    else if (known.kind === 'item') add(itemFields, drafts.items)
    else if (known.kind === 'readiness') add(readinessFields, drafts.readiness)
    else report(known.path, addShared(known, base, document, schemas, drafts))
  }
  return drafts
}

function addShared(
  known: Known,
  base: RecordBase,
  document: Document,
  schemas: MethodSchemas,
  drafts: Drafts,
): readonly Problem[] {
  const { source, fields: raw } = document
  if (known.kind === 'card') {
    const { draft, problems } = readCard(base, document, schemas)
    if (draft) drafts.cards.set(known.id, draft)
    return problems
  }
  if (known.kind === 'campaign') {
    const fields = readFields(campaignFields, raw, source)
    if (fields.ok) drafts.settings = campaignSettings(source, fields.value)
    return fields.ok ? [] : fields.error
  }
  if (known.kind === 'people') {
    const fields = readFields(peopleFields, raw, source)
    if (fields.ok) drafts.people = peopleById(fields.value)
    return fields.ok ? [] : fields.error
  }
  if (known.kind === 'article') {
    const fields = readFields(articleFields, raw, source)
    if (fields.ok) drafts.articles.set(known.id, articleRecord(base, fields.value))
    return fields.ok ? [] : fields.error
  }
  const fields = readFields(instrumentFields, raw, source)
  if (!fields.ok) return fields.error
  const record = instrumentRecord(base, fields.value)
  if (record.ok) drafts.instruments.set(known.id, record.value)
  return record.ok ? [] : record.error.map((fault) => instrumentProblem(fault, base))
}

function instrumentProblem(fault: InstrumentFault, { source }: RecordBase): Problem {
  const at = source.locate(fault.path, 'value', fault)
  const named = fault.message.includes('`') ? fault.message : `\`${fault.path.at(-1)}\`: ${fault.message}`
  return problemOfFault({ ...fault, message: named }, at)
}

function defaultSettings(): CampaignSettings {
  const source = makeSource('shared/campaign.yaml', '', { start: 0, text: '' })
  return campaignSettings(source, campaignFields.parse({ title: 'Campaign', purpose: 'not stated' }))
}

type WithProse = Pick<Draft<unknown>, 'base' | 'document'> & {
  readonly files: readonly { readonly file: string }[]
}

/** Everything that has prose, with the files that it names, for the checks that all kinds share. */
export function withProse(drafts: Drafts): readonly WithProse[] {
  const bare = [
    ...drafts.cards.values(),
    ...drafts.gates.values(),
    ...drafts.items.values(),
    ...drafts.readiness.values(),
  ]
  return [
    ...bare.map(({ base, document }) => ({ base, document, files: [] })),
    ...[...drafts.runs.values(), ...drafts.reworks.values()].map(({ base, document, fields }) => ({
      base,
      document,
      files: fields.files,
    })),
  ]
}
