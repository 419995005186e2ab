/** What changed after the test, and where the record of it comes from. */
import type { Change } from '../campaign/history/types.ts'
import type { OpenItem, Run } from '../campaign/types.ts'
import { commitsTable } from './history-file.ts'
import { NOT_KNOWN, shortCommit } from './history-title.ts'
import { code, list, strong, table } from './page.ts'
import type { Site } from './site.ts'
import type { Block, Rich } from './view.ts'
import { momentWords, plural, REVIEW_WORDS, STATE_WORDS } from './words.ts'

/** Kinds of items that say what came after the test and is not said here already. */
const LATER: readonly OpenItem['kind'][] = [
  'basis-differs',
  'source-newer',
  'instrument-found-wrong',
  'limit-moved',
  'limit-with-reading',
]

/** A whole column, or a long word, tells nothing in a strip. */
const MOST_LETTERS = 60
const MOST_CHANGES = 6

const shortened = (text: string): string =>
  text.length > MOST_LETTERS ? `${text.slice(0, MOST_LETTERS - 1)}…` : text

const amendmentOf = (run: Run, change: Change) =>
  change.amended
    ? run.provenance.amended.findLast(
        ({ at }) => at.toLowerCase().replace(/[\s/,]+/g, ' ') === change.at.toLowerCase(),
      )
    : undefined

/** `given volume was 96.2 L, is now 96.4 L; without an amendment; not reviewed` */
const changeWords = (run: Run, change: Change, site: Site): Rich => {
  const amendment = amendmentOf(run, change)
  return [
    strong(change.at),
    ' was ',
    code(shortened(change.before)),
    ', is now ',
    code(shortened(change.after)),
    '; ',
    ...(change.amended
      ? [
          amendment
            ? `amended by ${site.person(amendment.by)}, ${site.at(amendment.when)}: ${amendment.why}`
            : 'amended',
        ]
      : [strong('without an amendment')]),
    '; ',
    run.provenance.reviewed.length > 0 ? 'reviewed' : strong('not reviewed'),
  ]
}

const changesSince = (run: Run, site: Site): Rich[] => {
  const changes = run.provenance.changes ?? []
  const more = changes.length - MOST_CHANGES
  return [
    ...changes.slice(0, MOST_CHANGES).map((change) => changeWords(run, change, site)),
    ...(more > 0
      ? [[{ is: 'link' as const, text: `and ${plural(more, 'more change')}`, to: '#provenance' }]]
      : []),
  ]
}

const voiding = ({ record, provenance }: Run, site: Site): Rich[] => {
  if (!record.void) return []
  const { by, when, why } = record.void
  const after = provenance.voidedSince ? [', ', strong('after it had landed')] : []
  const reviewed =
    provenance.state === 'unknown' ? '' : provenance.reviewed.length > 0 ? '; reviewed' : '; not reviewed'
  return [[`Withdrawn by ${site.person(by)}, ${momentWords(when)}`, ...after, `: ${why}${reviewed}`]]
}

const takenAway = ({ gone }: Run, site: Site): Rich[] => {
  if (!gone) return []
  const who =
    gone.commit === null || gone.when === null
      ? ['; that is not committed yet']
      : [` by ${site.person(gone.by ?? '')}, ${site.at(gone.when)}, commit `, shortCommit(gone.commit)]
  return [[strong('The file was taken away'), ...who, '. It is shown as it was last.']]
}

const changes = (run: Run, site: Site): Rich[] => {
  const { overtakenBy } = run
  return [
    ...takenAway(run, site),
    ...voiding(run, site),
    ...changesSince(run, site),
    ...(overtakenBy
      ? [
          [
            ...site.linked(`Overtaken on ${site.at(overtakenBy.when)}: ${overtakenBy.what} (`),
            site.link(overtakenBy.id),
            ')',
          ],
        ]
      : []),
    ...site.campaign.items
      .filter((item) => item.about.includes(run.id) && LATER.includes(item.kind))
      .map((item) => site.linked(item.title)),
  ]
}

/** Of a run that never landed nothing can have changed since; where git was not asked nobody knows. */
const nothingWords = ({ provenance }: Run): string => {
  if (provenance.changes === null) return 'nothing that the record itself tells; its history is not at hand'
  return provenance.landed === null ? 'nothing: it has not landed yet' : 'nothing'
}

/** Stands on every run, also where there is nothing to tell. */
export const changedStrip = (run: Run, site: Site): Block => {
  const items = changes(run, site)
  return {
    is: 'strip',
    title: 'Changed after the test',
    tone: items.length > 0 ? 'loud' : 'quiet',
    items: items.length > 0 ? items : [[nothingWords(run)]],
  }
}

const changeRows = (run: Run): Rich[][] =>
  (run.provenance.changes ?? []).map((change) => [
    [change.at],
    [change.before],
    [change.after],
    change.amended ? ['yes'] : [strong('no')],
  ])

const facts = ({ provenance, record }: Run, site: Site): Block[] => {
  const { recorded, landed, state } = provenance
  return list([
    ['Tested: ', momentWords(record.when)],
    ...(state === 'unknown'
      ? [[`Recorded, landed, reviewed: ${NOT_KNOWN}`]]
      : [
          recorded
            ? [
                'Recorded: ',
                `${site.at(recorded.when)} by ${site.person(recorded.by)}, commit `,
                code(recorded.commit),
              ]
            : ['Recorded: not committed yet'],
          landed
            ? ['Landed: ', `${site.at(landed.when)}, commit `, code(landed.commit)]
            : [`Landed: ${STATE_WORDS[state]}`],
        ]),
    ['File: ', code(record.source.path)],
  ])
}

export const provenanceBlocks = (run: Run, site: Site): Block[] => {
  const { reviewed, notCounted, amended } = run.provenance
  return [
    ...facts(run, site),
    ...table(
      'Reviews',
      ['reviewed by', 'when', 'how', 'commit', 'counts'],
      [...reviewed, ...notCounted].map((each) => [
        [site.person(each.by)],
        each.when ? [site.at(each.when)] : [],
        [REVIEW_WORDS[each.how]],
        each.commit ? [shortCommit(each.commit)] : [],
        ['reason' in each ? `no: ${each.reason}` : 'yes'],
      ]),
      { titled: true },
    ),
    ...table('Changes since it landed', ['at', 'was', 'is now', 'amended'], changeRows(run), {
      titled: true,
    }),
    ...table(
      'Amendments',
      ['when', 'by', 'at', 'was', 'why'],
      amended.map((each) => [
        [site.at(each.when)],
        [site.person(each.by)],
        [each.at],
        [each.was],
        [each.why],
      ]),
      { titled: true },
    ),
    ...commitsTable(run, site),
  ]
}
