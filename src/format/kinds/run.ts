/** A run: one performance of a card. */
import { z } from 'zod'
import { files, keyed, moment, named, oneText, quantity, someTexts, text, texts } from '../fields/common.ts'
import { givens } from '../fields/given.ts'
import { fieldsOf } from '../fields/reader.ts'
import type { GivenText, Readings, RecordBase, RunRecord } from '../types.ts'

const void_ = fieldsOf({ why: text, by: text, when: moment })

export const runFields = fieldsOf({
  card: text,
  article: text.optional(),
  when: moment,
  by: someTexts,
  witness: oneText.optional(),
  instruments: named(text).default({}),
  given: givens.default({}),
  rig: keyed(text).default({}),
  ambient: fieldsOf({ temperature: quantity.optional(), note: text.optional() }).default({}),
  fitted: z.array(fieldsOf({ id: text, what: text })).default([]),
  removed: texts.default([]),
  zero: named(fieldsOf({ before: quantity, after: quantity })).default({}),
  readings: z.union([z.string(), z.record(z.string(), z.unknown())]),
  missing: texts.default([]),
  deviations: z.array(fieldsOf({ from: text, what: text, why: text, agreed: text.optional() })).default([]),
  stopped: text.optional(),
  void: void_.optional(),
  amendments: z.array(fieldsOf({ when: moment, by: text, at: text, was: text, why: text })).default([]),
  'card-revision': text.optional(),
  files: files.default([]),
})

export type RunFields = z.output<typeof runFields>

export function runRecord(
  base: RecordBase,
  fields: RunFields,
  readings: Readings,
  given: Readonly<Record<string, GivenText>>,
): RunRecord {
  const { 'card-revision': cardRevision, missing: _, ...rest } = fields
  return { ...base, ...rest, kind: 'run', readings, given, cardRevision }
}
