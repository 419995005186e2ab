/** An open item raised by hand: a discrepancy, an action or a concession. */
import { z } from 'zod'
import { refuse } from '../../quantity/faults.ts'
import { day, moment, someTexts, text, texts } from '../fields/common.ts'
import { readDay } from '../fields/moment.ts'
import { fieldsOf, textField } from '../fields/reader.ts'
import type { ItemRecord, RecordBase } from '../types.ts'

const until = textField((written) => {
  if (written === 'round') return { ok: true, value: written }
  const read = readDay(written)
  const expected = ['round', 'a date such as 2026-03-04']
  return read.ok
    ? read
    : refuse('time/syntax', `\`${written}\` is neither \`round\` nor a date`, 0, written.length, { expected })
})

/** Fields that only a concession has; all of them are needed there. */
export const CONCESSION_FIELDS = ['criterion', 'run', 'agreed', 'until'] as const

export const itemFields = fieldsOf({
  title: text,
  kind: z.enum(['discrepancy', 'action', 'concession']),
  raised: fieldsOf({ when: moment, by: text }),
  about: someTexts,
  gates: texts.default([]),
  owner: text.optional(),
  due: day.optional(),
  closed: fieldsOf({ when: moment, by: text, how: text, evidence: texts.default([]) }).optional(),
  criterion: text.optional(),
  run: text.optional(),
  agreed: text.optional(),
  until: until.optional(),
  removed: texts.default([]),
})

export function itemRecord(base: RecordBase, fields: z.output<typeof itemFields>): ItemRecord {
  const { kind: itemKind, criterion, run, agreed, until: end, ...rest } = fields
  const whole = criterion !== undefined && run !== undefined && agreed !== undefined && end !== undefined
  const concession = itemKind === 'concession' && whole ? { criterion, run, agreed, until: end } : undefined
  return { ...base, ...rest, kind: 'item', itemKind, concession }
}
