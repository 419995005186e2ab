/** Counts, and the value of each entry that has one. */
import type { Result } from '../../quantity/types.ts'
import type { Columns, Estimate, Givens } from '../method.ts'
import { answerOf, prepare } from './answers.ts'
import { checklistOf, type Entry } from './checklist.ts'

/** Whether an entry counts as not in order: by its word, or by a value outside its limits as it was read. */
const isBad = (columns: Columns, entry: Entry): boolean => {
  const answer = answerOf(columns, entry)
  if (answer.form !== 'value') return answer.form === 'not-ok'
  const { value } = answer.stated
  const tail = 1e-12 * Math.abs(value)
  return (
    value < (entry.low?.value ?? Number.NEGATIVE_INFINITY) - tail ||
    value > (entry.high?.value ?? Infinity) + tail
  )
}

/** An answer that cannot be read is none. */
export const isOpen = (columns: Columns, entry: Entry): boolean =>
  ['open', 'wrong'].includes(answerOf(columns, entry).form)

export const estimate = (columns: Columns, givens: Givens): Result<Estimate, string> => {
  const list = checklistOf(givens.fields)
  if (list.length === 0)
    return { ok: false, error: 'the card has no `checklist`, so there is nothing to inspect' }
  const all = prepare(columns, givens)
  const values: Record<string, number> = {
    entries: list.length,
    not_ok: list.filter((entry) => isBad(columns, entry)).length,
    open: list.filter((entry) => isOpen(columns, entry)).length,
  }
  for (const { name } of list) {
    const value = all[name]?.values[0]
    if (value !== undefined && Number.isFinite(value)) values[name] = value
  }
  return { ok: true, value: { values, scatter: {}, residual: {} } }
}
