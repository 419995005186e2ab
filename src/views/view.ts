import type { FormView } from '../form/view.ts'

/**
 * What a page is made of. A view is one plain JSON object: all that its page shows, in words that are already
 * formatted, as a list of blocks. Pages lay it out and compute nothing.
 */

/** A place on the site, relative to its root and without the base path (`runs/2026-03-04-0912-leak/#criteria`), or a full address. */
export type Target = string

export type StampStyle =
  | 'pass'
  | 'fail'
  | 'undetermined'
  | 'due-again'
  | 'conceded'
  | 'plain'
  | 'proposed'
  | 'gone'

/** A piece of running text. */
export type Inline =
  | string
  | { readonly is: 'link'; readonly text: string; readonly to: Target }
  | { readonly is: 'stamp'; readonly word: string; readonly style: StampStyle }
  | { readonly is: 'strong'; readonly text: string }
  | { readonly is: 'small'; readonly text: Rich }
  | { readonly is: 'code'; readonly text: string }
  | { readonly is: 'break' }

export type Rich = readonly Inline[]

export type Column = { readonly text: string; readonly numeric?: boolean }

export type Row = {
  readonly cells: readonly Rich[]
  /** Name of the row within the page, so that it can be linked to. */
  readonly id?: string
  /** Words that the filter of the page looks at. */
  readonly tags?: Readonly<Record<string, readonly string[]>>
}

export type Table = {
  /** Said to whoever cannot see the table, and above it where `titled`. */
  readonly caption: string
  readonly titled?: boolean
  readonly columns: readonly Column[]
  readonly rows: readonly Row[]
  /** On a phone: rows as blocks, or the whole table in a box that scrolls sideways. */
  readonly narrow: 'stack' | 'scroll'
}

export type Cell = { readonly label: string; readonly value: Rich; readonly width?: 'half' | 'full' }

export type Against = {
  /** In the unit shown. */
  readonly value: number
  readonly U: number | null
  readonly limits: readonly number[]
  readonly direction: 'below' | 'above' | 'between'
  readonly style: StampStyle
  readonly words: string
}

export type CriterionRow = {
  readonly id: string
  readonly name: string
  readonly accept: string
  readonly rule: string
  readonly why: string
  readonly stamp: Inline
  readonly terms: readonly {
    readonly text: string
    readonly result: string
    readonly more: readonly string[]
    readonly limit: string
    readonly margin: string
    readonly probability: string
    readonly against: Against | null
    readonly stamp: Inline
  }[]
  readonly reasons: readonly Rich[]
  readonly settle: readonly Rich[]
}

export type BudgetRow = {
  readonly source: string
  readonly share: number
  readonly shown: string
  readonly u: string
  readonly dof: string
}

export type Budget = {
  readonly measure: string
  readonly result: string
  readonly note: string
  readonly rows: readonly BudgetRow[]
}

export type Series = {
  readonly name: string
  readonly mark: 'points' | 'line' | 'both'
  readonly muted: boolean
  /** x, y and expanded uncertainty (null: none drawn), in the units of the axes. */
  readonly points: readonly (readonly [number, number, number | null])[]
  /** One a point, where the points have verdicts. */
  readonly styles?: readonly StampStyle[]
  /** True for points that are drawn hollow: runs that are not on the main line, or gone. */
  readonly hollow?: readonly boolean[]
}

export type Plot = {
  readonly kind: 'figure' | 'trend'
  readonly id: string
  readonly title: string
  readonly caption: Rich
  /** What it shows, for whoever cannot see it. */
  readonly alt: string
  readonly x: string
  readonly y: string
  readonly series: readonly Series[]
  readonly limits: readonly {
    readonly axis: 'x' | 'y'
    readonly at: number
    readonly label: string
    readonly refused?: 'below' | 'above'
  }[]
  readonly bands: readonly {
    readonly axis: 'x' | 'y'
    readonly from: number
    readonly to: number
    readonly label: string
  }[]
  /** Of a trend: what stands under each place on the x axis, and the reworks between places. */
  readonly places: readonly { readonly at: number; readonly label: string }[]
  readonly marks: readonly { readonly at: number; readonly label: string }[]
  readonly table: Table
}

