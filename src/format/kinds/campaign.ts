/** What holds for the whole campaign. */
import { z } from 'zod'
import { refuse } from '../../quantity/faults.ts'
import { keyed, rule, text, texts, unit } from '../fields/common.ts'
import { fieldsOf, textField } from '../fields/reader.ts'
import type { CampaignSettings, SourceFile } from '../types.ts'

const SIZE_UNITS: Readonly<Record<string, number>> = { B: 1, kB: 1e3, MB: 1e6, GB: 1e9 }

/** `8 MB`, in bytes. */
const size = textField((written) => {
  const found = /^(\d+(?:\.\d+)?)\s*(B|kB|MB|GB)$/.exec(written)
  if (found) return { ok: true, value: Math.round(Number(found[1]) * (SIZE_UNITS[found[2] ?? 'B'] ?? 1)) }
  const hint = 'write a number and B, kB, MB or GB, as in `8 MB`'
  return refuse('field/number', `\`${written}\` is no size of a file`, 0, written.length, { hint })
})

const DEFAULT_SIZE = 8e6
const DEFAULT_KINDS = ['jpg', 'jpeg', 'png', 'webp', 'svg', 'pdf', 'csv', 'txt']

export const campaignFields = fieldsOf({
  title: text,
  purpose: text,
  main: text.default('main'),
  begins: text.optional(),
  forge: text.optional(),
  timezone: text.default('UTC'),
  rule: rule.default({ kind: 'guarded', p: 0.95, text: 'guarded 95 %' }),
  units: keyed(unit).default({}),
  review: z.array(z.enum(['forge', 'signed', 'trailer'])).default(['forge', 'signed', 'trailer']),
  files: fieldsOf({ size: size.default(DEFAULT_SIZE), kinds: texts.default(DEFAULT_KINDS) }).default({
    size: DEFAULT_SIZE,
    kinds: DEFAULT_KINDS,
  }),
})

export function campaignSettings(
  source: SourceFile,
  fields: z.output<typeof campaignFields>,
): CampaignSettings {
  const { files, ...rest } = fields
  return { source, ...rest, files: { maxBytes: files.size, kinds: files.kinds } }
}
