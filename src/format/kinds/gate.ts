/** A readiness point: the cards and gates that must be settled before it. */
import type { z } from 'zod'
import { order, text, texts } from '../fields/common.ts'
import { fieldsOf } from '../fields/reader.ts'
import type { GateRecord, RecordBase } from '../types.ts'

export const gateFields = fieldsOf({ title: text, order, cards: texts, needs: texts.default([]) })

export function gateRecord(base: RecordBase, fields: z.output<typeof gateFields>): GateRecord {
  return { ...base, kind: 'gate', ...fields }
}
