/** The page of one run: verdict and results first, then figures, budget, readings, and where it all comes from. */
import type { Run } from '../campaign/types.ts'
import type { Judgement } from '../judge/types.ts'
import { budgetOf } from './budgets.ts'
import { criterionRows } from './criteria.ts'
import { figurePlot } from './figures.ts'
import { besideRecord, isPicture } from './files.ts'
import { asLandedBlocks, asRunBlocks } from './history-criteria.ts'
import { list, prose, section, table, text, viewOf } from './page.ts'
import { proseOf } from './prose.ts'
import { changedStrip, provenanceBlocks } from './run-history.ts'
import { givenRows, instrumentRows, measureRows, readingsBlocks } from './run-tables.ts'
import { runTitleBlock } from './run-title.ts'
import { limitText, resultText } from './show.ts'
import type { Site } from './site.ts'
import type { Block, View } from './view.ts'
import { dateWords, nameWords } from './words.ts'

const MOST_TERMS = 2

const capital = (text: string): string => `${text[0]?.toUpperCase() ?? ''}${text.slice(1)}`

/** The name of a criterion at the head of a sentence. */
const sentenceName = (criterion: string): string => capital(nameWords(criterion))

const sentence = (text: string): string => `${capital(text)}${/[.!?]$/.test(text) ? '' : '.'}`

/** `Leak: 1.9 ± 1.6 cm³/min, to be below 6 cm³/min: pass.` */
const judgementWords = (judgement: Judgement): string => {
  const terms = judgement.terms
    .slice(0, MOST_TERMS)
    .map((term) => `${resultText(term.value, term.unit)}, to be ${limitText(term)}`)
  return `${sentenceName(judgement.criterion)}: ${terms.join('; ')}: ${judgement.verdict}.`
}

/** What came out, a sentence a criterion. */
export const answerWords = (run: Run): string => {
  const { record } = run
  if (record.void)
    return `Withdrawn: ${record.void.why} It counts for nothing; it would have been ${run.wouldBe}.`
  if (run.computed === null) return `No result could be computed: ${run.reasons.join('; ')}.`
  const stopped = record.stopped ? `Broken off: ${record.stopped} ` : ''
  if (run.judgements.length === 0) return `${stopped}The card has no criterion: nothing was judged.`
  return stopped + run.judgements.map(judgementWords).join(' ') + countsOtherwise(run)
}

/** Where a worse verdict counts until what changed is reviewed. */
const countsOtherwise = ({ verdict, presentVerdict }: Run): string =>
  verdict === null || verdict === presentVerdict
    ? ''
    : ` Until what was changed since is reviewed, it counts as ${verdict}.`

export const budgetsOf = (run: Run, site: Site): Block[] => {
  const known = { ...run.computed?.measures, ...run.computed?.derived }
  const judged = new Set(
    run.judgements.flatMap((judgement) => judgement.terms.flatMap((term) => term.measures)),
  )
  const budgets = [...judged].flatMap((name) => {
    const quantity = known[name]
    const unit = run.units[name]
    return quantity && unit ? [budgetOf(name, quantity, unit, site.campaign.records)] : []
  })
  return budgets.length > 0 ? [{ is: 'budgets', budgets }] : []
}

export const photosOf = (run: Run): { blocks: Block[]; files: string[] } => {
  // Of a run that is gone nobody knows whether its pictures are still there.
  if (run.gone) return { blocks: [], files: [] }
  const photos = run.record.files.flatMap(({ file, caption }) => {
    const path = besideRecord(run.record.source.path, file)
    return path === null
      ? []
      : [{ file: `files/${path}`, path, picture: isPicture(path), caption: caption || file }]
  })
  const blocks: Block[] =
    photos.length > 0
      ? [{ is: 'photos', photos: photos.map(({ file, picture, caption }) => ({ file, picture, caption })) }]
      : []
  return { blocks, files: photos.map((photo) => photo.path) }
}

export const deviations = (run: Run, site: Site): Block[] =>
  table(
    'Deviations from the card',
    ['from', 'what was done', 'why', 'agreed by'],
    run.record.deviations.map((each) => [
      [each.from],
      [each.what],
      [each.why],
      [each.agreed ? site.person(each.agreed) : 'nobody'],
    ]),
  )

