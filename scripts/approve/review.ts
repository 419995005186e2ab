/** What a review would say, or why there is none. */
import { openCampaign } from '../../src/campaign/node/open.ts'
import type { Campaign } from '../../src/campaign/types.ts'
import { readHistory } from '../../src/history/node/read.ts'
import { reviewsIn } from '../../src/history/reviews.ts'
import type { KnownHistory } from '../../src/history/types.ts'
import type { Reviewed } from './message.ts'
import { findRecord, type Named, objectionTo } from './record.ts'
import { type GitIdentity, type Reviewer, reviewerOf } from './reviewer.ts'

export type Outcome =
  | { readonly kind: 'wrong-call'; readonly text: string }
  /** With what to do instead. */
  | { readonly kind: 'refused'; readonly text: string }
  | {
      readonly kind: 'reviewed'
      readonly reviewed: readonly Reviewed[]
      readonly reviewer: { readonly name: string; readonly email: string }
      readonly remarks: readonly string[]
    }

type Chosen = { readonly reviewed: readonly Reviewed[]; readonly objections: readonly string[] }

const choose = (
  campaign: Campaign,
  history: KnownHistory,
  reviewer: Reviewer,
  found: readonly Named[],
): Chosen => {
  const objections: string[] = []
  const reviewed = found.flatMap((record): Reviewed[] => {
    const digest = history.digests.get(record.path)
    const objection = objectionTo(campaign, history, record, reviewer.person)
    if (objection === null && digest !== undefined) return [{ id: record.id, digest }]
    objections.push(objection ?? `${record.path} is not in git; commit it first.`)
    return []
  })
  return { reviewed, objections }
}

/** Records that the person has reviewed as they are now. */
const alreadyBy = (
  history: KnownHistory,
  { person }: Reviewer,
  all: readonly Reviewed[],
): readonly string[] => {
  const emails = new Set(person.emails.map((email) => email.toLowerCase()))
  const done = new Set(
    [...history.commits.values()]
      .flatMap(reviewsIn)
      .flatMap(({ digest, email }) => (emails.has(email.toLowerCase()) ? [digest] : [])),
  )
  return all.filter(({ digest }) => done.has(digest)).map(({ id }) => id)
}

export const reviewFor = async (asked: {
  readonly root: string
  /** Folder from which paths may be meant. */
  readonly here: string
  /** Ids or paths. */
  readonly texts: readonly string[]
  readonly by: string | undefined
  readonly identity: GitIdentity | null
  readonly tool: string
}): Promise<Outcome> => {
  const { root, here, texts, by, identity, tool } = asked
  const { campaign } = await openCampaign(root, tool, undefined, { history: false })
  const { people, settings } = campaign.records
  const found = [...new Set(texts.map((text) => findRecord(campaign.records, root, here, text)))]
  const unknown = found.filter((each) => typeof each === 'string')
  if (unknown.length > 0) return { kind: 'wrong-call', text: unknown.join('\n') }
  const history = await readHistory(root, { main: settings.main })
  if (history.state === 'unknown') return { kind: 'refused', text: `${history.message}.\n${history.hint}` }
  const reviewer = reviewerOf(people, identity, by)
  if (typeof reviewer === 'string') return { kind: 'refused', text: reviewer }
  const records = found.filter((each) => typeof each !== 'string')
  const { reviewed, objections } = choose(campaign, history, reviewer, records)
  if (objections.length > 0) return { kind: 'refused', text: objections.join('\n') }
  const { name } = reviewer.person
  const twice = alreadyBy(history, reviewer, reviewed)
  return {
    kind: 'reviewed',
    reviewed: reviewed.filter(({ id }) => !twice.includes(id)),
    reviewer: { name, email: reviewer.email },
    remarks: [
      ...twice.map((id) => `${id} is reviewed by ${name} already, as it is now.`),
      ...(reviewer.remark === null ? [] : [reviewer.remark]),
    ],
  }
}
