/**
 * Whether the circuit comes back to where it was: the lines of the last cycle against those of the first. A clamp that
 * slips, a dial that walks or a part that sets moves what comes after it; play is the distance of lines that were read
 * one after the other, so that it comes out too small or too large by up to half of that.
 */
import { tQuantile } from '../../quantity/distribution.ts'
import { expanded } from '../../quantity/quantity.ts'
import type { Columns, Measures } from '../method.ts'
import { type Line, lineAt, type Scatter } from './fits.ts'
import { difference, kindsOf } from './found.ts'
import type { Motion } from './motion.ts'
import { inWords } from './words.ts'

/** What rests on where the lines stand, and not on their slopes. */
export const RESTING_ON_ZERO = [
  'free_play',
  'hysteresis',
  'friction',
  'deflection_at_limit',
  'secant_at_limit',
  'travel_lost',
] as const

/** A part of the play that is of no account, however well it is seen (common practice, no source). */
const OF_ACCOUNT = 0.05
/** For all four branches together: one sound test in a hundred is barred (Bonferroni). */
const RISK = 0.01

export type Shift = { readonly value: number; readonly allowed: number }

/** Shift of the lines of one branch and side from their first cycle to their last; null with one cycle. */
const shiftOf = (own: readonly Line[], scatter: Scatter, digits: number, branches: number): Shift | null => {
  const [first] = own
  const last = own[own.length - 1]
  if (!first || !last || first.cycle === last.cycle || scatter.dof < 1) return null
  const middle = (first.meanLoad + last.meanLoad) / 2
  const shift = difference(lineAt(last, middle), lineAt(first, middle))
  const u = Math.hypot(digits, scatter.s * Math.hypot(...Object.values(shift.parts())))
  return { value: shift.value, allowed: tQuantile(1 - RISK / (2 * branches), scatter.dof) * u }
}

/** u of a difference of two means, digits of load and deflection staying put (JCGM 100, F.2.2.1: 2·r²/12 each). */
const digitsOf = (columns: Columns, motion: Motion, compliance: number): number =>
  Math.hypot(
    (columns.deflection?.resolution ?? 0) / motion.readPerMotion,
    (columns.load?.resolution ?? 0) * motion.loadPerRead * compliance,
  ) / Math.sqrt(6)

/** The largest shift that stands out; null where none does, or where one cycle alone was read. */
export const zeroShift = (
  lines: readonly Line[],
  scatter: Scatter,
  columns: Columns,
  motion: Motion,
  play: Measures[string] | undefined,
): Shift | null => {
  const digits = digitsOf(columns, motion, Math.abs(lines[0]?.slope ?? 0))
  const keys = [...new Set(lines.map(({ side, phase }) => `${side}${phase}`))]
  const shifts = keys.flatMap((key) => {
    const own = lines.filter(({ side, phase }) => `${side}${phase}` === key)
    const byCycle = [...own].sort((a, b) => a.cycle - b.cycle)
    return shiftOf(byCycle, scatter, digits, keys.length) ?? []
  })
  // Half of it falsifies the play: less than its uncertainty, or than a twentieth of it, is of no account.
  const account = play ? 2 * Math.max(expanded(play)?.U ?? 0, OF_ACCOUNT * Math.abs(play.value)) : 0
  const seen = shifts.filter(({ value, allowed }) => Math.abs(value) > Math.max(allowed, account))
  return seen.reduce<Shift | null>(
    (most, each) => (most && Math.abs(most.value) >= Math.abs(each.value) ? most : each),
    null,
  )
}

export const shiftText = ({ value, allowed }: Shift, motion: Motion): string => {
  const kind = kindsOf(motion.form).motion
  return `the circuit does not come back: the last cycle lies ${inWords(Math.abs(value), kind)} off the first at equal load, where scatter and digits allow ${inWords(allowed, kind)}. A clamp slipped, a dial walked or a part took a set; play comes out wrong by up to half of that`
}
