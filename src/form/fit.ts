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
