/** What changed after the test, and where the record of it comes from. */
import type { Run } from '../campaign/types.ts'
import { code, list, table } from './page.ts'
import type { Site } from './site.ts'
import type { Block, Rich } from './view.ts'
import { momentWords, STATE_WORDS, timeWords } from './words.ts'

const changes = (run: Run, site: Site): Rich[] => {
  const { record, provenance, overtakenBy } = run
  return [
    ...(record.void
      ? [
          [
            `Withdrawn by ${site.person(record.void.by)} on ${momentWords(record.void.when)}: ${record.void.why}`,
          ],
        ]
      : []),
    ...provenance.amended.map((each) => [
      `${each.at} was ${each.was}; changed by ${site.person(each.by)}, ${timeWords(each.when)}: ${each.why}`,
    ]),
    ...(overtakenBy
      ? [
          [
            ...site.linked(`Overtaken on ${timeWords(overtakenBy.when)}: ${overtakenBy.what} (`),
            site.link(overtakenBy.id),
            ')',
          ],
        ]
      : []),
    ...site.campaign.items
      .filter(
        (item) =>
          item.about.includes(run.id) &&
          ['basis-differs', 'source-newer', 'instrument-found-wrong', 'voided'].includes(item.kind),
      )
      .map((item) => site.linked(item.title)),
  ]
}

/** Stands on every run, also where there is nothing to tell. */
export const changedStrip = (run: Run, site: Site): Block => {
  const items = changes(run, site)
  const nothing =
    run.provenance.state === 'unknown'
      ? 'nothing that the record itself tells; its history is not at hand'
      : 'nothing'
  return {
    is: 'strip',
    title: 'Changed after the test',
    tone: items.length > 0 ? 'loud' : 'quiet',
    items: items.length > 0 ? items : [[nothing]],
  }
}

export const provenanceBlocks = (run: Run, site: Site): Block[] => {
  const { provenance, record } = run
  const { recorded, reviewed, amended } = provenance
  return [
    ...list([
      ['Tested: ', momentWords(record.when)],
      recorded
        ? [
            'Typed in: ',
            `${timeWords(recorded.when)} by ${site.person(recorded.by)}, commit `,
            code(recorded.commit),
          ]
        : ['Typed in: not known'],
      ['State: ', STATE_WORDS[provenance.state]],
      ['File: ', code(record.source.path)],
    ]),
    ...table(
      'Reviews',
      ['reviewed by', 'how', 'commit'],
      reviewed.map((each) => [
        [site.person(each.by)],
        [each.how],
        each.commit ? [code(each.commit.slice(0, 12))] : [],
      ]),
      { titled: true },
    ),
    ...table(
      'Amendments',
      ['when', 'by', 'at', 'was', 'why'],
      amended.map((each) => [
        [timeWords(each.when)],
        [site.person(each.by)],
        [each.at],
        [each.was],
        [each.why],
      ]),
      { titled: true },
    ),
  ]
}
