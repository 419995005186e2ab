/** Least and greatest value; a loop, since a logger file has more values than a call takes arguments. */
export const extentOf = (values: Iterable<number>): { readonly low: number; readonly high: number } => {
  let low = Number.POSITIVE_INFINITY
  let high = Number.NEGATIVE_INFINITY
  for (const value of values) {
    if (value < low) low = value
    if (value > high) high = value
  }
  return { low, high }
}
