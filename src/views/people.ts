/** Who may record, witness, review and concede, and what each has done. */
import { table, text, viewOf } from './page.ts'
import type { Site } from './site.ts'
import type { Rich, View } from './view.ts'

export const peopleView = (site: Site): View => {
  const { runs, records } = site.campaign
  const rows = Object.values(records.people).map((person): Rich[] => [
    [{ is: 'strong', text: person.name }],
    [person.organisation ?? ''].filter((each) => each !== ''),
    [person.licence ?? ''].filter((each) => each !== ''),
    [person.roles.join(', ')],
    [String(runs.filter((run) => run.record.by.includes(person.id)).length)],
    [String(runs.filter((run) => run.record.witness === person.id).length)],
  ])
  const blocks = table(
    'People',
    ['name', 'organisation', 'licence', 'may', '#runs recorded', '#runs witnessed'],
    rows,
  )
  return viewOf(site, {
    path: 'people/',
    kind: 'people',
    title: 'Who may sign what?',
    description: 'People, their roles and licences.',
    blocks: blocks.length > 0 ? blocks : [text('Nobody is named yet.')],
  })
}
