/** What happened, by day: runs, reworks, meetings, items raised and closed. */

import { joined } from './page.ts'
import type { Site } from './site.ts'
import type { Block, Rich } from './view.ts'
import { dateWords, runStamps } from './words.ts'

type Entry = { readonly date: string; readonly text: Rich }

const entries = (site: Site): Entry[] => {
  const { campaign } = site
  const { records } = campaign
  const runs = campaign.runs.map(
    (run): Entry => ({
      date: run.record.when.date,
      text: [
        site.link(run.id, `${run.card.title}, ${run.article}`),
        `, round ${run.round}: `,
        ...joined(runStamps(run), ' '),
      ],
    }),
  )
  const gone = campaign.runs.flatMap(({ id, card, article, gone: taken }): Entry[] =>
    taken?.when
      ? [
          {
            date: site.isoDay(taken.when),
            text: ['File taken away: ', site.link(id, `${card.title}, ${article}`)],
          },
        ]
      : [],
  )
  const reworks = campaign.reworks.map(
    (rework): Entry => ({ date: rework.when.date, text: ['Rework: ', site.link(rework.id, rework.title)] }),
  )
  const meetings = Object.values(records.readiness).map(
    (meeting): Entry => ({
      date: meeting.when.date,
      text: [
        site.link(meeting.id, 'Readiness meeting'),
        ' on ',
        site.link(meeting.gate, records.gates[meeting.gate]?.title),
        `: ${meeting.decision}`,
      ],
    }),
  )
  const items = Object.values(records.items).flatMap((item): Entry[] => [
    { date: item.raised.when.date, text: [`Raised (${item.itemKind}): `, site.link(item.id, item.title)] },
    ...(item.closed
      ? [{ date: item.closed.when.date, text: ['Closed: ', site.link(item.id, item.title)] }]
      : []),
  ])
  return [...runs, ...gone, ...reworks, ...meetings, ...items]
}

const MOST_DAYS = 8

export const lastDays = (site: Site): Block[] => {
  const all = entries(site)
  const dates = [...new Set(all.map((entry) => entry.date))].sort().reverse().slice(0, MOST_DAYS)
  const days = dates.map((date) => ({
    date: dateWords(date),
    entries: all.filter((entry) => entry.date === date).map((entry) => entry.text),
  }))
  return days.length > 0 ? [{ is: 'log', days }] : []
}
