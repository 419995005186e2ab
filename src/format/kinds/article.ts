/** The thing under test, or a part of it; its path is its name. */
import type { z } from 'zod'
import { text, texts } from '../fields/common.ts'
import { fieldsOf } from '../fields/reader.ts'
import type { ArticleRecord, RecordBase } from '../types.ts'

export const articleFields = fieldsOf({ title: text, serial: text.optional(), parts: texts.default([]) })

export function articleRecord(base: RecordBase, fields: z.output<typeof articleFields>): ArticleRecord {
  return { ...base, kind: 'article', ...fields }
}
