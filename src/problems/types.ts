/** The one type of problem; the printers, the JSON of `check` and the page of the site are made from it. */

export type Severity = 'error' | 'warning'

/** A place in a file; lines and columns count from 1, columns in UTF-16 units as editors do. */
export type Place = {
  readonly file: string
  readonly line: number
  readonly column: number
  readonly endLine: number
  readonly endColumn: number
  readonly part: 'key' | 'value' | 'cell' | 'file'
}

export type Problem = {
  /** Permanent name, `<area>/<name>`; its page on the site has an example and the mend. */
  readonly code: string
  readonly severity: Severity
  /** Stands alone, in the user's words, one sentence without a full stop. */
  readonly message: string
  readonly at: Place
  readonly actual?: string
  /** What would have been accepted; the nearest names first where it is a closed set. */
  readonly expected?: readonly string[]
  readonly why?: string
  readonly hint?: string
  /** Pages to read, beside the page of the code itself: `handbook: <method>, givens`. */
  readonly see?: readonly string[]
  readonly related?: readonly { readonly message: string; readonly at: Place }[]
}

/** One file a code: the wording, an example that provokes it, and the mend. */
export type ProblemCode = {
  readonly code: string
  readonly severity: Severity
  readonly title: string
  /** What happened and why it matters: a paragraph or two of Markdown for the page. */
  readonly page: string
  /**
   * A piece of a file that provokes it, and the same mended: whole fields of a front matter, or a whole file.
   * `in` names the file of the test campaign whose fields they replace; absent: the run.
   */
  readonly example: {
    readonly wrong: string
    readonly right: string
    readonly in?: string
    /** The text of the data file that lies beside the run. */
    readonly data?: string
  }
}