export type GateRow = {
  readonly order: number
  readonly title: string
  readonly to: Target
  readonly stamps: readonly Inline[]
  readonly words: readonly Rich[]
}

export type Block =
  | {
      readonly is: 'title-block'
      readonly label: string
      readonly stamps: readonly Inline[]
      readonly cells: readonly Cell[]
    }
  | { readonly is: 'answer'; readonly text: Rich }
  | { readonly is: 'text'; readonly text: Rich }
  | { readonly is: 'list'; readonly items: readonly Rich[]; readonly ordered?: boolean }
  | {
      readonly is: 'strip'
      readonly title: string
      readonly tone: 'quiet' | 'loud'
      readonly items: readonly Rich[]
    }
  | { readonly is: 'cautions'; readonly items: readonly Rich[] }
  | { readonly is: 'table'; readonly table: Table }
  | {
      readonly is: 'filter'
      readonly by: readonly {
        readonly name: string
        readonly label: string
        readonly values: readonly string[]
      }[]
      readonly table: Table
    }
  | { readonly is: 'criteria'; readonly rows: readonly CriterionRow[] }
  | { readonly is: 'plots'; readonly plots: readonly Plot[] }
  | { readonly is: 'budgets'; readonly budgets: readonly Budget[] }
  /** HTML made from Markdown by `prose.ts`; addresses within the site begin with `base:`. */
  | { readonly is: 'prose'; readonly html: string }
  | { readonly is: 'sample'; readonly label: string; readonly text: string }
  | { readonly is: 'gates'; readonly rows: readonly GateRow[] }
  | {
      readonly is: 'log'
      readonly days: readonly { readonly date: string; readonly entries: readonly Rich[] }[]
    }
  | {
      readonly is: 'photos'
      readonly photos: readonly {
        readonly file: Target
        readonly picture: boolean
        readonly caption: string
      }[]
    }
  /** Blocks that share the width of a sheet of paper in two columns. */
  | { readonly is: 'beside'; readonly blocks: readonly Block[] }
  /** Tables to write in by hand, side by side. */
  | { readonly is: 'writing'; readonly tables: readonly Table[] }
  | {
      readonly is: 'boxes'
      readonly items: readonly { readonly label: string; readonly note: string; readonly wide?: boolean }[]
    }
  | { readonly is: 'pager'; readonly previous: Inline | null; readonly next: Inline | null }
  /** The form of a card, to record a run with. */
  | { readonly is: 'record'; readonly form: FormView }
  /** Runs that were begun in this browser and are not handed in. */
  | { readonly is: 'record-list'; readonly cards: readonly (readonly [string, string])[] }
  | { readonly is: 'section'; readonly id: string; readonly title: string; readonly blocks: readonly Block[] }

export type PageKind =
  | 'front'
  | 'gates'
  | 'gate'
  | 'cards'
  | 'card'
  | 'sheet'
  | 'record'
  | 'articles'
  | 'article'
  | 'runs'
  | 'run'
  | 'report'
  | 'trends'
  | 'items'
  | 'item'
  | 'reworks'
  | 'rework'
  | 'readiness-list'
  | 'readiness'
  | 'instruments'
  | 'instrument'
  | 'people'
  | 'handbook'
  | 'method'
  | 'formulas'
  | 'units'
  | 'problems'

export type Page = {
  /** Title of the campaign, over every page. */
  readonly campaign: string
  readonly title: string
  /** One sentence for whoever finds the page by a search. */
  readonly description: string
  readonly blocks: readonly Block[]
  /** Files of the repository that the page shows or offers; copied to `files/`. */
  readonly files: readonly string[]
}

export type View = {
  /** Address within the site, `''` for the front page, else with a slash at the end. */
  readonly path: string
  readonly kind: PageKind
  readonly data: Page
  /** Digest of `data`: the page changes when, and only when, this or the code of the site does. */
  readonly key: string
}
