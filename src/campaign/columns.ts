/** Readings of a run → columns as the method sees them: corrected by certificate and zero check, digits kept beside. */
import type { Calibration, InstrumentRecord, RunRecord } from '../format/types.ts'
import type { Column, Columns } from '../methods/method.ts'
import { calibrationOn, correctionAt } from './instruments.ts'
import { differenceOf } from './stated.ts'

export type Prepared = {
  readonly columns: Columns
  /** Shift of the unloaded reading over the test, by column, SI. */
  readonly zero: Readonly<Record<string, number>>
  readonly notes: readonly string[]
}

/** By certificate and zero check; as it is where there is nothing to correct. */
const corrected = (
  values: Float64Array,
  calibration: Calibration | undefined,
  unloaded: number,
): Float64Array =>
  unloaded === 0 && !calibration?.corrections.length
    ? values
    : values.map((value) => value + correctionAt(calibration, value) - unloaded)

export const prepareColumns = (
  run: RunRecord,
  instruments: Readonly<Record<string, InstrumentRecord>>,
): Prepared => {
  const columns: Record<string, Column> = {}
  const zero: Record<string, number> = {}
  const notes: string[] = []
  for (const column of run.readings.columns) {
    const instrument = instruments[run.instruments[column.name] ?? '']
    const calibration = instrument && calibrationOn(instrument, run.when.date)
    const checks = run.zero[column.name]
    const unloaded = checks ? differenceOf(checks.before) : 0
    if (checks) {
      zero[column.name] = differenceOf(checks.after) - unloaded
      if (unloaded !== 0)
        notes.push(`the unloaded reading of ${column.name}, ${checks.before.text}, was subtracted`)
    }
    if (calibration?.corrections.length) {
      notes.push(
        `${column.name} was corrected by certificate ${calibration.certificate} of ${instrument?.id}`,
      )
    }
    columns[column.name] = {
      values: corrected(column.values, calibration, unloaded),
      missing: column.missing,
      // The figures of a logger file stay in its text: a million of them are not wanted as words.
      ...(column.text || !column.cell ? { texts: column.cells } : {}),
      dim: column.dim,
      resolution: Math.max(column.digit || 0, instrument ? differenceOf(instrument.resolution) : 0),
      ...(instrument ? { instrument: instrument.id } : {}),
      ...(instrument?.density ? { density: instrument.density.value } : {}),
    }
  }
  return { columns, zero, notes }
}
