/** Items about the evidence itself: calibration, range, instrument worse than asked, stop-at, copied readings. */
import { cellAt } from '../../format/cells.ts'
import type { ReadingColumn } from '../../format/types.ts'
import { worseThanAsked } from '../demand.ts'
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
      (each) => each.foundOut !== undefined && each.on > run.record.when.date && each.on <= context.asOf,
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

const worse = (context: ItemContext, run: Run): OpenItem[] =>
  run.instruments.flatMap((use) => {
    const complaints = worseThanAsked(run.card.instruments[use.column], use.instrument, run.record.when.date)
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

/** Another column that the method takes for this one was read, and has a stop of its own. */
const stoppedElsewhere = (run: Run, column: string): boolean => {
  const sets = run.computed?.schema.alternatives?.map((each) => each.sets.flat()) ?? []
  const others = sets.filter((names) => names.includes(column)).flat()
  const read = new Set(run.record.readings.columns.map(({ name }) => name))
  return others.some((name) => read.has(name) && run.card.stopAt[name] !== undefined)
}

/** Beyond the stop-at value on either side: a limit of vacuum is one of pressure as well. */
const beyondStop = (context: ItemContext, run: Run): OpenItem[] =>
  Object.entries(run.card.stopAt).flatMap(([column, stop]) => {
    const reading = run.record.readings.columns.find((each) => each.name === column)
    const row = reading?.values.findIndex((value) => Math.abs(value) > Math.abs(stop.value) * (1 + 1e-9))
    if (row === -1 || (!reading && stoppedElsewhere(run, column))) return []
    // A run that has another column for it (a U-tube's legs) may have gone anywhere: that is not known, and not “no”.
    const title =
      reading && row !== undefined
        ? `${run.id} went beyond the stop-at value: ${column} ${cellAt(reading, row)} ${reading.unit} in reading ${row + 1}, stop at ${stop.text}`
        : `${run.id} has no readings of ${column}, so whether it went beyond the stop-at value of ${stop.text} is not known`
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

const numbersOf = (run: Run): readonly ReadingColumn[] =>
  run.record.readings.columns.filter((column) => !column.text)

/** Alike in length and in three of their rows: only such runs are compared reading by reading. */
const fingerprint = (run: Run): string => {
  const { rows } = run.record.readings
  const looked = [0, rows >> 1, rows - 1]
  return [rows, ...numbersOf(run).map((column) => looked.map((row) => cellAt(column, row)).join(' '))].join(
    '|',
  )
}

const alike = (one: Run, other: Run): boolean => {
  const others = numbersOf(other)
  return numbersOf(one).every((column, index) => {
    const against = others[index]
    if (!against) return false
    // The figures of a logger file are compared as values: its cells would be a million texts.
    if (column.cell || against.cell)
      return column.values.every((value, row) => Object.is(value, against.values[row]))
    return column.cells.every((cell, row) => cell === against.cells[row])
  })
}

/** Copied records: the same readings under two names. A table of words or of one row may well repeat. */
const sameReadings = (context: ItemContext): OpenItem[] => {
  const seen = new Map<string, Run[]>()
  return context.runs.flatMap((run) => {
    if (run.record.readings.rows < 3 || numbersOf(run).length < 2) return []
    const key = fingerprint(run)
    const before = seen.get(key) ?? []
    const first = before.find((other) => alike(run, other))
    if (!first) {
      seen.set(key, [...before, run])
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
