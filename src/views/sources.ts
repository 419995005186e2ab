/** Names of sources of uncertainty as a budget shows them. */
import type { Records } from '../format/types.ts'
import { sourceWords } from '../methods/source-words.ts'

/** `instrument:pg-07@2026-01-10/gain` → `pressure gauge pg-07, scale error`. */
export const sourceLabel = (source: string, records: Records): string => {
  const words = sourceWords(source)
  const instrument = /^instrument:([^@/]+)/.exec(source)?.[1]
  const kind = instrument ? records.instruments[instrument]?.instrumentKind : undefined
  return kind ? `${kind} ${words}` : words
}
