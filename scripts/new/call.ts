/** What was asked for on the command line: one kind of file, with the options that belong to it. */
import { type Draft, listOf, type NewContext } from './context.ts'
import { newItem, newReadiness, newRework } from './records.ts'
import { newRun } from './run.ts'

export const OPTIONS = {
  article: { type: 'string' },
  rework: { type: 'string' },
  changes: { type: 'string' },
  because: { type: 'string' },
  item: { type: 'string' },
  kind: { type: 'string' },
  about: { type: 'string' },
  readiness: { type: 'string' },
  by: { type: 'string' },
  at: { type: 'string' },
  id: { type: 'string' },
  root: { type: 'string' },
} as const

export type Values = { readonly [name in keyof typeof OPTIONS]?: string | undefined }

/** Options that only one kind of file has. */
const BELONGS: Partial<Record<keyof Values, 'run' | 'rework' | 'item'>> = {
  article: 'run',
  changes: 'rework',
  because: 'rework',
  kind: 'item',
  about: 'item',
}

export type Wanted = 'run' | 'rework' | 'item' | 'readiness'

/** Which one kind of file is meant, or what is wrong with the call. */
export const wanted = (card: string | undefined, values: Values): { kind: Wanted } | string => {
  const kinds = (['rework', 'item', 'readiness'] as const).filter((each) => values[each] !== undefined)
  const [kind, second] = card === undefined ? kinds : (['run', ...kinds] as const)
  if (kind === undefined) return 'Name one card, or say what else is new.'
  if (second !== undefined) return `One file at a time: ${kind} or ${second}.`
  const title = kind === 'run' ? card : values[kind]
  if (title?.trim() === '') return `--${kind} needs a name behind it.`
  const stray = (Object.keys(BELONGS) as (keyof Values)[]).find(
    (name) => values[name] !== undefined && BELONGS[name] !== kind,
  )
  return stray === undefined ? { kind } : `--${stray} belongs to a new ${BELONGS[stray]}.`
}

/** The file that is asked for, or what is wrong with what was asked. */
export const draftOf = (context: NewContext, kind: Wanted, card: string, values: Values): Draft | string => {
  if (kind === 'run') return newRun(context, card, values.article)
  if (kind === 'readiness') return newReadiness(context, values.readiness ?? '')
  if (kind === 'item') return newItem(context, values.item?.trim() ?? '', values.kind, listOf(values.about))
  return newRework(context, values.rework?.trim() ?? '', listOf(values.changes), listOf(values.because))
}
