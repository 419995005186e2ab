/** What the files say, typed. Quantities are `Stated`: what they are for is decided by the method's schema. */

import type { Place } from '../problems/types.ts'
import type { Stated } from '../quantity/types.ts'
import type { InstrumentRecord } from './instrument-types.ts'

export type { Accuracy, Calibration, InstrumentRecord } from './instrument-types.ts'

/** YAML read with the failsafe schema: every scalar is the text that was written. */
export type Plain = string | readonly Plain[] | { readonly [key: string]: Plain }

export type FieldPath = readonly (string | number)[]

/** A text file and the way back from a field to its line and column. */
export type SourceFile = {
  /** Relative to the root, with forward slashes. */
  readonly path: string
  readonly text: string
  /** Place of a field (`['given', 'volume']`) or of a span inside its text. Never throws: falls back to the nearest parent. */
  readonly locate: (path: FieldPath, part?: 'key' | 'value', span?: { start: number; end: number }) => Place
  /** Place of a cell of the readings table; row -2 is the names, -1 the units. */
  readonly locateCell: (row: number, column: number) => Place
}

/** A point in time as written, with its offset: `2026-03-04T09:12+01:00`. */
export type Moment = {
  readonly text: string
  readonly epoch: number
  readonly date: string
  readonly clock: string
}

export type RecordBase = {
  /** File name without ending (articles: path), unique across kinds. */
  readonly id: string
  readonly source: SourceFile
  /** Markdown below the front matter. */
  readonly body: string
}

/** A given as written: a quantity, a word (`dry`), or the result of another run. */
export type GivenText =
  | { readonly form: 'quantity'; readonly stated: Stated; readonly with?: string }
  | { readonly form: 'word'; readonly word: string }
  | { readonly form: 'result'; readonly from: string; readonly measure: string }

/** One column of readings, in SI, in the order of the rows. */
export type ReadingColumn = {
  readonly name: string
  /** As written: a unit, `1`, `text`, `hh:mm` or `hh:mm:ss`. */
  readonly unit: string
  /** NaN where missing or text. `hh:mm` columns are seconds since midnight of the first row's day, always rising. */
  readonly values: Float64Array
  /** 1 where the cell is `-`, `n/a` or a listed word. */
  readonly missing: Uint8Array
  /** Cells as written (kept: digits as read). Of a logger file they are cut out of its text when asked for. */
  readonly cells: readonly string[]
  /** One of them; set for logger files, where all would be a million texts. `cellAt` reads either. */
  readonly cell?: (row: number) => string
  readonly text: boolean
  /** Size of the last digit written in this column, finest cell, in SI. */
  readonly digit: number
  readonly dim: import('../quantity/types.ts').Dimension
}

export type Readings = {
  readonly rows: number
  readonly columns: readonly ReadingColumn[]
  /** Set where the readings came from a file beside the run. */
  readonly file?: string
  /** What is worth knowing of that file and is no fault: gaps, doubled times, an old encoding. One sentence each. */
  readonly notes?: readonly string[]
}

export type Deviation = {
  readonly from: string
  readonly what: string
  readonly why: string
  readonly agreed?: string
}

export type RunRecord = RecordBase & {
  readonly kind: 'run'
  readonly card: string
  readonly article?: string
  readonly when: Moment
  readonly by: readonly string[]
  readonly witness?: string
  readonly instruments: Readonly<Record<string, string>>
  readonly given: Readonly<Record<string, GivenText>>
  readonly rig: Readonly<Record<string, string>>
  readonly ambient: { readonly temperature?: Stated; readonly note?: string }
  readonly fitted: readonly { readonly id: string; readonly what: string }[]
  /** `<run id>#<fitted id>` */
  readonly removed: readonly string[]
  readonly zero: Readonly<Record<string, { readonly before: Stated; readonly after: Stated }>>
  readonly readings: Readings
  readonly deviations: readonly Deviation[]
  readonly stopped?: string
  readonly void?: { readonly why: string; readonly by: string; readonly when: Moment }
  readonly amendments: readonly {
    readonly when: Moment
    readonly by: string
    readonly at: string
    readonly was: string
    readonly why: string
  }[]
  readonly cardRevision?: string
  readonly files: readonly { readonly file: string; readonly caption: string }[]
}

/** What a card asks of the instrument of a column. `uncertainty` is expanded, for 95 %. */
export type InstrumentDemand = {
  readonly range?: { readonly low: Stated; readonly high: Stated }
  readonly uncertainty?: Stated
  readonly resolution?: Stated
  readonly drift?: Stated
}

export type CriterionRecord = {
  readonly id: string
  /** Formula text, parsed later with the names that are in scope. */
  readonly accept: string
  readonly rule: Rule
  /** Unit text to show the value in. */
  readonly show?: string
  readonly why: string
}

export type Rule =
  | { readonly kind: 'guarded'; readonly p: number; readonly text: string }
  | { readonly kind: 'simple'; readonly text: string }

