/** What `select` chose of the readings: rows by what they carry. */
import type { Held } from '../hold.ts'
import type { Columns, Selection } from '../method.ts'
import { digitOf, movementOf } from './readings.ts'
import type { Spread } from './scatter.ts'
import type { Inputs, Pair, Span } from './softening.ts'

/** Rows of one loading from which its bulge at the target is told. */
export type Bulging = {
  readonly before: readonly number[]
  readonly below: readonly number[]
  readonly above: readonly number[]
}

export type Channel = {
  readonly name: string
  readonly suffix: string
  /** Sign of the movement under the target. */
  readonly direction: 1 | -1
  /** Unloaded rows before the first loading, before the one that carried the peak, and after the last and its wait. */
  readonly zero: readonly number[]
  readonly before: readonly number[]
  readonly held: readonly number[]
  readonly after: readonly number[]
  /** Levels on either side of the target, at the peak of the loading that carried it. */
  readonly below: readonly number[]
  readonly above: readonly number[]
  /** The same of the second loading, and its own highest level; null without one. */
  readonly again: Bulging | null
  readonly spread: Spread
  /** Levels read in both loadings, where the bulge is large enough; and between which of them it softened most. */
  readonly pairs: readonly Pair[]
  readonly span: Span | null
  /** Bulge in digits of the dial. */
  readonly digits: number
}

export type Choice = Selection & {
  readonly sign: 1 | -1
  readonly peak: Held | null
  /** Rows at the target with 95 % confidence; null also where the accuracy of the gauge is not known. */
  readonly held: Held | null
  /** Rows that may be at the target, as far as the gauge can tell. */
  readonly possible: Held | null
  readonly guarded: boolean
  readonly pressureSpread: Spread
  readonly loadings: number
  readonly channels: readonly Channel[]
  /** For each measure of a station, which station is the worst. */
  readonly worst: Readonly<Record<string, number>>
}

export const softeningInputs = (
  columns: Columns,
  channel: Pick<Channel, 'name' | 'spread'>,
  choice: Pick<Choice, 'pressureSpread'>,
): Inputs => ({
  pressure: columns.pressure?.values ?? new Float64Array(),
  movement: movementOf(columns, channel.name),
  digit: digitOf(columns, channel.name),
  pressureDigit: columns.pressure?.resolution ?? 0,
  spread: channel.spread,
  pressureSpread: choice.pressureSpread,
})
