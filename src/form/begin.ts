/** A new run of a card, as far as is known before anything is typed. */
import { dayOf } from './clock.ts'
import { reasonsAgainst } from './fit.ts'
import { EMPTY_GIVEN, emptyRun, type RunState } from './state.ts'
import type { FormColumn, FormView } from './view.ts'

/** Rows whose cells are known before the test (the entries of a checklist). */
const begunRows = (columns: readonly FormColumn[]): string[][] => {
  const begun = columns.find((column) => column.rows.length > 0)
  return (begun?.rows ?? []).map((row) => columns.map((column) => (column === begun ? row : '')))
}

/** `when`: the moment of now. Instruments are those of the last run, where they are fit for the card on that day. */
export const beginRun = (view: FormView, when: string): RunState => {
  const planned = view.columns.filter(
    (column) => column.planned && !column.inside && !column.name.includes('<'),
  )
  const before = Object.entries(view.before).filter(([column, id]) => {
    const instrument = view.instruments.find((each) => each.id === id)
    return instrument && reasonsAgainst(instrument, column, dayOf(when)).length === 0
  })
  const asked = view.givens.filter((given) => given.asked)
  return {
    ...emptyRun(view.card),
    when,
    instruments: Object.fromEntries(before),
    given: Object.fromEntries(asked.map(({ name }) => [name, EMPTY_GIVEN])),
    columns: planned.map(({ name, units }) => ({ name, unit: units[0] ?? '1' })),
    rows: begunRows(planned),
  }
}
