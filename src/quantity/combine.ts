/** First-order propagation (GUM 5.1 and 5.2): sources add linearly within one, in quadrature across them. */
import { divideDimension, multiplyDimension, sameDimension } from './dimension.ts'
import { firstOrderUncertainty, newParts } from './quantity.ts'
import { sensitivities } from './sensitivity.ts'
import type { Dimension, Part, Parts, Quantity } from './types.ts'

/** Parts of several quantities, each times a sensitivity. A source that cancels is left out. */
function combineParts(terms: readonly { readonly parts: Parts; readonly sensitivity: number }[]): Parts {
  const sums = newParts()
  for (const { parts, sensitivity } of terms) {
    for (const source of Object.keys(parts)) {
      const part = parts[source] as Part
      const sum = sums[source]
      const u = part.u * sensitivity
      const { dof, pool, shape } = part
      if (sum) sums[source] = { u: sum.u + u, dof: Math.min(sum.dof, dof), pool: sum.pool, shape: sum.shape }
      else sums[source] = { u, dof, pool, shape }
    }
  }
  for (const [source, part] of Object.entries(sums)) if (part.u === 0) delete sums[source]
  return sums
}

/** Does the result move when this input does? Asked where the size of its uncertainty is not known. */
function matters(f: (values: number[]) => number, values: readonly number[], i: number): boolean {
  const value = values[i] ?? Number.NaN
  const step = Math.abs(value) * 1e-4 || 1e-4
  const middle = f([...values])
  return [-step, step].some((by) => f(values.with(i, value + by)) !== middle)
}

/**
 * Value and budget of f at the inputs, by central differences over one standard uncertainty of each input
 * (GUM 5.1.3, note 2). Inputs that share a source may be given in any number: their parts meet again in the result.
 * The uncertainty is not known where that of an input that matters is not, or where f is not defined nearby.
 */
export function propagate(
  f: (values: number[]) => number,
  inputs: readonly Quantity[],
  dim: Dimension,
): Quantity {
  const values = inputs.map((input) => input.value)
  const value = f([...values])
  const terms: { parts: Parts; sensitivity: number }[] = []
  const why: string[] = []
  let known = true
  const spreads = inputs.map((input) => firstOrderUncertainty(input) ?? 0)
  const slopes = sensitivities(f, values, spreads)
  inputs.forEach((input, i) => {
    const u = firstOrderUncertainty(input)
    if (input.parts === null || u === null) {
      if (!matters(f, values, i)) return
      known = false
      why.push(...input.why)
      return
    }
    if (u === 0) return
    const sensitivity = slopes[i] as number
    if (Number.isFinite(sensitivity)) {
      terms.push({ parts: input.parts, sensitivity })
    } else if (Number.isFinite(value)) {
      known = false
      why.push('the formula is not defined within one standard uncertainty of its inputs')
    }
  })
  const distinct = [...new Set(why)]
  return { value, dim, parts: known ? combineParts(terms) : null, why: distinct }
}

/** Sums with known sensitivities, where differences of large numbers would lose digits. */
function linear(
  value: number,
  dim: Dimension,
  terms: readonly { q: Quantity; sensitivity: number }[],
): Quantity {
  const why = [...new Set(terms.flatMap(({ q, sensitivity }) => (sensitivity === 0 ? [] : q.why)))]
  const unknown = terms.some(({ q, sensitivity }) => q.parts === null && sensitivity !== 0)
  if (unknown) return { value, dim, parts: null, why }
  const parts = combineParts(
    terms.flatMap(({ q, sensitivity }) => (q.parts ? [{ parts: q.parts, sensitivity }] : [])),
  )
  return { value, dim, parts, why: [] }
}

/** Quantities of different dimensions have no sum: the result is then not a number. */
export function add(a: Quantity, b: Quantity): Quantity {
  const value = sameDimension(a.dim, b.dim) ? a.value + b.value : Number.NaN
  return linear(value, a.dim, [
    { q: a, sensitivity: 1 },
    { q: b, sensitivity: 1 },
  ])
}

export function subtract(a: Quantity, b: Quantity): Quantity {
  const value = sameDimension(a.dim, b.dim) ? a.value - b.value : Number.NaN
  return linear(value, a.dim, [
    { q: a, sensitivity: 1 },
    { q: b, sensitivity: -1 },
  ])
}

/** Times an exact pure number. */
export function scale(q: Quantity, factor: number): Quantity {
  return linear(q.value * factor, q.dim, [{ q, sensitivity: factor }])
}

export function multiply(a: Quantity, b: Quantity): Quantity {
  return linear(a.value * b.value, multiplyDimension(a.dim, b.dim), [
    { q: a, sensitivity: b.value },
    { q: b, sensitivity: a.value },
  ])
}

export function divide(a: Quantity, b: Quantity): Quantity {
  return linear(a.value / b.value, divideDimension(a.dim, b.dim), [
    { q: a, sensitivity: 1 / b.value },
    { q: b, sensitivity: -a.value / b.value ** 2 },
  ])
}
