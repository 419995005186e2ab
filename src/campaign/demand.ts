/** What a card asks of an instrument against what it is. */
import type { InstrumentDemand, InstrumentRecord } from '../format/types.ts'
import { modelOf } from './instruments.ts'
import { differenceOf } from './stated.ts'

/** In what it is worse on the day (`YYYY-MM-DD`), in words. Uncertainty from accuracy and calibration, at the larger end of the range asked for. */
export const worseThanAsked = (
  demand: InstrumentDemand | undefined,
  instrument: InstrumentRecord,
  day: string,
): string[] => {
  if (!demand) return []
  const model = modelOf(instrument, day)
  const complaints: string[] = []
  if (
    demand.resolution &&
    differenceOf(instrument.resolution) > differenceOf(demand.resolution) * (1 + 1e-9)
  ) {
    complaints.push(`resolution ${instrument.resolution.text}, asked ${demand.resolution.text}`)
  }
  if (
    demand.drift &&
    (model.drift === null || model.drift * Math.sqrt(3) > demand.drift.value * (1 + 1e-9))
  ) {
    complaints.push(model.drift === null ? 'its drift is not stated' : `more drift than ${demand.drift.text}`)
  }
  if (demand.uncertainty) {
    const ends = demand.range
      ? [demand.range.low, demand.range.high].map((end) => Math.abs(differenceOf(end)))
      : [0]
    const reach = Math.max(...ends)
    const U =
      model.gain === null || model.offset === null
        ? null
        : 2 * Math.hypot(model.gain * reach, model.offset, model.calibration ?? 0)
    if (U === null) complaints.push('its accuracy is not stated')
    else if (U > differenceOf(demand.uncertainty) * (1 + 1e-9))
      complaints.push(`less certain than ${demand.uncertainty.text}`)
  }
  const { range } = instrument
  if (
    demand.range &&
    range &&
    (range.low.value > demand.range.low.value || range.high.value < demand.range.high.value)
  ) {
    complaints.push(
      `range ${range.low.text} .. ${range.high.text}, asked ${demand.range.low.text} .. ${demand.range.high.text}`,
    )
  }
  return complaints
}
