/** Which instruments fit a column on a day, and why the others do not. */
import type { FormInstrument } from './view.ts'

/** Whether a calibration is in force on the day; null where it is, else the reason. An unknown day says nothing. */
export const lapsed = (instrument: FormInstrument, day: string): string | null => {
  if (day === '') return null
  const last = instrument.periods
    .filter((period) => period.on <= day)
    .sort((a, b) => (a.on < b.on ? -1 : 1))
    .at(-1)
  if (!last) return 'no calibration before the day'
  return last.due < day ? `calibration lapsed on ${last.due}` : null
}

/** Why an instrument does not fit a column on the day, in words; empty where it fits. */
export const reasonsAgainst = (instrument: FormInstrument, column: string, day: string): string[] => {
  const out = lapsed(instrument, day)
  return [...(instrument.columns[column] ?? []), ...(out === null ? [] : [out])]
}

export type OfferedInstrument = { readonly value: string; readonly text: string; readonly fits: boolean }

/**
 * Those that fit first, then the others with their reason. `column` null: for a value that is measured on the day, which
 * any instrument may serve; there only its calibration counts.
 */
export const offered = (
  instruments: readonly FormInstrument[],
  column: string | null,
  day: string,
): OfferedInstrument[] => {
  const able = instruments.filter((each) => column === null || each.columns[column])
  const told = able.map((each): OfferedInstrument => {
    const against =
      column === null ? [lapsed(each, day)].flatMap((why) => why ?? []) : reasonsAgainst(each, column, day)
    const why = against.length > 0 ? ` (${against.join('; ')})` : ''
    return { value: each.id, text: `${each.id}: ${each.title}${why}`, fits: against.length === 0 }
  })
  return [...told.filter(({ fits }) => fits), ...told.filter(({ fits }) => !fits)]
}
