/** What each row of an inspection answers, read from its text cells. */
import { parseStated } from '../../quantity/quantity-text.ts'
import type { Stated } from '../../quantity/types.ts'
import type { Columns, Givens } from '../method.ts'
import { checklistOf, dimOf, type Entry, isValued } from './checklist.ts'

export type Answer =
  | { readonly form: 'ok' | 'not-ok' | 'n/a' | 'open' }
  | { readonly form: 'value'; readonly stated: Stated }
  /** Cannot be read; the sentence says why. */
  | { readonly form: 'wrong'; readonly why: string; readonly hint: string }

const WORDS = ['ok', 'not-ok', 'n/a'] as const

/** One cell with the unit of its row. Empty and `-`: nobody looked. */
export const readAnswer = (cell: string | undefined, unit: string | undefined, entry: Entry): Answer => {
  const text = (cell ?? '').trim()
  if (text === '' || text === '-') return { form: 'open' }
  const word = WORDS.find((one) => one === text)
  if (word === 'ok' && isValued(entry))
    return {
      form: 'wrong',
      why: `\`${entry.name}\` has limits, so \`ok\` does not answer it`,
      hint: 'write the value, and its unit in the column `unit`',
    }
  if (word) return { form: word }
  const shown = (unit ?? '').trim()
  const bare = shown === '' || shown === '-' || shown === '1'
  const stated = parseStated(bare ? text : `${text} ${shown}`)
  if (!isValued(entry) || !stated.ok)
    return {
      form: 'wrong',
      why: isValued(entry)
        ? `\`${text}\` is neither a value nor one of ok, not-ok, n/a`
        : `\`${text}\` is not an answer to \`${entry.name}\`, which has no limits`,
      hint: isValued(entry)
        ? 'write the number alone, and its unit in the column `unit`'
        : 'write ok, not-ok or n/a',
    }
  const dim = dimOf(entry)
  if (dim?.some((x, i) => x !== stated.value.unit.dim[i]))
    return {
      form: 'wrong',
      why: bare
        ? `the value of \`${entry.name}\` has no unit`
        : `\`${shown}\` is not a unit for \`${entry.name}\`, whose limit is \`${(entry.low ?? entry.high)?.text}\``,
      hint: `write its unit in the column \`unit\`, as \`${(entry.low ?? entry.high)?.unit.text}\``,
    }
  return { form: 'value', stated: stated.value }
}

/** The row of an entry; −1 where the run leaves it out. */
export const rowOf = (columns: Columns, entry: Entry): number =>
  columns.entry?.texts?.indexOf(entry.name) ?? -1

export const answerOf = (
  columns: Columns,
  entry: Entry,
  column: 'as_found' | 'as_left' = 'as_left',
): Answer => {
  const row = rowOf(columns, entry)
  if (row < 0) return { form: 'open' }
  return readAnswer(columns[column]?.texts?.[row], columns.unit?.texts?.[row], entry)
}

/**
 * Adds a column of one value for each entry that was left with one: as any column it then carries the resolution of
 * what was written and, where the run names an instrument for the entry, that of the instrument.
 */
export const prepare = (columns: Columns, givens: Givens): Columns => {
  const added = checklistOf(givens.fields).flatMap((entry) => {
    const answer = answerOf(columns, entry)
    if (answer.form !== 'value' || columns[entry.name]) return []
    const { value, unit, digit } = answer.stated
    return [[entry.name, { values: Float64Array.of(value), dim: unit.dim, resolution: digit }] as const]
  })
  return added.length > 0 ? { ...columns, ...Object.fromEntries(added) } : columns
}
