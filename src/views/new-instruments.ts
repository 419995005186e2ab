/** Which instruments a run may use for a column: in calibration on the day, and as good as the card asks. */
import { worseThanAsked } from '../campaign/demand.ts'
import { calibrationOn } from '../campaign/instruments.ts'
import { type Bench, instrumentFor } from '../campaign/plan/gauges.ts'
import { kindsOf } from '../format/schema-fields.ts'
import type { InstrumentRecord } from '../format/types.ts'
import type { ColumnField } from '../methods/method.ts'
import { sameDimension } from '../quantity/dimension.ts'
import { KINDS } from '../quantity/kinds.ts'

export type Offered = {
  readonly column: string
  /** The one used last at the head. */
  readonly fit: readonly InstrumentRecord[]
  /** The head is what the last run of the card used. */
  readonly usual: boolean
  /** Those that can read it and are not offered, with the reason. */
  readonly unfit: readonly { readonly id: string; readonly why: string }[]
}

/** Whether it shows a quantity of the kind that the column wants. */
export const canRead = (field: ColumnField, { resolution }: InstrumentRecord): boolean =>
  kindsOf(field).some((kind) => sameDimension(KINDS[kind].dim, resolution.unit.dim))

const objection = ({ card, day }: Bench, column: string, instrument: InstrumentRecord): string | null => {
  const calibration = calibrationOn(instrument, day)
  if (!calibration) return `not calibrated by ${day}`
  if (day > calibration.due) return `calibration ended on ${calibration.due}`
  const complaints = worseThanAsked(card.instruments[column], instrument, day)
  return complaints.length > 0 ? complaints.join(', ') : null
}

export const offeredFor = (bench: Bench, field: ColumnField): Offered => {
  const able = Object.values(bench.records.instruments)
    .filter((instrument) => canRead(field, instrument))
    .sort((a, b) => (a.id < b.id ? -1 : 1))
    .map((instrument) => ({ instrument, why: objection(bench, field.name, instrument) }))
  const last = instrumentFor(bench, field.name)?.id
  const fit = able.flatMap(({ instrument, why }) => (why === null ? [instrument] : []))
  return {
    column: field.name,
    usual: fit.some(({ id }) => id === last),
    fit: [...fit.filter(({ id }) => id === last), ...fit.filter(({ id }) => id !== last)],
    unfit: able.flatMap(({ instrument, why }) => (why === null ? [] : [{ id: instrument.id, why }])),
  }
}

/** Two columns are read off two instruments where there are two and no habit says otherwise. */
export const oneEach = (all: readonly Offered[]): readonly Offered[] => {
  const taken = new Set(all.flatMap(({ usual, fit: [first] }) => (usual && first ? [first.id] : [])))
  return all.map((offered) => {
    const first = offered.usual ? offered.fit[0] : offered.fit.find(({ id }) => !taken.has(id))
    if (!first) return offered
    taken.add(first.id)
    return { ...offered, fit: [first, ...offered.fit.filter((each) => each !== first)] }
  })
}