export const remarks = (run: Run, site: Site): Block[] => {
  const said = new Set(run.judgements.flatMap((judgement) => judgement.reasons))
  const reasons = run.computed === null ? [] : run.reasons.filter((reason) => !said.has(reason))
  return list([...reasons, ...run.notes].map(site.linked))
}

/** What to do about what did not pass, beside the verdict: the method's advice, and what would settle the rest. */
const whatNext = (run: Run, site: Site): Block[] => {
  const settle = run.judgements.flatMap((judgement) =>
    judgement.settle.map((each) => `${sentenceName(judgement.criterion)}: ${each}.`),
  )
  const items = [...run.advice.map((each) => sentence(each.text)), ...settle].map(site.linked)
  return items.length > 0 ? [{ is: 'strip', title: 'What next', tone: 'quiet', items }] : []
}

const neighbours = (run: Run, site: Site): Block[] => {
  const own = site.campaign.runs.filter(
    (other) => other.card.id === run.card.id && other.article === run.article,
  )
  const at = own.findIndex((other) => other.id === run.id)
  const linkTo = (other: Run | undefined) =>
    other ? site.link(other.id, `${dateWords(other.record.when.date)}, round ${other.round}`) : null
  const [previous, next] = [linkTo(own[at - 1]), linkTo(own[at + 1])]
  return previous || next ? [{ is: 'pager', previous, next }] : []
}

export const runView = (run: Run, site: Site): View => {
  const { record, computed } = run
  const preferred = site.campaign.records.settings.units
  const body = proseOf(record.body, record.source.path, site)
  const photos = photosOf(run)
  const readings = readingsBlocks(run)
  // What would settle it stands at the top of the page.
  const criteria = criterionRows(run.judgements, site).map((row) => ({ ...row, settle: [] }))
  const figures = (computed?.figures ?? []).map((figure) => figurePlot(figure, run, preferred))
  const blocks: Block[] = [
    runTitleBlock(run, site),
    changedStrip(run, site),
    { is: 'answer', text: site.linked(answerWords(run)) },
    ...whatNext(run, site),
    ...section('criteria', 'Is it good enough?', [
      ...(criteria.length > 0 ? [{ is: 'criteria', rows: criteria } as const] : []),
      ...remarks(run, site),
    ]),
    ...section('then', 'By which limits, then and today?', [
      ...asRunBlocks(run, site),
      ...asLandedBlocks(run),
    ]),
    ...section(
      'figures',
      'What the readings show',
      figures.length > 0 ? [{ is: 'plots', plots: figures }] : [],
    ),
    ...section('uncertainty', 'Where the uncertainty comes from', budgetsOf(run, site)),
    ...section(
      'results',
      'All results',
      table(
        'Measures and derived values',
        ['measure', 'meaning', '#result', '#U', '#k', '#dof'],
        measureRows(run),
      ),
    ),
    ...section(
      'givens',
      'What was given',
      table('Givens in force', ['given', 'meaning', '#value', 'from'], givenRows(run, site)),
    ),
    ...section(
      'instruments',
      'Instruments on the day',
      table(
        'Instruments',
        ['column', 'instrument', 'serial', 'calibration', 'due', 'on the day'],
        instrumentRows(run, site),
      ),
    ),
    ...section('readings', 'Readings as read', readings.blocks),
    ...section('observed', 'What was seen and done', [
      ...prose(body),
      ...deviations(run, site),
      ...photos.blocks,
    ]),
    ...section('provenance', 'Who says so', provenanceBlocks(run, site)),
    text(
      'To print and sign: ',
      { is: 'link', text: 'report of this run', to: `runs/${run.id}/report/` },
      '.',
    ),
    ...neighbours(run, site),
  ]
  return viewOf(site, {
    path: `runs/${run.id}/`,
    kind: 'run',
    title: `${run.card.title}: ${run.article}`,
    description: `${run.card.title} on ${run.article}, ${dateWords(record.when.date)}: ${run.verdict ?? 'void'}.`,
    blocks,
    files: [...body.files, ...photos.files, ...readings.files],
  })
}
