/** Which instrument a column will be read with, as far as is known, and the unit that it shows. */
import type { CardRecord, InstrumentRecord, Records } from '../../format/types.ts'
import type { ColumnField, Schema } from '../../methods/method.ts'
import { KINDS } from '../../quantity/kinds.ts'
import type { Unit } from '../../quantity/types.ts'
import { parseUnit } from '../../quantity/unit-text.ts'
import { calibrationOn } from '../instruments.ts'
import type { Run } from '../types.ts'
import { siUnit } from '../units.ts'

export type Bench = {
  readonly records: Pick<Records, 'instruments'>
  readonly runs: readonly Run[]
  readonly card: CardRecord
  /** `YYYY-MM-DD` */
  readonly day: string
  /** Column → instrument, where one was chosen already. */
  readonly chosen?: ReadonlyMap<string, InstrumentRecord>
}

/** The one that the last run of this card used, where it is still in calibration on the day. */
export const instrumentFor = (
  { records, runs, card, day, chosen }: Bench,
  column: string,
): InstrumentRecord | undefined => {
  const own = chosen?.get(column)
  if (own) return own
  const used = runs.findLast((run) => run.card.id === card.id && run.record.instruments[column])
  const before = records.instruments[used?.record.instruments[column] ?? '']
  const due = before && calibrationOn(before, day)?.due
  return before && due !== undefined && day <= due ? before : undefined
}

const CELSIUS: Unit = { ...siUnit(KINDS.temperature.dim), text: 'degC', offset: 273.15 }
const MINUTE: Unit = { ...siUnit(KINDS.time.dim), text: 'min', factor: 60 }

/** The unit of the gauge: of the instrument, else of what the card asks, else the SI unit; time by hand is in minutes. */
export const gaugeUnit = (bench: Bench, field: ColumnField): Unit => {
  const instrument = field.instrument === 'none' ? undefined : instrumentFor(bench, field.name)
  const asked = bench.card.instruments[field.name]
  // A thermometer is read on its scale, not in kelvins: of a temperature the unit is that of its range.
  if (field.kind === 'temperature') return (instrument?.range ?? asked?.range)?.low.unit ?? CELSIUS
  const digit = instrument?.resolution ?? asked?.resolution ?? asked?.range?.low
  if (digit) return digit.unit
  const own = field.unit === undefined ? undefined : parseUnit(field.unit)
  if (own?.ok) return own.value
  return field.kind === 'time' ? MINUTE : siUnit(KINDS[field.kind].dim, field.kind)
}

/** As in the last run of this card; before there is one, what the method needs and what the card asks an instrument for. */
export const plannedColumns = (
  { runs, card }: Pick<Bench, 'runs' | 'card'>,
  schema: Schema,
): ColumnField[] => {
  const last = runs.findLast((run) => run.card.id === card.id)
  const habit = last?.record.readings.columns.map((column) => column.name)
  const asked = Object.keys(card.instruments)
  const either = schema.alternatives?.flatMap(({ sets }) =>
    sets.some((set) => set.every((name) => asked.includes(name))) ? [] : (sets[0] ?? []),
  )
  const wanted = habit ?? [...asked, ...(either ?? [])]
  return schema.columns.filter(
    (field) =>
      !field.from && (habit ? wanted.includes(field.name) : field.required || wanted.includes(field.name)),
  )
}
