/**
 * Typed arrays made by plain loops. `Float64Array.from` and the array's own `map` take several times as long, and
 * estimates on moved readings, some thirty a run, are where a check spends its time.
 */

export const filled = (length: number, of: (index: number) => number): Float64Array => {
  const values = new Float64Array(length)
  for (let i = 0; i < length; i += 1) values[i] = of(i)
  return values
}

export const mapped = (
  values: ArrayLike<number>,
  by: (value: number, index: number) => number,
): Float64Array => {
  const made = new Float64Array(values.length)
  for (let i = 0; i < made.length; i += 1) made[i] = by(values[i] as number, i)
  return made
}
