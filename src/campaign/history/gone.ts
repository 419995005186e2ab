/** Runs that were on the main line and whose files are no more: read from their last landed text. */
import { classify } from '../../format/classify.ts'
import type { Records } from '../../format/types.ts'
import { goneRuns } from '../../history/state.ts'
import type { Run } from '../types.ts'
import { judgeStates, type StateContext, type StateRequest } from './other-states.ts'
import { type Facts, SETTINGS } from './past.ts'
import { todaysText } from './provenance.ts'
import type { PeopleBook } from './reviews.ts'
import { dataPathIn, frontMatter } from './run-text.ts'
import type { Gone } from './types.ts'

/** A run that is gone and cannot be shown: its name was given away, or its text cannot be read. */
export type Lost = {
  readonly id: string
  readonly path: string
  readonly card: string
  readonly gone: Gone
  readonly why: string
}

const cardIn = (text: string): string => {
  const card = frontMatter(text)?.card
  return typeof card === 'string' ? card : ''
}

export const goneOf = ({ history }: Facts, people: PeopleBook, path: string): Gone => {
  const version = history.files.get(path)?.touched.findLast(({ blob }) => blob === null)
  const commit = version && !history.uncommitted.has(path) ? history.commits.get(version.commit) : undefined
  if (!commit) return { commit: null, when: null, by: null }
  const by = people.byEmail.get(commit.author.email.toLowerCase())?.id ?? commit.author.name
  return { commit: commit.hash, when: commit.committed, by }
}

export const readGone = (
  facts: Facts,
  people: PeopleBook,
  records: Records,
  context: StateContext,
): { readonly runs: readonly Run[]; readonly lost: readonly Lost[] } => {
  const runs: Run[] = []
  const lost: Lost[] = []
  const requests: StateRequest[] = []
  const taken = new Set(records.seen.map(({ id }) => id))
  for (const path of goneRuns(facts.history)) {
    const classified = classify(path)
    if (classified.kind !== 'run') continue
    const { id } = classified
    const text = facts.textOf(path)
    const card = text === undefined ? '' : cardIn(text)
    const about = { id, path, card, gone: goneOf(facts, people, path) }
    if (taken.has(id)) lost.push({ ...about, why: 'another file has its name' })
    else if (text === undefined) lost.push({ ...about, why: 'its text is not at hand' })
    else {
      const run = todaysText(facts, { path }, dataPathIn(path, text))
      const cardPath = context.pathOf(card) ?? SETTINGS
      requests.push({ id, as: 'gone', path, cardPath, run, old: [] })
    }
  }
  const results = judgeStates(requests, context)
  for (const [index, { id, path, run }] of requests.entries()) {
    const gone = goneOf(facts, people, path)
    const result = results[index]
    if (result?.ok) runs.push({ ...result.run, gone })
    else lost.push({ id, path, card: cardIn(run.text), gone, why: result?.why ?? 'its text is not at hand' })
  }
  return { runs, lost }
}
