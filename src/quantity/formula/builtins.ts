/** The functions that every formula knows, with their rules for dimensions. Angles are in radians of their own. */
import { aKind, DIMENSIONLESS, powerDimension, sameDimension } from '../dimension.ts'
import { KINDS } from '../kinds.ts'
import type { Dimension } from '../types.ts'

export type Builtin = {
  readonly least: number
  readonly most: number
  /** The dimension of the result, or a sentence about what does not fit. */
  readonly dimension: (args: readonly Dimension[]) => Dimension | string
  readonly evaluate: (...args: number[]) => number
}

/** Standard gravity, m/s² (CGPM 1901). */
export const CONSTANTS: Readonly<Record<string, { readonly value: number; readonly dim: Dimension }>> = {
  g0: { value: 9.80665, dim: KINDS.acceleration.dim },
}

const ANGLE = KINDS.angle.dim

function fromTo(from: Dimension, to: Dimension, evaluate: (x: number) => number): Builtin {
  const dimension = ([dim = DIMENSIONLESS]: readonly Dimension[]) =>
    sameDimension(dim, from) ? to : `takes ${aKind(from)}, not ${aKind(dim)}`
  return { least: 1, most: 1, dimension, evaluate }
}

/** All arguments of one dimension; the result's follows from it. */
function alike(
  least: number,
  most: number,
  result: (dim: Dimension) => Dimension,
  evaluate: Builtin['evaluate'],
): Builtin {
  const dimension = (args: readonly Dimension[]) => {
    const [first = DIMENSIONLESS] = args
    const other = args.find((dim) => !sameDimension(dim, first))
    return other ? `takes values of one kind, not ${aKind(first)} and ${aKind(other)}` : result(first)
  }
  return { least, most, dimension, evaluate }
}

const same = (dim: Dimension) => dim

export const BUILTINS: Readonly<Record<string, Builtin>> = {
  abs: alike(1, 1, same, Math.abs),
  min: alike(1, Number.POSITIVE_INFINITY, same, Math.min),
  max: alike(1, Number.POSITIVE_INFINITY, same, Math.max),
  sqrt: alike(1, 1, (dim) => powerDimension(dim, 0.5), Math.sqrt),
  exp: fromTo(DIMENSIONLESS, DIMENSIONLESS, Math.exp),
  log: fromTo(DIMENSIONLESS, DIMENSIONLESS, Math.log),
  log10: fromTo(DIMENSIONLESS, DIMENSIONLESS, Math.log10),
  sin: fromTo(ANGLE, DIMENSIONLESS, Math.sin),
  cos: fromTo(ANGLE, DIMENSIONLESS, Math.cos),
  tan: fromTo(ANGLE, DIMENSIONLESS, Math.tan),
  asin: fromTo(DIMENSIONLESS, ANGLE, Math.asin),
  acos: fromTo(DIMENSIONLESS, ANGLE, Math.acos),
  atan: fromTo(DIMENSIONLESS, ANGLE, Math.atan),
  atan2: alike(2, 2, () => ANGLE, Math.atan2),
}

export function builtin(name: string): Builtin | undefined {
  return Object.hasOwn(BUILTINS, name) ? BUILTINS[name] : undefined
}
