/** What the page of a form says about its card: made at build, all texts formatted; the form asks for nothing else to begin. */

/** Id of the part of the page that says what is to be reached on an article. */
export const reachId = (article: string): string => `reach-${article.replaceAll('/', '-')}`

export type FormGiven = {
  readonly name: string
  readonly label: string
  readonly meaning: string
  readonly form: 'quantity' | 'choice' | 'words'
  readonly choices: readonly string[]
  /** What the card has, by article; `*` for all. Shown, never copied into the record. */
  readonly card: Readonly<Record<string, string>>
  readonly asked: boolean
  /** Results of other runs that may stand for it. */
  readonly results: readonly { readonly run: string; readonly measure: string; readonly label: string }[]
}

export type FormColumn = {
  readonly name: string
  readonly label: string
  readonly meaning: string
  readonly form: 'number' | 'time' | 'words'
  /** As it stands in the table; the first is the one that the form begins with. */
  readonly units: readonly string[]
  readonly choices: readonly string[]
  /** Cells that are known before the test, one a row. */
  readonly rows: readonly string[]
  /** Read out of another column: it is not in the table, and an instrument may be named for it. */
  readonly inside: boolean
  readonly instrument: 'required' | 'optional' | 'none'
  /** In the table from the beginning. */
  readonly planned: boolean
  /** Never beyond, to either side: as written, and in SI. */
  readonly stop: { readonly text: string; readonly value: number } | null
}

export type FormInstrument = {
  readonly id: string
  readonly title: string
  readonly unit: string
  /** Calibrations: from and until, days. */
  readonly periods: readonly { readonly on: string; readonly due: string }[]
  /** Columns that it can read, and in what it is worse than the card asks there. */
  readonly columns: Readonly<Record<string, readonly string[]>>
}

export type FormPerson = { readonly id: string; readonly name: string; readonly roles: readonly string[] }

export type FormView = {
  readonly card: string
  readonly title: string
  readonly articles: readonly string[]
  readonly people: readonly FormPerson[]
  readonly givens: readonly FormGiven[]
  readonly columns: readonly FormColumn[]
  /** Column → instrument of the last run of this card. */
  readonly before: Readonly<Record<string, string>>
  readonly instruments: readonly FormInstrument[]
  /** Planned time between readings, s. */
  readonly every: number | null
  /** Address of the forge and name of the main line, where a new file can be opened; empty where there is none. */
  readonly forge: string
  readonly main: string
  readonly mostBytes: number
  /** Fitted things that an earlier run of this card has not taken out again: `<run>#<id>`. */
  readonly fitted: readonly { readonly id: string; readonly what: string }[]
  /** Ids of the runs that there are of this card. */
  readonly taken: readonly string[]
  /** Id and title of every card that can be recorded. */
  readonly cards: readonly (readonly [string, string])[]
  /** Files of runs whose results may be givens. */
  readonly sources: readonly string[]
}
