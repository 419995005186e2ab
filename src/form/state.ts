/**
 * What the form holds while a run is being recorded: plain data, as it was typed. The file of the run is written from
 * it (`write.ts`) and read by the reader of all files; nothing is checked here.
 */
import type { Plain } from '../format/types.ts'

/** A value typed on the day, or a result of another run. Empty texts are not written. */
export type GivenEntry = {
  readonly value: string
  /** Instrument that it was measured with. */
  readonly with: string
  readonly from: string
  readonly measure: string
}

export type ColumnEntry = { readonly name: string; readonly unit: string }

export type DeviationEntry = {
  readonly from: string
  readonly what: string
  readonly why: string
  readonly agreed: string
}

export type RunState = {
  readonly card: string
  /** Which state of the card was in hand; empty where not known. */
  readonly revision: string
  /** Empty where the card serves one article only. */
  readonly article: string
  readonly when: string
  readonly by: readonly string[]
  readonly witness: string
  readonly instruments: Readonly<Record<string, string>>
  readonly given: Readonly<Record<string, GivenEntry>>
  readonly rig: readonly { readonly name: string; readonly value: string }[]
  readonly ambient: { readonly temperature: string; readonly note: string }
  readonly fitted: readonly { readonly id: string; readonly what: string }[]
  readonly removed: readonly string[]
  readonly zero: Readonly<Record<string, { readonly before: string; readonly after: string }>>
  readonly columns: readonly ColumnEntry[]
  /** Cells as typed, one a column. */
  readonly rows: readonly (readonly string[])[]
  /** `readings` of a run whose readings lie in a file beside it; null: they are typed. */
  readonly data: Readonly<Record<string, Plain>> | null
  /** Words that stand for a missing value, beside `-`. */
  readonly missing: readonly string[]
  readonly deviations: readonly DeviationEntry[]
  /** Why the test was broken off; null where it was not. */
  readonly stopped: string | null
  readonly files: readonly { readonly file: string; readonly caption: string }[]
  /** Markdown below the fields. */
  readonly body: string
  /** Fields of a reopened file that the form does not show (`void`, `amendments`): written back as they were. */
  readonly kept: Readonly<Record<string, Plain>>
}

export const EMPTY_GIVEN: GivenEntry = { value: '', with: '', from: '', measure: '' }

/** A run of which nothing is known but its card. */
export const emptyRun = (card: string): RunState => ({
  card,
  revision: '',
  article: '',
  when: '',
  by: [],
  witness: '',
  instruments: {},
  given: {},
  rig: [],
  ambient: { temperature: '', note: '' },
  fitted: [],
  removed: [],
  zero: {},
  columns: [],
  rows: [],
  data: null,
  missing: [],
  deviations: [],
  stopped: null,
  files: [],
  body: '',
  kept: {},
})

/** What is tested, as far as it is said; a card that serves one article says it itself. */
export const articleOf = ({ article }: RunState, articles: readonly string[]): string =>
  article || (articles.length === 1 ? (articles[0] ?? '') : '')

/** The list with one entry put in the place of another; an index at its end adds it. */
export const replaced = <T>(list: readonly T[], index: number, entry: T): T[] =>
  list.toSpliced(index, 1, entry)

export const without = <T>(list: readonly T[], index: number): T[] => list.toSpliced(index, 1)

/** A row that is wholly empty is none. */
export const isBlankRow = (row: readonly string[]): boolean => row.every((cell) => cell.trim() === '')

export const withCell = (state: RunState, row: number, column: number, cell: string): RunState => {
  const cells = state.columns.map((_, at) => (at === column ? cell : (state.rows[row]?.[at] ?? '')))
  return { ...state, rows: replaced(state.rows, row, cells) }
}

/** Adds a column before a last `remark`, with nothing in it. */
export const withColumn = (state: RunState, column: ColumnEntry): RunState => {
  const at = state.columns.at(-1)?.name === 'remark' ? state.columns.length - 1 : state.columns.length
  return {
    ...state,
    columns: state.columns.toSpliced(at, 0, column),
    rows: state.rows.map((row) => row.toSpliced(at, 0, '')),
  }
}

/** Nothing stands in it: cells that are blank, or not there. */
export const isEmptyColumn = ({ rows }: RunState, at: number): boolean =>
  rows.every((row) => (row[at] ?? '').trim() === '')

/** What was said of the column goes with it: nothing on the page could take it back. */
export const withoutColumn = (state: RunState, at: number): RunState => {
  const name = state.columns[at]?.name
  const others = <T>(all: Readonly<Record<string, T>>): Record<string, T> =>
    Object.fromEntries(Object.entries(all).filter(([each]) => each !== name))
  return {
    ...state,
    instruments: others(state.instruments),
    zero: others(state.zero),
    columns: without(state.columns, at),
    rows: state.rows.map((row) => without(row, at)),
  }
}
