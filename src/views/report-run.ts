/** The report of one run: all its evidence in the order of a binder, to be printed and signed. */

import type { InstrumentUse, Run } from '../campaign/types.ts'
import type { Calibration } from '../format/types.ts'
import { criterionRows } from './criteria.ts'
import { figurePlot } from './figures.ts'
import { asLandedBlocks, asRunBlocks } from './history-criteria.ts'
import { openAbout } from './items.ts'
import { cell, code, lineBreak, list, prose, section, small, strong, table, viewOf } from './page.ts'
import { proseOf } from './prose.ts'
import { signatureBlocks, signs, standingBlocks } from './report-parts.ts'
import { answerWords, budgetsOf, deviations, photosOf, remarks } from './run.ts'
import { changedStrip, provenanceBlocks } from './run-history.ts'
import { givenRows, measureRows, readingsBlocks } from './run-tables.ts'
import { runTitleBlock } from './run-title.ts'
import { targetText } from './show.ts'
import type { Site } from './site.ts'
import type { Block, Rich, Target, View } from './view.ts'
import { dateWords, nameWords } from './words.ts'

export const runReportPath = (id: string): Target => `runs/${id}/report/`

const calibrationOf = ({ instrument, calibration }: InstrumentUse): Calibration | undefined =>
  instrument.calibrations.find(({ on }) => on === calibration)

/** Identity, range and certificate of each instrument: what an inspector looks up in the other binder. */
export const instrumentTable = (uses: readonly InstrumentUse[], site: Site): Block[] =>
  table(
    'Instruments, serials and calibrations in force on the day',
    ['column', 'instrument', 'serial', 'range, resolution', 'calibrated', 'certificate', 'due', 'on the day'],
    uses.map((use): Rich[] => {
      const { instrument, due, inForce } = use
      const calibration = calibrationOf(use)
      const range = instrument.range ? `${instrument.range.low.text} to ${instrument.range.high.text}, ` : ''
      return [
        [nameWords(use.column)],
        [site.link(instrument.id), ' ', small(instrument.title)],
        [instrument.serial],
        [`${range}${instrument.resolution.text}`],
        calibration ? [dateWords(calibration.on), lineBreak, small(calibration.by)] : [strong('none')],
        calibration ? [calibration.certificate] : [],
        due ? [dateWords(due)] : [],
        inForce ? ['in force'] : [strong(calibration ? 'lapsed' : 'none before the day')],
      ]
    }),
  )

/** What the card says, as it is today: purpose, steps, cautions, what was to be reached and never passed. */
const cardBlocks = (run: Run, site: Site): { blocks: Block[]; files: readonly string[] } => {
  const { card, computed } = run
  const written = proseOf(card.body, card.source.path, site)
  const cautions = [...card.cautions, ...(computed?.method.cautions ?? [])]
  const targets = Object.entries(computed?.targets ?? {}).map(
    ([name, target]): Rich => [
      `${nameWords(name)}: `,
      strong(targetText(target)),
      ', ',
      code(target.formula),
    ],
  )
  const stops = Object.entries(card.stopAt).map(
    ([name, limit]): Rich => ['Never beyond: ', strong(`${nameWords(name)} ${limit.text}`)],
  )
  const blocks: Block[] = [
    ...list([[strong(card.title), ', ', site.link(card.id)], ...targets, ...stops]),
    ...(cautions.length > 0 ? [{ is: 'cautions', items: cautions.map(site.linked) } as const] : []),
    ...prose(written),
  ]
  return { blocks, files: written.files }
}

const resultBlocks = (run: Run): Block[] =>
  table(
    'Measures and derived values',
    ['measure', 'meaning', '#result', '#U', '#k', '#dof'],
    measureRows(run),
  )

const signaturesOf = ({ record }: Run, site: Site): Block[] => [
  ...signatureBlocks([
    ...record.by.map((id) => signs('tested by', id, site)),
    signs('witness', record.witness, site),
    signs('reviewed by', undefined, site),
    signs('inspected by', undefined, site),
  ]),
]

/** The title block of the page of the run, with the identity that a loose sheet needs. */
const titleBlock = (run: Run, site: Site): Block => {
  const block = runTitleBlock(run, site)
  return block.is === 'title-block'
    ? { ...block, label: 'Report', cells: [cell('Run', [code(run.id)], 'full'), ...block.cells] }
    : block
}

export const runReportView = (run: Run, site: Site): View => {
  const { record, computed } = run
  const preferred = site.campaign.records.settings.units
  const card = cardBlocks(run, site)
  const body = proseOf(record.body, record.source.path, site)
  const photos = photosOf(run)
  const readings = readingsBlocks(run)
  const criteria = criterionRows(run.judgements, site)
  const figures = (computed?.figures ?? []).map((figure) => figurePlot(figure, run, preferred))
  const blocks: Block[] = [
    titleBlock(run, site),
    changedStrip(run, site),
    { is: 'answer', text: site.linked(answerWords(run)) },
    ...section('criteria', 'Criteria and verdicts', [
      ...(criteria.length > 0 ? [{ is: 'criteria', rows: criteria } as const] : []),
      ...remarks(run, site),
    ]),
    ...section('then', 'By the limits then and today', [...asRunBlocks(run, site), ...asLandedBlocks(run)]),
    ...section('card', 'The card', card.blocks),
    ...section('instruments', 'Instruments', instrumentTable(run.instruments, site)),
    ...section(
      'givens',
      'Givens',
      table('Givens in force', ['given', 'meaning', '#value', 'from'], givenRows(run, site)),
    ),
    ...section('readings', 'Readings as read', readings.blocks),
    ...section('results', 'Results', resultBlocks(run)),
    ...section('uncertainty', 'Uncertainty of what was judged', budgetsOf(run, site)),
    ...section('figures', 'Figures', figures.length > 0 ? [{ is: 'plots', plots: figures }] : []),
    ...section('observed', 'Observations', [...prose(body), ...photos.blocks]),
    ...section('deviations', 'Deviations from the card', deviations(run, site)),
    ...section('provenance', 'History, amendments and reviews', provenanceBlocks(run, site)),
    ...section('open', 'Open items about this run', openAbout([run.id], site)),
    ...signaturesOf(run, site),
    ...standingBlocks(`runs/${run.id}/`, site),
  ]
  return viewOf(site, {
    path: runReportPath(run.id),
    kind: 'report',
    title: `Report: ${run.card.title}, ${run.article}`,
    description: `Report of run ${run.id}`,
    blocks,
    files: [...card.files, ...body.files, ...photos.files, ...readings.files],
  })
}
