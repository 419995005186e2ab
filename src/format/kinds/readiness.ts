/** Minutes of a readiness meeting on a gate. */
import { z } from 'zod'
import { moment, someTexts, text, texts } from '../fields/common.ts'
import { fieldsOf } from '../fields/reader.ts'
import type { ReadinessRecord, RecordBase } from '../types.ts'

const basis = fieldsOf({
  run: text,
  criterion: text,
  verdict: z.enum(['pass', 'fail', 'undetermined']),
  value: text,
  U: text,
  commit: text.optional(),
  tool: text.optional(),
})

export const readinessFields = fieldsOf({
  gate: text,
  when: moment,
  present: someTexts,
  decision: z.enum(['go', 'no-go', 'go with conditions']),
  conditions: texts.default([]),
  basis: z.array(basis).default([]),
  removed: texts.default([]),
})

export function readinessRecord(base: RecordBase, fields: z.output<typeof readinessFields>): ReadinessRecord {
  return { ...base, kind: 'readiness', ...fields }
}
