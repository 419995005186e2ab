/** Formulas of cards: a closed set of nodes, each with its place in the text. */
import type { Kind } from '../kinds.ts'
import type { Dimension } from '../types.ts'

type At = { readonly start: number; readonly end: number }

export type Comparison = '<' | '<=' | '>' | '>='

export type Node =
  | (At & { readonly type: 'number'; readonly value: number; readonly dim: Dimension; readonly text: string })
  | (At & { readonly type: 'name'; readonly name: string })
  | (At & { readonly type: 'call'; readonly name: string; readonly args: readonly Node[] })
  | (At & { readonly type: 'minus'; readonly of: Node })
  | (At & {
      readonly type: 'arithmetic'
      readonly op: '+' | '-' | '*' | '/' | '^'
      readonly left: Node
      readonly right: Node
    })
  /** `a < b` or `a <= b <= c`: operands are one more than operators. */
  | (At & {
      readonly type: 'compare'
      readonly ops: readonly Comparison[]
      readonly operands: readonly Node[]
    })
  | (At & { readonly type: 'and'; readonly terms: readonly Node[] })

/** A function that card formulas may call. Arguments and result are in SI of their kinds. */
export type FormulaFunction = {
  readonly name: string
  readonly meaning: string
  readonly source: string
  readonly parameters: readonly {
    readonly name: string
    readonly meaning: string
    /** `any`: whatever dimension; the result's may follow from it. */
    readonly kind: Kind | 'any'
    /** Bare words are accepted here, and only these. */
    readonly words?: readonly string[]
  }[]
  readonly result: Kind | 'same-as-first'
  /** A formula and what it gives, shown in the handbook and run as a test. */
  readonly example: { readonly formula: string; readonly value: string; readonly source: string }
  /** Words come as strings, numbers in SI. Outside its range it gives a sentence instead of a number. */
  readonly evaluate: (...args: (number | string)[]) => number | string
}
