/** Before an inspection: the list with what each entry asks, in its order. */
import type { Givens } from '../method.ts'
import type { Plan } from '../plan.ts'
import { checklistOf, type Entry } from './checklist.ts'

/** A limit as the card writes it. */
const written = (entry: Entry): string => {
  const { low, high } = entry
  if (low && high) return `${low.text} to ${high.text}`
  if (low) return `at least ${low.text}`
  return high ? `at most ${high.text}` : ''
}

export const plan = (givens: Givens): Plan => {
  const entries = checklistOf(givens.fields)
  return {
    steps: null,
    readings: {
      columns: [
        { title: 'entry', kind: 'text', of: 'entry', written: true },
        { title: 'what to look at', kind: 'text' },
        { title: 'limits', kind: 'text' },
      ],
      rows: entries.map((entry) => [entry.name, entry.text, written(entry)]),
    },
    text: [],
  }
}
