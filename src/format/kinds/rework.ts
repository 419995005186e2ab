/** A change made to the article. */
import { z } from 'zod'
import { files, keyed, moment, oneText, someTexts, text, texts } from '../fields/common.ts'
import { fieldsOf } from '../fields/reader.ts'
import type { RecordBase, ReworkRecord } from '../types.ts'

export const reworkFields = fieldsOf({
  title: text,
  when: moment,
  by: someTexts,
  'inspected-by': oneText.optional(),
  changes: someTexts,
  because: texts.default([]),
  serials: keyed(fieldsOf({ out: text.optional(), in: text.optional() })).default({}),
  unaffected: z.array(fieldsOf({ card: text, why: text, agreed: text })).default([]),
  removed: texts.default([]),
  files: files.default([]),
})

export function reworkRecord(base: RecordBase, fields: z.output<typeof reworkFields>): ReworkRecord {
  const { 'inspected-by': inspectedBy, ...rest } = fields
  return { ...base, kind: 'rework', ...rest, inspectedBy }
}
