/** Random numbers from a seed: the same everywhere, always. */

export type Generator = () => number

/** Uniform on [0, 1), 53 bits; the generator is sfc32 of PractRand (Doty-Humphrey), 128 bits of state. */
export function random(seed: number): Generator {
  let [a, b, c, d] = [0x9e3779b9, 0x243f6a88, Math.trunc(seed / 0x1_0000_0000) | 0, seed | 0]
  const next = () => {
    const t = (((a + b) | 0) + d) | 0
    d = (d + 1) | 0
    a = b ^ (b >>> 9)
    b = (c + (c << 3)) | 0
    c = (((c << 21) | (c >>> 11)) + t) | 0
    return t >>> 0
  }
  // The first numbers still show the seed.
  for (let i = 0; i < 20; i++) next()
  return () => ((next() >>> 5) * 0x400_0000 + (next() >>> 6)) / 2 ** 53
}

/** A seed of 53 bits from a text: FNV-1a over its UTF-16 units, twice from different beginnings. */
export function seedOf(text: string): number {
  let [a, b] = [0x811c9dc5, 0x9747b28c]
  for (let i = 0; i < text.length; i++) {
    const unit = text.charCodeAt(i)
    a = Math.imul(a ^ unit, 0x01000193)
    b = Math.imul(b ^ unit, 0x01000193) ^ (b >>> 15)
  }
  return ((a >>> 0) & 0x1f_ffff) * 0x1_0000_0000 + (b >>> 0)
}

/** Standard normal, by Marsaglia's polar method. */
export function normal(generator: Generator): number {
  for (;;) {
    const x = 2 * generator() - 1
    const y = 2 * generator() - 1
    const square = x * x + y * y
    if (square > 0 && square < 1) return x * Math.sqrt((-2 * Math.log(square)) / square)
  }
}

/** Rectangular with standard deviation 1. */
export function rectangular(generator: Generator): number {
  return Math.sqrt(3) * (2 * generator() - 1)
}

/** √(ν/χ²): what turns a standard normal into Student's t. χ² after Marsaglia and Tsang, ACM TOMS 26 (2000), 363. */
export function studentScale(generator: Generator, dof: number): number {
  if (dof === Number.POSITIVE_INFINITY) return 1
  const shape = dof / 2
  // Below 1 the method works on shape + 1, and a power of a uniform number brings it back.
  const d = (shape < 1 ? shape + 1 : shape) - 1 / 3
  const c = 1 / Math.sqrt(9 * d)
  for (;;) {
    const z = normal(generator)
    const v = (1 + c * z) ** 3
    if (v <= 0 || Math.log(1 - generator()) >= (z * z) / 2 + d - d * v + d * Math.log(v)) continue
    const gamma = shape < 1 ? d * v * (1 - generator()) ** (1 / shape) : d * v
    return Math.sqrt(shape / gamma)
  }
}
