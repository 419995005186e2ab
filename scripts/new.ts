import { existsSync, mkdirSync, writeFileSync } from 'node:fs'
import { dirname, join, relative, resolve } from 'node:path'
import { openCampaign } from '../src/campaign/node/open.ts'
import type { Campaign, CardState } from '../src/campaign/types.ts'
import { nearest } from '../src/quantity/nearest.ts'
import { newRunText } from '../src/views/new-run.ts'
import { complain, home, readCall, tool } from './command.ts'

const HELP = `npm run new -- <card> [options]     a run file in its place, filled in as far as is known

  --article PATH    which article, where the card serves several
  --by ID           who makes the run (as in people.yaml)
  --at TIME         when, as 2026-03-04T09:12+01:00 (now)
  --root DIR        a folder that holds records/ and shared/ (this repository)
  --help            this text

Nothing is ever overwritten.
`

const two = (number: number): string => String(number).padStart(2, '0')

/** Local time of the machine with its offset, to the minute: the hangar's laptop stands in the hangar. */
const now = (): string => {
  const date = new Date()
  const offset = -date.getTimezoneOffset()
  const sign = offset < 0 ? '-' : '+'
  const zone = `${sign}${two(Math.trunc(Math.abs(offset) / 60))}:${two(Math.abs(offset) % 60)}`
  const day = `${date.getFullYear()}-${two(date.getMonth() + 1)}-${two(date.getDate())}`
  return `${day}T${two(date.getHours())}:${two(date.getMinutes())}${zone}`
}

const choose = (campaign: Campaign, card: string, article: string | undefined): CardState | string => {
  const states = campaign.cards.filter((state) => state.id === card)
  const [only, second] = states
  if (!only) {
    const close = nearest(card, [...new Set(campaign.cards.map((state) => state.id))])
    return `There is no card ${card}${close.length > 0 ? `; these are close: ${close.join(', ')}` : ''}.`
  }
  if (article === undefined && !second) return only
  const named = states.find((state) => state.article === article)
  const articles = states.map((state) => state.article).join(', ')
  if (named) return named
  return article === undefined
    ? `${card} serves several articles; add --article with one of ${articles}.`
    : `${card} does not serve ${article}; it serves ${articles}.`
}

const main = async (): Promise<void> => {
  const call = readCall(
    { article: { type: 'string' }, by: { type: 'string' }, at: { type: 'string' }, root: { type: 'string' } },
    HELP,
  )
  if (!call) return
  const [card, extra] = call.positionals
  if (card === undefined || extra !== undefined) return complain(`Name one card.\n\n${HELP}`)
  const { article, by, at, root: folder } = call.values
  const when = at ?? now()
  if (
    !/^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}(:\d{2})?[+-]\d{2}:\d{2}$/.test(when) ||
    Number.isNaN(Date.parse(when))
  ) {
    return complain(`--at ${when} is no time with an offset; write 2026-03-04T09:12+01:00.`)
  }
  const root = folder ? resolve(folder) : home
  const { campaign } = await openCampaign(root, tool)
  const state = choose(campaign, card, article)
  if (typeof state === 'string') return complain(state)
  if (by !== undefined && !campaign.records.people[by])
    return complain(`There is no ${by} in shared/people.yaml.`)
  const several = Object.keys(state.card.articles).length > 1
  const suffix = several ? `-${state.article.split('/').slice(-2).join('-')}` : ''
  const id = `${when.slice(0, 10)}-${when.slice(11, 16).replace(':', '')}-${card}${suffix}`
  const file = join(root, 'records/runs', when.slice(0, 7), `${id}.md`)
  if (existsSync(file)) return complain(`${relative(root, file)} is there already; nothing was written.`)
  mkdirSync(dirname(file), { recursive: true })
  writeFileSync(file, newRunText({ campaign, state, when, by: by ?? null }), { flag: 'wx' })
  process.stdout.write(
    `${relative(process.cwd(), file)}\nFill in what is marked …, add the readings, then: npm run check\n`,
  )
}

await main()
