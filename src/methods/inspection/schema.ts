/** What an inspection is made of. The measures of one card are the three counts and each entry that has a value. */
import type { CardField, ColumnField, MeasureField, Schema } from '../method.ts'
import { checklistOf, dimOf, isValued, kindOf, readChecklist } from './checklist.ts'

const text = { kind: 'text', ramp: 'none', hold: false, instrument: 'none' } as const
const cell = 'ok | not-ok | n/a, or a number with its unit in the column `unit`; - where nobody looked'

const columns: readonly ColumnField[] = [
  { ...text, name: 'entry', required: true, meaning: 'entry of the checklist of the card' },
  { ...text, name: 'as_found', required: false, meaning: `how it was found: ${cell}` },
  { ...text, name: 'as_left', required: true, meaning: `how it was left: ${cell}` },
  { ...text, name: 'unit', required: false, meaning: 'unit of the values in this row' },
]

const count = { kind: 'count', exact: true } as const

const counts: readonly MeasureField[] = [
  { ...count, name: 'entries', meaning: 'entries on the checklist' },
  { ...count, name: 'not_ok', meaning: 'entries left not-ok, or with a value outside their limits' },
  { ...count, name: 'open', meaning: 'entries that the run leaves out, or leaves without an answer' },
]

const cardFields: readonly CardField[] = [
  {
    name: 'checklist',
    meaning:
      'the entries by name, each with `text` (what is looked at) and, where a value is read, `low`, `high` or both with unit',
    required: true,
    read: readChecklist,
  },
]

export const schema: Schema = {
  givens: [],
  columns,
  measures: [
    ...counts,
    {
      name: '<entry>',
      kind: 'number',
      meaning: 'value of an entry that has limits, as left; in the kind of its limits',
    },
  ],
  cardFields,
}

/** Each entry with limits becomes a column of its own, so that an instrument can be named for it, and a measure. */
export const describe = (fields: Readonly<Record<string, unknown>>): Schema => {
  const valued = checklistOf(fields).filter(isValued)
  const own = valued.map((entry) => {
    const dim = dimOf(entry)
    return { name: entry.name, meaning: entry.text, kind: (dim && kindOf(dim)) ?? ('number' as const) }
  })
  return {
    ...schema,
    columns: [
      ...columns.map((field) =>
        field.name === 'entry' ? { ...field, rows: checklistOf(fields).map((entry) => entry.name) } : field,
      ),
      ...own.map((field) => ({
        ...field,
        required: false,
        from: 'as_left',
        ramp: 'none' as const,
        hold: false,
        instrument: 'optional' as const,
      })),
    ],
    measures: [...counts, ...own.map((field) => ({ ...field, meaning: `${field.meaning}, as left` }))],
  }
}
