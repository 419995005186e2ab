/** The title block of a run: what, which article, when, who, by which card, and what was fitted only for the test. */
import type { Run } from '../campaign/types.ts'
import { cell, code, joined, small } from './page.ts'
import type { Site } from './site.ts'
import type { Block, Cell, Rich } from './view.ts'
import { momentWords, runStamps, STATE_WORDS, timeWords } from './words.ts'

const reviewWords = (run: Run, site: Site): Rich => {
  const { reviewed, state } = run.provenance
  if (reviewed.length > 0) return joined(reviewed.map((each) => `${site.person(each.by)} (${each.how})`))
  return [state === 'unknown' ? 'not known: no history at hand' : 'not yet']
}

/** What was fitted for the test, and the record that says it came out again. */
const fittedWords = (run: Run, site: Site): Rich => {
  const { records } = site.campaign
  const later = [
    ...Object.values(records.runs),
    ...Object.values(records.reworks),
    ...Object.values(records.items),
    ...Object.values(records.readiness),
  ]
  return joined(
    run.record.fitted.map(({ id, what }): Rich => {
      const remover = later.find((record) => record.removed.includes(`${run.id}#${id}`))
      return remover
        ? [`${what}: removed, says `, site.link(remover.id)]
        : [`${what}: `, { is: 'strong', text: 'not yet removed' }]
    }),
    '; ',
  )
}

const conditions = (run: Run): Cell[] => {
  const { ambient, rig } = run.record
  const surroundings = [ambient.temperature?.text, ambient.note]
    .filter((each) => each !== undefined)
    .join('; ')
  const rigging = Object.entries(rig)
    .map(([name, value]) => (name === 'id' ? value : `${name}: ${value}`))
    .join('; ')
  return [
    ...(surroundings ? [cell('Surroundings', surroundings, 'half')] : []),
    ...(rigging ? [cell('Rig', rigging, 'half')] : []),
  ]
}

export const runTitleBlock = (run: Run, site: Site): Block => {
  const { record, provenance, card } = run
  const serial = site.campaign.records.articles[run.article]?.serial
  const { recorded } = provenance
  const cells: Cell[] = [
    cell('Article', [site.link(run.article), ...(serial ? [small(` serial ${serial}`)] : [])], 'half'),
    cell(
      'Card',
      [
        site.link(card.id),
        ...(record.cardRevision ? [small(' revision in hand ', code(record.cardRevision.slice(0, 12)))] : []),
      ],
      'half',
    ),
    cell('When', momentWords(record.when)),
    cell('By', joined(record.by.map(site.person))),
    cell('Witness', record.witness ? site.person(record.witness) : 'none'),
    cell('Round', [
      String(run.round),
      ...(run.overtakenBy ? [small(', overtaken by ', site.link(run.overtakenBy.id))] : []),
    ]),
    cell(
      'Typed in',
      recorded ? `${timeWords(recorded.when)}, ${site.person(recorded.by)}` : STATE_WORDS[provenance.state],
    ),
    cell('Commit', recorded ? [code(recorded.commit.slice(0, 12))] : STATE_WORDS[provenance.state]),
    cell('Reviewed', reviewWords(run, site), 'half'),
    ...conditions(run),
    ...(record.fitted.length > 0
      ? [cell('As tested, and not as it will fly', fittedWords(run, site), 'full')]
      : []),
  ]
  return { is: 'title-block', label: 'Run', stamps: runStamps(run), cells }
}
