/** Recorded, landed, reviewed: the cells of a title block that git answers for. */
import type { NotCounted, Review } from '../campaign/history/types.ts'
import type { Run } from '../campaign/types.ts'
import { cell, code, joined, lineBreak, small, strong } from './page.ts'
import type { Site } from './site.ts'
import type { Cell, Rich } from './view.ts'
import { REVIEW_WORDS, SIGNATURE_WORDS } from './words.ts'

/** As many digits of a commit as name it in any repository that people read. */
export const shortCommit = (hash: string) => code(hash.slice(0, 12))

/** Said wherever git could not be asked: what is not known is neither reviewed nor unchanged. */
export const NOT_KNOWN = 'not known: the history is not at hand'

export const reviewText = ({ by, how, when, commit }: Review, site: Site): Rich => [
  `${site.person(by)}, ${when === '' ? '' : `${site.at(when)}: `}`,
  strong(REVIEW_WORDS[how]),
  ...(commit ? [' ', small('commit ', shortCommit(commit))] : []),
]

export const notCountedText = ({ by, how, reason }: NotCounted, site: Site): string =>
  `the review by ${site.person(by)} (${REVIEW_WORDS[how]}) does not count: ${reason}`

const reviewedWords = ({ provenance }: Run, site: Site): Rich => {
  const { reviewed, notCounted, state } = provenance
  const lines = [
    ...reviewed.map((review) => reviewText(review, site)),
    ...(reviewed.length === 0 ? [[state === 'landed' ? 'not yet' : 'not yet; it has not landed']] : []),
    ...notCounted.map((other): Rich => [small(notCountedText(other, site))]),
  ]
  return joined(lines, lineBreak)
}

const landedWords = ({ provenance, gone }: Run, site: Site): Rich => {
  const { landed, state } = provenance
  if (!landed) return [state === 'proposed' ? 'not yet: proposed, on this branch only' : 'not yet']
  const taken: Rich = gone
    ? [
        lineBreak,
        strong('file taken away'),
        gone.when === null
          ? ', not committed yet'
          : ` ${site.at(gone.when)}${gone.by ? ` by ${site.person(gone.by)}` : ''}`,
      ]
    : []
  return [`${site.at(landed.when)} `, small('commit ', shortCommit(landed.commit)), ...taken]
}

const recordedWords = ({ provenance }: Run, site: Site): Rich => {
  const { recorded, signature } = provenance
  if (!recorded) return ['not committed yet']
  return [
    `${site.at(recorded.when)} by ${site.person(recorded.by)} `,
    small(
      'commit ',
      shortCommit(recorded.commit),
      ...(signature === null ? [] : [`, ${SIGNATURE_WORDS[signature]}`]),
    ),
  ]
}

export const recordedCells = (run: Run, site: Site): Cell[] =>
  run.provenance.state === 'unknown'
    ? [cell('Recorded, landed, reviewed', NOT_KNOWN, 'full')]
    : [
        cell('Recorded', recordedWords(run, site), 'half'),
        cell('Landed', landedWords(run, site), 'half'),
        cell('Reviewed', reviewedWords(run, site), 'full'),
      ]
