/** What awaits a review: the content, why it waits, and who may give it. */
import type { OpenItem, Run } from '../campaign/types.ts'
import { code, joined, lineBreak, small, table, text } from './page.ts'
import type { Site } from './site.ts'
import type { Block, Rich } from './view.ts'
import { plural, runStamps } from './words.ts'

type Waiting = { readonly id: string; readonly items: readonly OpenItem[]; readonly run: Run | null }

const waitingOf = (site: Site): Waiting[] => {
  const bySubject = new Map<string, OpenItem[]>()
  for (const item of site.campaign.items) {
    for (const id of item.toReview ?? []) {
      const known = bySubject.get(id)
      if (known) known.push(item)
      else bySubject.set(id, [item])
    }
  }
  return [...bySubject].map(([id, items]) => ({ id, items, run: site.run(id) ?? null }))
}

/** Who has the role and did none of the tests that wait for it. */
const reviewers = ({ items, run }: Waiting, site: Site): string[] => {
  const runs = [run, ...items.flatMap((item) => item.about.map((id) => site.run(id) ?? null))]
  const done = new Set(runs.flatMap((each) => each?.record.by ?? []))
  return Object.values(site.campaign.records.people)
    .filter((person) => person.roles.includes('review') && !done.has(person.id))
    .map((person) => person.name)
}

const whyWords = ({ items }: Waiting, site: Site): Rich => {
  const [first, ...others] = items
  if (!first) return []
  const more = others.length > 0 ? `; and ${plural(others.length, 'more item')}` : ''
  return [...site.linked(first.title), more].filter((piece) => piece !== '')
}

const whatWords = ({ id, run }: Waiting, site: Site): Rich => [
  site.link(id),
  ...(run ? [lineBreak, small(`${run.card.title}, ${run.article}`)] : []),
]

const row = (waiting: Waiting, site: Site): Rich[] => {
  const { run } = waiting
  const who = reviewers(waiting, site)
  return [
    whatWords(waiting, site),
    run ? joined(runStamps(run), ' ') : [],
    whyWords(waiting, site),
    who.length > 0 ? [who.join(', ')] : [{ is: 'strong', text: 'nobody' }],
  ]
}

export const awaitsReview = (site: Site): Block[] => {
  const waiting = waitingOf(site)
  if (waiting.length === 0) return []
  const notYet = waiting.some(({ run }) => run?.provenance.state === 'uncommitted')
  return [
    ...table(
      'What awaits a review',
      ['what', 'verdict', 'why', 'who may'],
      waiting.map((each) => row(each, site)),
    ),
    text(
      'Whoever may review one looks at exactly this content, and says so by an approval of its pull request, or by ',
      code('npm run approve -- <id>'),
      `.${notYet ? ' What is not committed yet can be reviewed once it is.' : ''}`,
    ),
  ]
}
