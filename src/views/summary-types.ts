/** What a branch changes in the records, as plain texts; the Markdown is made from it. */
import type { Problem } from '../problems/types.ts'

export type Summary = {
  readonly title: string
  readonly asOf: string
  /** No file of the records differs, and nothing follows otherwise. */
  readonly nothing: boolean
  /** What a reviewer looks at before anything else, worst first. */
  readonly looks: readonly Look[]
  readonly runs: readonly RunLine[]
  readonly cards: readonly CardLine[]
  readonly gates: readonly GateLine[]
  readonly opened: readonly ItemLine[]
  readonly closed: readonly ItemLine[]
  /** Changes of what runs are judged by, but those among the looks. */
  readonly shared: readonly SharedLine[]
  /** Other files that came, went, moved or changed in their prose. */
  readonly files: readonly FileLine[]
  readonly problems: readonly Problem[]
  /** Warnings that were there before. */
  readonly oldWarnings: number
}

export type Look = {
  /** `reading changed`, `limit moved` … */
  readonly what: string
  readonly text: string
  /** What differs, one a line. */
  readonly details: readonly Detail[]
}

export type Detail = { readonly at: string; readonly before: string; readonly after: string }

export type RunLine = {
  readonly id: string
  readonly is: 'new' | 'changed'
  readonly card: string
  readonly article: string
  readonly by: readonly string[]
  /** Those that count, or would once it has landed. */
  readonly reviewed: readonly string[]
  /** Null before: a new run. */
  readonly before: string | null
  readonly verdict: string
  readonly reasons: readonly string[]
  readonly criteria: readonly CriterionLine[]
}

export type CriterionLine = {
  readonly name: string
  readonly result: string
  readonly before: string | null
  readonly limit: string
  readonly probability: string
  readonly verdict: string
}

export type CardLine = {
  readonly card: string
  readonly article: string
  readonly before: string
  readonly after: string
}

export type GateLine = {
  readonly title: string
  readonly before: string
  readonly after: string
  /** What holds it now and did not before, in words. */
  readonly more: readonly string[]
}

export type ItemLine = { readonly kind: string; readonly title: string; readonly closes: string }

export type SharedLine = Detail & { readonly path: string }

export type FileLine = { readonly path: string; readonly what: string }
