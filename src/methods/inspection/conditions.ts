/** What bars a pass, what is said beside it, and what stays to be done. */
import { expanded } from '../../quantity/quantity.ts'
import type { Columns, Givens, Measures, Method, Remark } from '../method.ts'
import { answerOf } from './answers.ts'
import { checklistOf, type Entry } from './checklist.ts'
import { isOpen } from './estimate.ts'

const quoted = (entries: readonly Entry[]): string => entries.map(({ name }) => `\`${name}\``).join(', ')

/** A value inside its limits, but nearer to one of them than its uncertainty. */
const isNear = (entry: Entry, measures: Measures): boolean => {
  const measure = measures[entry.name]
  if (!measure) return false
  const U = expanded(measure)?.U ?? Number.POSITIVE_INFINITY
  const low = measure.value - (entry.low?.value ?? Number.NEGATIVE_INFINITY)
  const high = (entry.high?.value ?? Number.POSITIVE_INFINITY) - measure.value
  return low >= 0 && high >= 0 && Math.min(low, high) < U
}

export const conditions = (measures: Measures, columns: Columns, givens: Givens): readonly Remark[] => {
  const list = checklistOf(givens.fields)
  const open = list.filter((entry) => isOpen(columns, entry))
  const near = list.filter((entry) => isNear(entry, measures))
  const remarks: Remark[] = []
  if (open.length > 0)
    remarks.push({
      effect: 'bars-pass',
      text: `${open.length} of ${list.length} entries are open: ${quoted(open)}`,
    })
  if (near.length > 0)
    remarks.push({
      effect: 'note',
      text: `counted as read, nearer to a limit than the uncertainty: ${quoted(near)}; a guarded criterion on the entry itself decides with it`,
    })
  return remarks
}

/** Each open entry, and each one left not-ok, must be settled although no criterion may name it. */
export const openItems: NonNullable<Method['openItems']> = (_, columns, givens) =>
  checklistOf(givens.fields).flatMap((entry) => {
    const id = entry.name.replaceAll('_', '-')
    if (isOpen(columns, entry))
      return [
        {
          id,
          title: `not inspected: ${entry.text}`,
          closes: `an inspection that answers \`${entry.name}\``,
        },
      ]
    if (answerOf(columns, entry).form !== 'not-ok') return []
    return [
      {
        id,
        title: `left not ok: ${entry.text}`,
        closes: `a later inspection that leaves \`${entry.name}\` ok`,
      },
    ]
  })
