/** The title block of a run: what, which article, when, who, by which card, what git vouches for, what was fitted. */
import type { Run } from '../campaign/types.ts'
import { recordedCells } from './history-title.ts'
import { cell, code, joined, small } from './page.ts'
import type { Site } from './site.ts'
import type { Block, Cell, Rich } from './view.ts'
import { momentWords, runStamps } from './words.ts'

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

/** The card, and the state of it that was in force: the one that the run names, or that of the main line at its time. */
const cardWords = ({ card, record, asRun }: Run, site: Site): Rich => {
  const named = record.cardRevision ? [' revision in hand ', code(record.cardRevision.slice(0, 12))] : []
  const inForce =
    asRun && asRun.when !== null && asRun.revision !== null
      ? [` as landed ${site.at(asRun.when)}, commit `, code(asRun.revision.slice(0, 12))]
      : []
  const late = asRun?.writtenAfter ? ['; ', { is: 'strong', text: 'after the test' } as const] : []
  const said = [...named, ...(named.length > 0 && inForce.length > 0 ? [';'] : []), ...inForce, ...late]
  return [site.link(card.id), ...(said.length > 0 ? [small(...said)] : [])]
}

export const runTitleBlock = (run: Run, site: Site): Block => {
  const { record } = run
  const serial = site.campaign.records.articles[run.article]?.serial
  const cells: Cell[] = [
    cell('Article', [site.link(run.article), ...(serial ? [small(` serial ${serial}`)] : [])], 'half'),
    cell('Card', cardWords(run, site), 'half'),
    cell('When', momentWords(record.when)),
    cell('By', joined(record.by.map(site.person))),
    cell('Witness', record.witness ? site.person(record.witness) : 'none'),
    cell('Round', [
      String(run.round),
      ...(run.overtakenBy ? [small(', overtaken by ', site.link(run.overtakenBy.id))] : []),
    ]),
    ...recordedCells(run, site),
    ...conditions(run),
    ...(record.fitted.length > 0
      ? [cell('As tested, and not as it will fly', fittedWords(run, site), 'full')]
      : []),
  ]
  return { is: 'title-block', label: 'Run', stamps: runStamps(run), cells }
}
