/**
 * The words that the whole core speaks: a value with unit and uncertainty, and the faults found in texts.
 * Everything here is plain data in SI units; nothing in this folder knows files, runs or methods.
 */

/** Exponents of m, kg, s, A, K, rad. An angle is a dimension of its own: per radian is not per degree. */
export type Dimension = readonly [number, number, number, number, number, number]

/**
 * Name of one independent source of uncertainty. Everything that carries the same name moves together:
 * `instrument:<id>@<calibration>/gain`, `given:card:<id>/<name>`, `given:run:<id>/<name>`, `fit:<run>/<fit>/<k>`.
 */
export type Source = string

export type Shape = 'normal' | 'rectangular' | 't'

/** What one source contributes to a quantity. */
export type Part = {
  /** Signed contribution to the value, as a standard uncertainty in SI units. */
  readonly u: number
  /** Degrees of freedom; `Infinity` where it is taken as known. */
  readonly dof: number
  /** Parts of one pool share one estimate of scatter, and so one set of degrees of freedom. */
  readonly pool: string
  readonly shape: Shape
}

export type Parts = Readonly<Record<Source, Part>>

/** What draws of all sources together say of a quantity, in place of the first order (JCGM 101). SI. */
export type Simulated = {
  /** Mean and standard deviation of the draws. */
  readonly mean: number
  readonly u: number
  /** Probabilistically symmetric 95 % interval (7.7). */
  readonly low: number
  readonly high: number
  /** What 95 % of the draws do not exceed. */
  readonly bound: number
  readonly draws: number
  /** By how much another set of draws may differ in any of mean, u, low and high (7.9.4: two standard deviations). */
  readonly tolerance: number
}

/** A value in SI with its budget. `parts: null` means that the uncertainty is not known, which is not zero. */
export type Quantity = {
  readonly value: number
  readonly dim: Dimension
  readonly parts: Parts | null
  /** Why the uncertainty is not known; empty where it is. One sentence each. */
  readonly why: readonly string[]
  /** Where a card asks for Monte Carlo: counts before `parts`, which stay for the budget and for what follows. */
  readonly simulated?: Simulated
}

/** A unit as somebody wrote it: `value_SI = value * factor + offset`. */
export type Unit = {
  readonly text: string
  readonly dim: Dimension
  readonly factor: number
  /** Only temperatures have one (°C, °F). */
  readonly offset: number
  /** True for a bare energy unit (J, kWh …): it has the dimension of a moment but may not stand for one. */
  readonly energy: boolean
}

/** A quantity as it stands in a text, before anybody asked what it is for. */
export type Stated = {
  readonly text: string
  /** In SI. */
  readonly value: number
  readonly unit: Unit
  /** Standard uncertainty in SI; null where none is written; 0 where `(exact)` is. */
  readonly u: number | null
  readonly shape: Shape
  readonly exact: boolean
  /** Set for `0.3 K (u)`: the value is itself a standard uncertainty. It may stand only where one is asked for. */
  readonly isUncertainty?: boolean
  /** Size of the last digit written, in SI: `27.50 mm` → 1e-5. Digits as read are kept. */
  readonly digit: number
}

/** What is wrong with a piece of text, by offset from its start. `code` is one of the problem codes. */
export type Fault = {
  readonly code: string
  readonly message: string
  readonly start: number
  readonly end: number
  readonly expected?: readonly string[]
  readonly why?: string
  readonly hint?: string
}

export type Result<T, E = Fault[]> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly error: E }
