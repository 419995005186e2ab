/** Instruments: is each in calibration, and which verdicts rest on it? */
import type { Run } from '../campaign/types.ts'
import type { InstrumentRecord } from '../format/types.ts'
import { openAbout } from './items.ts'
import { cell, joined, lineBreak, prose, section, small, table, text, viewOf } from './page.ts'
import { proseOf } from './prose.ts'
import { runResults } from './rounds.ts'
import { numberText } from './show.ts'
import type { Site } from './site.ts'
import type { Block, Rich, View } from './view.ts'
import { dateWords, runStamps, stamp } from './words.ts'

const lastCalibration = (instrument: InstrumentRecord) =>
  [...instrument.calibrations].sort((a, b) => (a.on < b.on ? -1 : 1)).at(-1)

/** As of the day of the build: what it may be used for today. */
const stateStamp = (instrument: InstrumentRecord, asOf: string) => {
  const last = lastCalibration(instrument)
  if (!last) return stamp('not calibrated', 'plain')
  if (last.foundOut) return stamp('found wrong', 'fail')
  return last.due < asOf ? stamp('lapsed', 'undetermined') : stamp('in calibration', 'pass')
}

const rangeText = (instrument: InstrumentRecord): string =>
  instrument.range ? `${instrument.range.low.text} to ${instrument.range.high.text}` : 'not stated'

const runsWith = (id: string, site: Site): Run[] =>
  site.campaign.runs.filter((run) => run.instruments.some((use) => use.instrument.id === id))

export const instrumentsView = (site: Site): View => {
  const all = Object.values(site.campaign.records.instruments).sort((a, b) => (a.id < b.id ? -1 : 1))
  const rows = all.map((instrument): Rich[] => [
    [site.link(instrument.id), ' ', small(instrument.title)],
    [instrument.instrumentKind],
    [rangeText(instrument)],
    [instrument.resolution.text],
    [lastCalibration(instrument)?.due ?? 'none'],
    [stateStamp(instrument, site.campaign.asOf)],
    [String(runsWith(instrument.id, site).length)],
  ])
  const blocks = table(
    'Instruments',
    ['instrument', 'kind', 'range', 'resolution', 'due', `on ${dateWords(site.campaign.asOf)}`, '#runs'],
    rows,
  )
  return viewOf(site, {
    path: 'instruments/',
    kind: 'instruments',
    title: 'Which instruments may be used?',
    description: `${all.length} instruments.`,
    blocks: blocks.length > 0 ? blocks : [text('No instrument is described yet.')],
  })
}

const verdictRows = (instrument: InstrumentRecord, site: Site): Rich[][] =>
  runsWith(instrument.id, site)
    .reverse()
    .map((run) => {
      const uses = run.instruments.filter((use) => use.instrument.id === instrument.id)
      return [
        [site.link(run.id, dateWords(run.record.when.date))],
        [site.link(run.card.id, run.card.title), lineBreak, small(site.link(run.article))],
        [uses.map((use) => use.column).join(', ')],
        joined(
          uses.map((use) =>
            use.calibration
              ? `calibration of ${dateWords(use.calibration)}${use.inForce ? '' : ', lapsed'}`
              : 'none',
          ),
        ),
        runResults(run),
        joined(runStamps(run), ' '),
      ]
    })

const calibrationRows = (instrument: InstrumentRecord): Rich[][] =>
  [...instrument.calibrations]
    .reverse()
    .map((each) => [
      [dateWords(each.on)],
      [dateWords(each.due)],
      [each.by],
      [each.certificate],
      [each.corrections.length > 0 ? `at ${each.corrections.length} points` : 'none'],
      each.foundOut ? [{ is: 'strong', text: `found wrong: ${each.foundOut}` }] : [],
    ])

const correctionRows = (instrument: InstrumentRecord): Rich[][] =>
  (lastCalibration(instrument)?.corrections ?? []).map((each) => [
    [numberText(each.reading, 6)],
    [numberText(each.add, 4)],
  ])

export const instrumentView = (instrument: InstrumentRecord, site: Site): View => {
  const written = proseOf(instrument.body, instrument.source.path, site)
  const blocks: Block[] = [
    {
      is: 'title-block',
      label: 'Instrument',
      stamps: [stateStamp(instrument, site.campaign.asOf)],
      cells: [
        cell('Instrument', instrument.id),
        cell('Kind', instrument.instrumentKind),
        cell('Serial', instrument.serial),
        cell(
          'Due',
          lastCalibration(instrument)
            ? dateWords(lastCalibration(instrument)?.due ?? '')
            : 'never calibrated',
        ),
        cell('Range', rangeText(instrument)),
        cell('Resolution', instrument.resolution.text),
        cell('Accuracy', instrument.accuracy?.text ?? 'not stated: uncertainty not known', 'half'),
        ...(instrument.liquid
          ? [
              cell(
                'Liquid',
                `${instrument.liquid}${instrument.density ? `, ${instrument.density.text}` : ''}`,
              ),
            ]
          : []),
      ],
    },
    ...section(
      'verdicts',
      'Which verdicts rest on it?',
      table(
        'Runs read with it',
        ['run', 'card, article', 'column', 'calibration', 'results', 'verdict'],
        verdictRows(instrument, site),
      ),
    ),
    ...section('items', 'What is open', openAbout([instrument.id], site)),
    ...section('calibrations', 'Calibrations', [
      ...table(
        'Calibrations',
        ['on', 'due', 'by', 'certificate', 'corrections', 'found'],
        calibrationRows(instrument),
      ),
      ...table(
        'Corrections of the last calibration, in SI units',
        ['#reading', '#add'],
        correctionRows(instrument),
        { titled: true, narrow: 'scroll' },
      ),
    ]),
    ...section('about', 'About it', prose(written)),
  ]
  return viewOf(site, {
    path: `instruments/${instrument.id}/`,
    kind: 'instrument',
    title: instrument.title,
    description: `${instrument.title}, ${instrument.id}: calibration and the verdicts that rest on it.`,
    blocks,
    files: written.files,
  })
}
