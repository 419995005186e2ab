import { existsSync, mkdirSync, writeFileSync } from 'node:fs'
import { dirname, join, relative } from 'node:path'
import { openCampaign } from '../src/campaign/node/open.ts'
import type { Records } from '../src/format/types.ts'
import { freeName } from '../src/views/new-front.ts'
import { campaignRoot, complain, readCall, tool } from './command.ts'
import { draftOf, OPTIONS, wanted } from './new/call.ts'
import type { Draft, NewContext } from './new/context.ts'
import { isMoment, now } from './new/when.ts'
import { writerOf } from './new/who.ts'

const HELP = `npm run new -- <card> [options]              a run file in its place, filled in as far as is known
npm run new -- --rework TITLE --changes PARTS   a change made to the article
npm run new -- --item TITLE --kind KIND         an open item: discrepancy, action, concession
npm run new -- --readiness GATE                 minutes of a meeting on a gate, with the results as they are now

  --article PATH    of a run: which article, where the card serves several
  --changes A,B     of a rework: articles or parts of them
  --because A,B     of a rework: runs and items that led to it
  --about A,B       of an item: what it is about; of a concession, the run
  --by ID           who writes it, as in people.yaml (whom git knows)
  --at TIME         when, as 2026-03-04T09:12+01:00 (now)
  --id NAME         name of the file (from time and card or title)
  --root DIR        a folder that holds records/ and shared/ (this repository)
  --help            this text

What is left to write is marked …; check refuses the file until it is written. Nothing is ever overwritten.
`

/** Ids are unique across kinds, and what is there already stays as it is. */
const takenBy = (records: Records, root: string, { folder, id }: Draft): string | null => {
  const file = join(folder, `${id}.md`)
  const other = existsSync(join(root, file)) ? file : records.seen.find((each) => each.id === id)?.path
  if (other === undefined) return null
  const free = freeName(id, new Set(records.seen.map((each) => each.id)))
  return `${other} is there already; nothing was written. Another name: --id ${free}`
}

const write = (root: string, { folder, id, text, notes }: Draft): void => {
  const file = join(root, folder, `${id}.md`)
  mkdirSync(dirname(file), { recursive: true })
  writeFileSync(file, text, { flag: 'wx' })
  for (const note of notes) process.stderr.write(`${note}\n`)
  const next = folder.startsWith('records/runs') ? 'add the readings, then' : 'then'
  process.stdout.write(`${relative(process.cwd(), file)}\nFill in what is marked …, ${next}: npm run check\n`)
}

const main = async (): Promise<void> => {
  const call = readCall(OPTIONS, HELP)
  if (!call) return
  const { values } = call
  const [card, extra] = call.positionals
  const kind = extra === undefined ? wanted(card, values) : `${extra} is not understood here.`
  if (typeof kind === 'string') return complain(`${kind}\n\n${HELP}`)
  const when = values.at ?? now()
  if (!isMoment(when))
    return complain(`--at ${when} is no time with an offset; write 2026-03-04T09:12+01:00.`)
  const { id } = values
  if (id !== undefined && !/^[a-z0-9]+(-[a-z0-9]+)*$/.test(id))
    return complain(`--id ${id} is no id: small letters, digits and hyphens.`)
  const root = campaignRoot(values.root, HELP)
  if (root === null) return
  const { campaign, input } = await openCampaign(root, tool, when.slice(0, 10))
  const writer = writerOf(campaign.records.people, root, values.by)
  if (typeof writer === 'string') return complain(writer)
  const context: NewContext = { campaign, input, root, when, by: writer.by, id }
  const draft = draftOf(context, kind.kind, card ?? '', values)
  if (typeof draft === 'string') return complain(draft)
  const taken = takenBy(campaign.records, root, draft)
  if (taken !== null) return complain(taken)
  if (writer.note !== null) process.stderr.write(`${writer.note}\n`)
  write(root, draft)
}

await main()
