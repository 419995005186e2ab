/** Items about the evidence itself: calibration, range, instrument worse than asked, stop-at, copied readings. */
import { modelOf } from '../instruments.ts'
import { differenceOf } from '../stated.ts'
import type { InstrumentUse, OpenItem, Run } from '../types.ts'
import { type ItemContext, runItem, stillCounts } from './item.ts'

const calibration = (context: ItemContext, run: Run): OpenItem[] =>
  distinct(run.instruments)
    .filter((use) => !use.inForce)
    .map((use) =>
      runItem(
        context,
        run,
        {
          kind: 'calibration',
          about: [run.id, use.instrument.id],
          title: `${use.instrument.id} was not in calibration on ${run.record.when.date}${use.due ? ` (due ${use.due})` : ''}`,
          closes: 'a run with an instrument in calibration, or a certificate that covers that day',
          since: run.record.when.date,
        },
        use.instrument.id,
      ),
    )

const distinct = (uses: readonly InstrumentUse[]): InstrumentUse[] => [
  ...new Map(uses.map((use) => [use.instrument.id, use])).values(),
]

/** Later found wrong: every run since the last good calibration is in question. */
const foundWrong = (context: ItemContext, run: Run): OpenItem[] =>
  distinct(run.instruments).flatMap(({ instrument }) => {
    const bad = instrument.calibrations.find(
      (each) => each.foundOut !== undefined && each.on > run.record.when.date,
    )
    if (!bad) return []
    const laterGood = instrument.calibrations.some(
      (each) => each.foundOut === undefined && each.on > run.record.when.date && each.on < bad.on,
    )
    if (laterGood) return []
    const title = `${instrument.id} was found wrong on ${bad.on}: ${bad.foundOut}`
    const closes =
      'a run with a sound instrument, or a statement that the error does not matter, as a concession'
    return [
      runItem(
        context,
        run,
        { kind: 'instrument-found-wrong', about: [run.id, instrument.id], title, closes, since: bad.on },
        instrument.id,
      ),
    ]
  })

const outOfRange = (context: ItemContext, run: Run): OpenItem[] =>
  run.instruments.flatMap(({ column, instrument }) => {
    const values = run.record.readings.columns.find((each) => each.name === column)?.values
    const range = instrument.range
    if (!values || !range) return []
    const low = range.low.value
    const high = range.high.value
    const tail = 1e-9 * Math.max(Math.abs(low), Math.abs(high))
    const beyond = values.filter((value) => value < low - tail || value > high + tail).length
    if (beyond === 0) return []
    const title = `${beyond === 1 ? 'a reading' : `${beyond} readings`} of ${column} beyond the range of ${instrument.id} (${range.low.text} .. ${range.high.text})`
    const closes = 'a run with an instrument whose range holds the readings'
    return [
      runItem(
        context,
        run,
        { kind: 'out-of-range', about: [run.id, instrument.id], title, closes, since: run.record.when.date },
        column,
      ),
    ]
  })

/** Expanded uncertainty from accuracy and calibration at the larger end of what the card asks for. */
const worseThanAsked = (run: Run, use: InstrumentUse): string[] => {
  const demand = run.card.instruments[use.column]
  if (!demand) return []
  const model = modelOf(use.instrument, run.record.when.date)
  const complaints: string[] = []
  if (
    demand.resolution &&
    differenceOf(use.instrument.resolution) > differenceOf(demand.resolution) * (1 + 1e-9)
  ) {
    complaints.push(`resolution ${use.instrument.resolution.text}, asked ${demand.resolution.text}`)
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
  const range = use.instrument.range
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

const worse = (context: ItemContext, run: Run): OpenItem[] =>
  run.instruments.flatMap((use) => {
    const complaints = worseThanAsked(run, use)
    if (complaints.length === 0) return []
    const title = `${use.instrument.id} is worse than ${run.card.id} asks for ${use.column}: ${complaints.join('; ')}`
    const closes =
      'a run with the instrument that the card asks for, or a change of the card that says why this one will do'
    return [
      runItem(
        context,
        run,
        {
          kind: 'instrument-worse',
          about: [run.id, use.instrument.id],
          title,
          closes,
          since: run.record.when.date,
        },
        use.column,
      ),
    ]
  })

/** Beyond the stop-at value on either side: a limit of vacuum is one of pressure as well. */
const beyondStop = (context: ItemContext, run: Run): OpenItem[] =>
  Object.entries(run.card.stopAt).flatMap(([column, stop]) => {
    const reading = run.record.readings.columns.find((each) => each.name === column)
    if (!reading) return []
    const row = reading.values.findIndex((value) => Math.abs(value) > Math.abs(stop.value) * (1 + 1e-9))
    if (row === -1) return []
    const title = `${run.id} went beyond the stop-at value: ${column} ${reading.cells[row]} ${reading.unit} in reading ${row + 1}, stop at ${stop.text}`
    const closes = 'an inspection of the article, recorded as an item that names this run, and closed'
    return [
      runItem(
        context,
        run,
        { kind: 'beyond-stop', about: [run.id, run.article], title, closes, since: run.record.when.date },
        column,
      ),
    ]
  })

/** An item by hand that names the run and is closed settles what only a person can judge. */
const settledByHand = (context: ItemContext, run: Run): boolean =>
  Object.values(context.records.items).some(
    (item) => item.closed && item.itemKind !== 'concession' && item.about.includes(run.id),
  )

const fingerprint = (run: Run): string =>
  run.record.readings.columns
    .filter((column) => !column.text)
    .map((column) => column.cells.join(' '))
    .join('|')

/** Copied records: the same readings under two names. A table of words or of one row may well repeat. */
const sameReadings = (context: ItemContext): OpenItem[] => {
  const seen = new Map<string, Run>()
  return context.runs.flatMap((run) => {
    const numbers = run.record.readings.columns.filter((column) => !column.text)
    if (run.record.readings.rows < 3 || numbers.length < 2) return []
    const key = fingerprint(run)
    const first = seen.get(key)
    if (!first) {
      seen.set(key, run)
      return []
    }
    const title = `${run.id} has the same readings as ${first.id}`
    const closes = 'the right readings in the one that was copied, or voiding it'
    return [
      runItem(context, run, {
        kind: 'same-readings',
        about: [run.id, first.id],
        title,
        closes,
        since: run.record.when.date,
      }),
    ]
  })
}

export const evidenceItems = (context: ItemContext): OpenItem[] => [
  ...context.runs
    .filter(stillCounts)
    .flatMap((run) => [
      ...calibration(context, run),
      ...foundWrong(context, run),
      ...outOfRange(context, run),
      ...worse(context, run),
    ]),
  ...context.runs.filter((run) => !settledByHand(context, run)).flatMap((run) => beyondStop(context, run)),
  ...sameReadings(context),
]
