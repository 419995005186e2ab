/** Short ways to a general function in tests. */
import { expect } from 'vitest'
import { FUNCTIONS } from '../../src/functions/index.ts'

/** The value in SI; throws the sentence where there is none. */
export const call = (name: string, ...args: (number | string)[]): number => {
  const result = FUNCTIONS[name]?.evaluate(...args)
  if (typeof result !== 'number') throw new Error(`${name}: ${result}`)
  return result
}

/** What the function says instead of a number. */
export const refusal = (name: string, ...args: (number | string)[]): string => {
  const result = FUNCTIONS[name]?.evaluate(...args)
  return typeof result === 'string' ? result : `gave ${result}`
}

export const near = (actual: number, expected: number, relative: number) =>
  expect(Math.abs(actual / expected - 1), `${actual} against ${expected}`).toBeLessThan(relative)

export const FT = 0.3048
export const IN = 0.0254
export const LB = 0.45359237
export const LBF = 4.4482216152605
export const KT = 1852 / 3600
export const DEG = Math.PI / 180
