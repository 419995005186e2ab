/** The card's field `band`: where in the spectrum the mode is looked for. */
import { KINDS } from '../../quantity/kinds.ts'
import { parseRange } from '../../quantity/range-text.ts'
import type { CardField, Givens } from '../method.ts'
import type { Band } from './spectrum.ts'

const isBand = (value: unknown): value is Band =>
  typeof value === 'object' && value !== null && 'low' in value && 'high' in value

export const rangeOf = (givens: Givens): Band | undefined =>
  isBand(givens.fields.band) ? givens.fields.band : undefined

const refuse = (text: string, message: string) => ({
  ok: false as const,
  error: [
    {
      code: 'ring-down/band',
      message,
      start: 0,
      end: text.length,
      expected: ['5 Hz .. 15 Hz'],
      path: [],
    },
  ],
})

export const bandField: CardField = {
  name: 'band',
  meaning: 'lowest and highest frequency among which the mode is looked for: `5 Hz .. 15 Hz`',
  required: false,
  read: (raw) => {
    if (typeof raw !== 'string') return refuse('', '`band` is a range of frequencies')
    const range = parseRange(raw)
    if (!range.ok) return { ok: false, error: range.error.map((fault) => ({ ...fault, path: [] })) }
    const { low, high } = range.value
    const isFrequency = low.unit.dim.every((exponent, i) => exponent === KINDS.frequency.dim[i])
    if (!isFrequency || low.value < 0) return refuse(raw, `\`${raw}\` is not a range of frequencies`)
    return { ok: true, value: { low: low.value, high: high.value } }
  },
}
