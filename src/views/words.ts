/** Words and stamps of the trade, one for one thing, and dates as people write them. No clock, no locale. */
import type { ReviewKind } from '../campaign/history/types.ts'
import type { CardStatus, GateState, ItemKind, Provenance, Run } from '../campaign/types.ts'
import type { Moment } from '../format/types.ts'
import type { Signature } from '../history/types.ts'
import type { Verdict } from '../judge/types.ts'
import type { Inline, Rich, StampStyle } from './view.ts'

const MONTHS = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
]

/** `2026-03-04` → `4 March 2026`; other texts come back as they are. */
export const dateWords = (text: string): string => {
  const [, year = '', month = '', day = ''] = /^(\d{4})-(\d{2})-(\d{2})/.exec(text) ?? []
  const name = MONTHS[Number(month) - 1]
  return name ? `${Number(day)} ${name} ${year}` : text
}

export const monthWords = (text: string): string => dateWords(`${text.slice(0, 7)}-01`).replace(/^1 /, '')

/** `4 March 2026, 09:12 +01:00`: the hangar's own clock and its offset. */
export const momentWords = (moment: Moment): string => {
  const offset = /(?:Z|[+-]\d{2}:\d{2})$/.exec(moment.text)?.[0] ?? ''
  return [`${dateWords(moment.date)}, ${moment.clock}`, offset === 'Z' ? 'UTC' : offset].join(' ').trim()
}

/** Also of times that come as text (`2026-03-04T09:12+01:00`). */
export const timeWords = (text: string): string => {
  const [, date = '', clock = ''] = /^(\d{4}-\d{2}-\d{2})(?:T(\d{2}:\d{2}))?/.exec(text) ?? []
  return date === '' ? text : clock === '' ? dateWords(date) : `${dateWords(date)}, ${clock}`
}

/** `2026-03-04T09:12+01:00` → `4 March 2026, 09:12 +01:00` */
export const instantWords = (text: string): string => {
  const [, offset = ''] = /T.*(Z|[+-]\d{2}:\d{2})$/.exec(text) ?? []
  return [timeWords(text), offset === 'Z' || offset === '+00:00' ? 'UTC' : offset].join(' ').trim()
}

export const stamp = (word: string, style: StampStyle): Inline => ({ is: 'stamp', word, style })

export type Mark = { readonly word: string; readonly style: StampStyle }

export const verdictStamp = (verdict: Verdict): Inline => stamp(verdict, verdict)

const STATUS: Readonly<Record<CardStatus, readonly [string, StampStyle]>> = {
  'not-run': ['not run', 'plain'],
  pass: ['pass', 'pass'],
  fail: ['fail', 'fail'],
  undetermined: ['undetermined', 'undetermined'],
  'due-again': ['due again', 'due-again'],
  conceded: ['conceded', 'conceded'],
}

export const statusWord = (status: CardStatus): string => STATUS[status][0]
export const statusStamp = (status: CardStatus): Inline => stamp(...STATUS[status])

/** What git says of a run beside its verdict: not on the main line, taken away, or changed since it landed. */
export const historyMarks = ({ provenance, gone, asLanded }: Run): readonly Mark[] => {
  if (gone) return [{ word: 'file gone', style: 'gone' }]
  if (provenance.state === 'uncommitted') return [{ word: 'not committed', style: 'proposed' }]
  if (provenance.state === 'proposed') return [{ word: 'proposed', style: 'proposed' }]
  return asLanded?.counts ? [{ word: 'changed since', style: 'gone' }] : []
}

/** The verdict of a run with what limits it: stopped, void, overtaken, not landed, gone. */
export const runStamps = (run: Run): Rich => {
  const marks = historyMarks(run).map(({ word, style }) => stamp(word, style))
  const stopped = run.record.stopped ? [stamp('stopped', 'plain')] : []
  if (run.record.void) return [stamp('void', 'plain'), ...stopped, ...marks]
  const verdict = run.verdict === null ? [] : [verdictStamp(run.verdict)]
  return [...verdict, ...stopped, ...(run.overtakenBy ? [stamp('overtaken', 'due-again')] : []), ...marks]
}

export const gateStamps = (gate: GateState): Rich => {
  const state: Inline = gate.state === 'held' ? stamp('held', 'undetermined') : stamp(gate.state, 'pass')
  return gate.overtaken ? [state, stamp('overtaken', 'due-again')] : [state]
}

export const STATE_WORDS: Readonly<Record<Provenance['state'], string>> = {
  uncommitted: 'not committed yet',
  proposed: 'proposed, not landed',
  landed: 'landed',
  unknown: 'not known',
}

/** How a review is known: three kinds that prove different things. */
export const REVIEW_WORDS: Readonly<Record<ReviewKind, string>> = {
  forge: 'approval on the forge',
  signed: 'signed commit',
  trailer: 'trailer only',
}

export const SIGNATURE_WORDS: Readonly<Record<Signature, string>> = {
  good: 'signed, and the signature is good',
  bad: 'its signature is bad',
  'not-checked': 'signed, not checked',
  none: 'not signed',
}

export const ITEM_WORDS: Readonly<Record<ItemKind, string>> = {
  'failed-criterion': 'criterion failed',
  'undetermined-criterion': 'criterion undetermined',
  'not-run': 'not run',
  'too-few-runs': 'too few runs',
  'due-again': 'due again',
  prerequisite: 'prerequisite not passed',
  'source-newer': 'newer source result',
  'basis-differs': 'differs from readiness record',
  calibration: 'calibration',
  'out-of-range': 'outside the range',
  'instrument-worse': 'instrument worse than asked',
  deviation: 'deviation not agreed',
  'inspection-open': 'inspection entry open',
  'not-removed': 'fitted and not removed',
  'beyond-stop': 'beyond the stop limit',
  'instrument-found-wrong': 'instrument found wrong',
  'same-readings': 'same readings twice',
  'two-roles': 'one person, two roles',
  'concession-expired': 'concession expired',
  condition: 'condition of a meeting',
  'not-computed': 'not computed',
  'not-reviewed': 'not reviewed',
  changed: 'changed after landing',
  'amendment-unreviewed': 'amendment not reviewed',
  voided: 'voided',
  'run-gone': 'run file gone',
  'limit-moved': 'limit moved after the run',
  'limit-with-reading': 'limit written with the reading',
  'off-gate': 'less asked for',
  begins: 'begin of history moved',
  discrepancy: 'discrepancy',
  action: 'action',
  concession: 'concession',
}

export const plural = (count: number, one: string, many = `${one}s`): string =>
  `${count} ${count === 1 ? one : many}`

/** `a`, `a and b`, `a, b and c` */
export const listWords = (words: readonly string[]): string =>
  words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words[words.length - 1]}`

/** `leak_rate` → `leak rate` */
export const nameWords = (name: string): string => name.replaceAll('_', ' ')

/** The statuses of several cards beside each other. */
export const joinedStatus = (states: readonly { readonly status: CardStatus }[]): Rich =>
  states.flatMap(
    (state, index): Rich => (index === 0 ? [statusStamp(state.status)] : [' ', statusStamp(state.status)]),
  )
