/** One more reading, with the time of now. */
import { clockText, momentText, type Now, onSite, type Stamps } from './clock.ts'
import { type ColumnEntry, isBlankRow, type RunState, replaced } from './state.ts'
import type { FormColumn } from './view.ts'

export type Stamped = { readonly state: RunState; readonly stamps: Stamps }

const SECONDS: Readonly<Record<string, number>> = { s: 1, min: 60, h: 3600 }

/** Time since the first stamp in the unit of the column, to about a second. */
const elapsed = (seconds: number, unit: string): string => {
  const size = SECONDS[unit] ?? 1
  const decimals = size === 1 ? 0 : size === 60 ? 2 : 4
  return seconds === 0 ? '0' : (seconds / size).toFixed(decimals)
}

/** What the time column says; empty where only the person can tell. */
const timeText = ({ unit }: ColumnEntry, now: Now, since: number | null): string => {
  if (unit === 'hh:mm' || unit === 'hh:mm:ss') return clockText(now, unit === 'hh:mm:ss')
  if (SECONDS[unit] === undefined || since === null) return ''
  return elapsed((now.epoch - since) / 1000, unit)
}

/** Columns with cells that are known before the test are not read off: a row with no more than them is still open. */
const isOpen = (row: readonly string[], known: readonly boolean[]): boolean =>
  row.every((cell, at) => known[at] || cell.trim() === '')

/** Two presses of a hand in a glove within so many ms are one, where nothing was read in between. */
const ONE_PRESS = 1000

/** The row of the press before, with nothing in it but what the press wrote; -1 where there is none. */
const sameRow = (
  rows: readonly (readonly string[])[],
  known: readonly boolean[],
  times: readonly boolean[],
  since: number | null,
): number => {
  if (since === null || since < 0 || since >= ONE_PRESS) return -1
  const written = known.map((each, at) => each || times[at] === true)
  return rows.findLastIndex((row) => !isOpen(row, known) && isOpen(row, written))
}

/**
 * The next open row, or one more, with the time in it. `begunAt`: what `when` was set to as the page was opened; the
 * first stamp knows better when the test began. A clock that was set back gives no time at all.
 */
export const stampRow = (
  { state, stamps }: Stamped,
  fields: readonly FormColumn[],
  device: Now,
  begunAt: string,
): Stamped & { readonly row: number; readonly wentBack: boolean } => {
  const fieldOf = ({ name }: ColumnEntry) => fields.find((each) => each.name === name)
  const known = state.columns.map((column) => (fieldOf(column)?.rows.length ?? 0) > 0)
  const rows = state.rows.filter((row) => !isBlankRow(row))
  const times = state.columns.map((column) => fieldOf(column)?.form === 'time')
  const same = sameRow(rows, known, times, stamps && device.epoch - stamps.last)
  if (same >= 0) return { state: { ...state, rows }, stamps, row: same, wentBack: false }
  const isFirst = rows.every((row) => isOpen(row, known))
  const when = isFirst && begunAt !== '' && state.when === begunAt ? momentText(device) : state.when
  const now = onSite(device, when)
  const before = isFirst ? null : stamps
  const wentBack = before !== null && now.epoch < before.last
  // Of a clock that was set, nothing tells how much later than the first reading it is.
  const zero = isFirst ? now.epoch : wentBack ? null : (before?.zero ?? null)
  const open = rows.findIndex((row) => isOpen(row, known))
  const row = open < 0 ? rows.length : open
  const cells = state.columns.map((column, at) => {
    const isTime = fieldOf(column)?.form === 'time'
    return isTime && !wentBack ? timeText(column, now, zero) : (rows[row]?.[at] ?? '')
  })
  return {
    state: { ...state, when, rows: replaced(rows, row, cells) },
    stamps: { first: before?.first ?? now.epoch, last: now.epoch, zero },
    row,
    wentBack,
  }
}
