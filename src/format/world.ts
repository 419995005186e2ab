/** Everything that was read so far, as the checks of references see it. Broken files are known by id, not by content. */
import type { Method, Schema } from '../methods/method.ts'
import type { Place, Problem } from '../problems/types.ts'
import type { FileKind } from './classify.ts'
import type { Document } from './document.ts'
import type { CardFields } from './kinds/card.ts'
import type { RunFields } from './kinds/run.ts'
import type { ArticleRecord, CampaignSettings, InstrumentRecord, Person, RecordBase } from './types.ts'

/** What the reading of files needs of each method: method id → schema. */
export type MethodSchemas = Readonly<Record<string, Pick<Method, 'schema' | 'describe'>>>

/** A file that could be taken apart, with its fields as the schema read them. */
export type Draft<T> = { readonly base: RecordBase; readonly document: Document; readonly fields: T }

export type CardDraft = Draft<CardFields> & {
  /** The method's own fields; undefined where they could not be read. */
  readonly own?: Readonly<Record<string, unknown>>
  /** The schema of this card for a run with these columns; undefined where method or own fields are in doubt. */
  readonly schema?: (columns: readonly string[]) => Schema
}

export type Known = { readonly kind: FileKind; readonly id: string; readonly path: string }

export type World = {
  readonly settings: CampaignSettings
  readonly schemas: MethodSchemas
  /** Every file with an id, broken ones too. */
  readonly known: ReadonlyMap<string, Known>
  /** undefined where the file of people could not be read: then nobody is blamed for a name. */
  readonly people?: Readonly<Record<string, Person>>
  readonly articles: ReadonlyMap<string, ArticleRecord>
  readonly instruments: ReadonlyMap<string, InstrumentRecord>
  readonly cards: ReadonlyMap<string, CardDraft>
  readonly runs: ReadonlyMap<string, Draft<RunFields>>
  /** Paths of all files under the root; undefined: not known, and not checked. */
  readonly exists?: ReadonlySet<string>
}

export type At = { readonly at: Place }

export type Check<T> = (draft: Draft<T>, world: World) => Problem[]
