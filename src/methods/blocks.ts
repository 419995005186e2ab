/**
 * Rows logged fast are not independent: a slow wobble of gauge or gas runs through many of them. Fits are made on
 * the means of equal blocks, so that the scatter of the blocks shows what wobbles slower than a reading.
 */

/** More rows than this are logged fast. */
export const FAST_ROWS = 64
/**
 * Enough for von Neumann's ratio to see blocks that are alike: in simulation of noise with a memory of a tenth of
 * the hold and more it finds most of it among 20 blocks, and next to none among 8.
 */
const BLOCKS = 20

/** First row of each block, and behind the last one the number of rows. Up to 64 rows each is its own block. */
export const blockStarts = (rows: number): Int32Array => {
  const blocks = rows > FAST_ROWS ? BLOCKS : rows
  return Int32Array.from({ length: blocks + 1 }, (_, block) => Math.floor((block * rows) / blocks))
}

/** A log of more rows than this is first taken in cells of neighbouring rows, fifty to a block. */
const MOST_CELLS = 50 * BLOCKS

/** First row of each cell, and behind the last one the number of rows. */
export const cellStarts = (rows: number): Int32Array => {
  const cells = rows > 2 * MOST_CELLS ? MOST_CELLS : rows
  return Int32Array.from({ length: cells + 1 }, (_, cell) => Math.floor((cell * rows) / cells))
}

type Means = { readonly rows: Int32Array; readonly cells: Int32Array; readonly means: Float64Array }

const known = new WeakMap<Float64Array, Means>()

/**
 * Means of the chosen rows, cell by cell. Of a long log they are kept as long as its values are: most estimates on moved
 * readings move one column and leave the others as they were. Nobody writes into columns.
 */
export const cellMeans = (values: Float64Array, rows: Int32Array, cells: Int32Array): Float64Array => {
  const before = known.get(values)
  if (before && before.rows === rows && before.cells === cells) return before.means
  const means = meansOf(values, rows, cells)
  if (cells.length <= rows.length) known.set(values, { rows, cells, means })
  return means
}

const meansOf = (values: Float64Array, rows: Int32Array, cells: Int32Array): Float64Array => {
  const means = new Float64Array(Math.max(0, cells.length - 1))
  for (let cell = 0; cell < means.length; cell += 1) {
    const from = cells[cell] as number
    const to = cells[cell + 1] as number
    let sum = 0
    for (let k = from; k < to; k += 1) sum += values[rows[k] as number] as number
    means[cell] = sum / (to - from)
  }
  return means
}

/**
 * By how much the standard error of a slope over blocks is to be widened because neighbours are alike:
 * √((1 + r)/(1 − r)) for first-order correlation r (Bayley and Hammersley, J. R. Stat. Soc. Suppl. 8, 1946, 184).
 * Residuals of a line understate r by about 2/n, which is given back; r counts from 0 to 0.8, and what is more
 * alike than that is for von Neumann's ratio to bar.
 */
export const widening = (residuals: readonly number[]): number => {
  const squares = residuals.reduce((sum, e) => sum + e * e, 0)
  if (!(squares > 0)) return 1
  const differences = residuals.reduce(
    (sum, e, k) => (k > 0 ? sum + (e - (residuals[k - 1] as number)) ** 2 : sum),
    0,
  )
  const r = Math.min(0.8, Math.max(0, 1 - differences / (2 * squares) + 2 / residuals.length))
  return Math.sqrt((1 + r) / (1 - r))
}
