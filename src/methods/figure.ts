/** What a method draws. */
import type { Kind } from '../quantity/kinds.ts'

/** A neutral figure: the site draws it with Vega-Lite, the form with something light. */
export type Figure = {
  readonly id: string
  readonly title: string
  readonly caption: string
  readonly x: { readonly label: string; readonly kind: Kind }
  readonly y: { readonly label: string; readonly kind: Kind }
  /** Values in SI; `line` joins in order, `points` does not. */
  readonly series: readonly {
    readonly name: string
    readonly mark: 'points' | 'line' | 'both'
    readonly x: readonly number[]
    readonly y: readonly number[]
    readonly u?: readonly number[]
    readonly muted?: boolean
  }[]
  readonly limits: readonly { readonly axis: 'x' | 'y'; readonly at: number; readonly label: string }[]
  readonly bands: readonly {
    readonly axis: 'x' | 'y'
    readonly from: number
    readonly to: number
    readonly label: string
  }[]
}
