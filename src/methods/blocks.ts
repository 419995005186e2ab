/**
 * Rows logged fast are not independent: a slow wobble of gauge or gas runs through many of them. Fits are made on
 * the means of a few equal blocks, so that the scatter of the blocks shows what wobbles slower than a reading.
 */

/** More rows than this are logged fast. */
export const FAST_ROWS = 64
/** Few and long: the longer the block, the more of a slow wobble averages out inside or shows between. */
const BLOCKS = 8

/** First row of each block, and behind the last one the number of rows. Up to 64 rows each is its own block. */
export const blockStarts = (rows: number): Int32Array => {
  const blocks = rows > FAST_ROWS ? BLOCKS : rows
  return Int32Array.from({ length: blocks + 1 }, (_, block) => Math.floor((block * rows) / blocks))
}
