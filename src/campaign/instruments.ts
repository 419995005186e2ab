/** The instruments of a run as they were on its day: calibration in force, corrections, standard uncertainties. */
import type { Calibration, InstrumentDemand, InstrumentRecord, RunRecord } from '../format/types.ts'
import type { InstrumentModel } from '../methods/method.ts'
import { differenceOf } from './stated.ts'
import type { InstrumentUse } from './types.ts'

/** The latest calibration done on or before the day (`YYYY-MM-DD`). */
export const calibrationOn = (instrument: InstrumentRecord, day: string): Calibration | undefined =>
  instrument.calibrations
    .filter((calibration) => calibration.on <= day)
    .sort((a, b) => (a.on < b.on ? -1 : 1))
    .at(-1)

const rangeOf = (instrument: InstrumentRecord): { range?: { low: number; high: number } } =>
  instrument.range ? { range: { low: instrument.range.low.value, high: instrument.range.high.value } } : {}

/** Standard uncertainties under the calibration of that day; a new calibration starts new sources. */
export const modelOf = (instrument: InstrumentRecord, day: string): InstrumentModel => {
  const calibration = calibrationOn(instrument, day)
  return {
    id: `${instrument.id}@${calibration?.on ?? 'none'}`,
    label: instrument.id,
    resolution: differenceOf(instrument.resolution),
    gain: instrument.accuracy?.gain ?? null,
    offset: instrument.accuracy?.offset ?? null,
    linearity: instrument.linearity ?? null,
    hysteresis: instrument.hysteresis ?? null,
    drift: instrument.drift ?? null,
    calibration: calibration?.uncertainty ?? 0,
    shape: instrument.accuracy?.shape ?? 'rectangular',
    ...rangeOf(instrument),
    ...(instrument.density ? { density: instrument.density.value } : {}),
  }
}

/** An instrument that is just as good as a card asks, for planning. What is not asked for is not known. */
export const modelOfDemand = (column: string, demand: InstrumentDemand): InstrumentModel => ({
  id: `asked-for-${column}`,
  label: `the instrument asked for ${column}`,
  resolution: demand.resolution ? differenceOf(demand.resolution) : 0,
  gain: 0,
  offset: demand.uncertainty ? differenceOf(demand.uncertainty) / 2 : null,
  linearity: null,
  hysteresis: null,
  // Drift is asked for as a limit: rectangular.
  drift: demand.drift ? demand.drift.value / Math.sqrt(3) : null,
  shape: 'normal',
  ...(demand.range ? { range: { low: demand.range.low.value, high: demand.range.high.value } } : {}),
})

export const usesOf = (
  run: RunRecord,
  instruments: Readonly<Record<string, InstrumentRecord>>,
): InstrumentUse[] =>
  Object.entries(run.instruments).flatMap(([column, id]) => {
    const instrument = instruments[id]
    if (!instrument) return []
    const calibration = calibrationOn(instrument, run.when.date)
    const inForce = calibration !== undefined && run.when.date <= calibration.due
    return [
      { column, instrument, calibration: calibration?.on ?? null, inForce, due: calibration?.due ?? null },
    ]
  })

/** What the certificate adds to a reading: between its points in proportion, beyond them as at the end. */
export const correctionAt = (calibration: Calibration | undefined, reading: number): number => {
  const points = calibration?.corrections ?? []
  const upper = points.findIndex((point) => point.reading >= reading)
  if (points.length === 0) return 0
  if (upper === -1) return points.at(-1)?.add ?? 0
  const high = points[upper]
  const low = points[upper - 1]
  if (!high || !low) return high?.add ?? 0
  const share = (reading - low.reading) / (high.reading - low.reading)
  return low.add + share * (high.add - low.add)
}
