/** Small help for formula functions: which arguments are numbers, which are words, and exact US units in SI. */
import type { FormulaFunction } from '../quantity/formula/types.ts'

/** Exact by definition (international yard and pound, 1959; standard gravity for the pound-force). */
export const FOOT = 0.3048
export const POUND = 0.45359237
export const GRAVITY = 9.80665
export const POUND_FORCE = POUND * GRAVITY

type Argument = number | string

/** For a function of numbers only. The formula reader has checked dimensions before. */
export const ofNumbers =
  (compute: (...numbers: number[]) => number | string) =>
  (...given: Argument[]): number | string => {
    const numbers = given.filter((one) => typeof one === 'number' && Number.isFinite(one)) as number[]
    if (numbers.length !== given.length || given.length !== compute.length)
      return `expects ${compute.length} finite numbers`
    return compute(...numbers)
  }

/** For a function whose first argument is a word and whose others are numbers. */
export const ofWord =
  (compute: (word: string, ...numbers: number[]) => number | string) =>
  (...given: Argument[]): number | string => {
    const [word, ...rest] = given
    const numbers = rest.filter((one) => typeof one === 'number' && Number.isFinite(one)) as number[]
    if (typeof word !== 'string' || numbers.length !== rest.length || given.length !== compute.length)
      return `expects a word and ${compute.length - 1} finite numbers`
    return compute(word, ...numbers)
  }

/** For a function of numbers and words in any order: its parameters say which is which, and which words there are. */
export const ofBoth =
  (
    parameters: FormulaFunction['parameters'],
    compute: (numbers: readonly number[], words: readonly string[]) => number | string,
  ) =>
  (...given: Argument[]): number | string => {
    if (given.length !== parameters.length) return `expects ${parameters.length} values`
    for (const [i, { name, words }] of parameters.entries()) {
      const one = given[i]
      if (words ? !words.includes(String(one)) : !Number.isFinite(one))
        return words ? `${name} is one of ${words.join(', ')}` : `${name} is a finite number`
    }
    return compute(
      given.filter((one) => typeof one === 'number'),
      given.filter((one) => typeof one === 'string'),
    )
  }

/** A row of a table by a word that somebody wrote: `toString` is no row. */
export const row = <T>(
  table: Readonly<Record<string, T>>,
  word: number | string | undefined,
): T | undefined => (Object.hasOwn(table, String(word)) ? table[String(word)] : undefined)
