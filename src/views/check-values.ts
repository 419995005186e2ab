/** Check values of a method beside what the code gives for them. */
import { type CheckValue, runCheckValue } from '../methods/check-values.ts'
import type { Method } from '../methods/method.ts'
import { numberText, unitText } from './show.ts'
import type { Rich } from './view.ts'
import { nameWords } from './words.ts'

const shown = (x: number, unit: string): string =>
  `${numberText(x, 7)}${unit === '1' ? '' : ` ${unitText(unit)}`}`

/** One row a measure: expected, computed, how far apart, how far they may be. */
export const checkRows = (method: Method, checks: readonly CheckValue[]): Rich[][] =>
  checks.flatMap((check) =>
    runCheckValue(method, check).map((row): Rich[] => [
      [check.title],
      [nameWords(row.measure)],
      [shown(row.expected, row.unit)],
      [Number.isFinite(row.computed) ? shown(row.computed, row.unit) : 'no result'],
      Number.isFinite(row.computed) ? [numberText(row.computed - row.expected, 2)] : [],
      [numberText(row.tolerance, 2)],
      row.agrees ? ['agrees'] : [{ is: 'strong', text: 'differs' }],
    ]),
  )