export type CardRecord = RecordBase & {
  readonly kind: 'card'
  readonly title: string
  readonly method: string
  readonly owner: string
  /** Article path → its givens. A card of one article has one entry. */
  readonly articles: Readonly<Record<string, Readonly<Record<string, GivenText>>>>
  /** Parts, relative to the article; empty: the whole article. */
  readonly covers: readonly string[]
  readonly after: readonly string[]
  readonly overtakenBy: readonly string[]
  readonly runsPerRound: number
  readonly stopAt: Readonly<Record<string, Stated>>
  readonly instruments: Readonly<Record<string, InstrumentDemand>>
  readonly given: Readonly<Record<string, GivenText>>
  readonly ask: readonly string[]
  readonly every?: Stated
  readonly targets: Readonly<Record<string, string>>
  readonly criteria: readonly CriterionRecord[]
  readonly derive: Readonly<Record<string, string>>
  /** Measure → unit text. */
  readonly show: Readonly<Record<string, string>>
  readonly cautions: readonly string[]
  readonly uncertainty: 'first-order' | 'monte-carlo'
  /** The method's own fields as its schema read them (`stations`, `checklist`, `temperature` …). */
  readonly fields: Readonly<Record<string, unknown>>
}

export type ArticleRecord = RecordBase & {
  readonly kind: 'article'
  readonly title: string
  readonly serial?: string
  /** Leaf parts without a file of their own. */
  readonly parts: readonly string[]
}

export type GateRecord = RecordBase & {
  readonly kind: 'gate'
  readonly title: string
  readonly order: number
  readonly cards: readonly string[]
  readonly needs: readonly string[]
}

export type ReworkRecord = RecordBase & {
  readonly kind: 'rework'
  readonly title: string
  readonly when: Moment
  readonly by: readonly string[]
  readonly inspectedBy?: string
  /** Article parts, full paths. */
  readonly changes: readonly string[]
  readonly because: readonly string[]
  readonly serials: Readonly<Record<string, { readonly out?: string; readonly in?: string }>>
  readonly unaffected: readonly { readonly card: string; readonly why: string; readonly agreed: string }[]
  readonly removed: readonly string[]
  readonly files: readonly { readonly file: string; readonly caption: string }[]
}

export type ItemRecord = RecordBase & {
  readonly kind: 'item'
  readonly itemKind: 'discrepancy' | 'action' | 'concession'
  readonly title: string
  readonly raised: { readonly when: Moment; readonly by: string }
  readonly about: readonly string[]
  readonly gates: readonly string[]
  readonly owner?: string
  /** `YYYY-MM-DD` */
  readonly due?: string
  readonly closed?: {
    readonly when: Moment
    readonly by: string
    readonly how: string
    readonly evidence: readonly string[]
  }
  /** Of a concession. `until` is `round` or a date. */
  readonly concession?: {
    readonly criterion: string
    readonly run: string
    readonly agreed: string
    readonly until: string
  }
  readonly removed: readonly string[]
}

export type ReadinessRecord = RecordBase & {
  readonly kind: 'readiness'
  readonly gate: string
  readonly when: Moment
  readonly present: readonly string[]
  readonly decision: 'go' | 'no-go' | 'go with conditions'
  readonly conditions: readonly string[]
  readonly basis: readonly {
    readonly run: string
    readonly criterion: string
    readonly verdict: string
    readonly value: string
    readonly U: string
    readonly commit?: string
    readonly tool?: string
  }[]
  readonly removed: readonly string[]
}

export type Role = 'record' | 'witness' | 'review' | 'concede'

export type Person = {
  readonly id: string
  readonly name: string
  readonly organisation?: string
  readonly licence?: string
  readonly emails: readonly string[]
  readonly login?: string
  readonly roles: readonly Role[]
}

export type CampaignSettings = {
  readonly source: SourceFile
  readonly title: string
  readonly purpose: string
  readonly main: string
  /** Any text. The history of the campaign begins with the commit in which it came or changed. */
  readonly begins?: string
  readonly forge?: string
  readonly timezone: string
  readonly rule: Rule
  /** Measure kind or name → unit text. */
  readonly units: Readonly<Record<string, string>>
  readonly review: readonly ('forge' | 'signed' | 'trailer')[]
  readonly files: { readonly maxBytes: number; readonly kinds: readonly string[] }
}

/** Everything that was read, with references checked. A file with errors is not in here; its problems are. */
export type Records = {
  readonly settings: CampaignSettings
  readonly people: Readonly<Record<string, Person>>
  readonly articles: Readonly<Record<string, ArticleRecord>>
  readonly cards: Readonly<Record<string, CardRecord>>
  readonly instruments: Readonly<Record<string, InstrumentRecord>>
  readonly gates: Readonly<Record<string, GateRecord>>
  readonly runs: Readonly<Record<string, RunRecord>>
  readonly reworks: Readonly<Record<string, ReworkRecord>>
  readonly items: Readonly<Record<string, ItemRecord>>
  readonly readiness: Readonly<Record<string, ReadinessRecord>>
  /** Every file that was looked at, also those with errors: path → id and kind. */
  readonly seen: readonly {
    readonly path: string
    readonly id: string
    readonly kind: string
    readonly broken: boolean
  }[]
}
