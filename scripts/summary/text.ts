/** The summary of a branch, from a folder in a repository. */
import { reviewsIfLanded } from '../../src/campaign/history/if-landed.ts'
import { campaignAt } from '../../src/campaign/node/at-commit.ts'
import { openCampaign } from '../../src/campaign/node/open.ts'
import { summaryOf } from '../../src/views/summary.ts'
import { summaryMarkdown } from '../../src/views/summary-markdown.ts'
import { type Base, commitOf } from './base.ts'

const SHORT = 10

/** Both states by the code and on the day of now, so that only the records differ. A text with `why`: git cannot tell. */
export const summaryText = async (
  root: string,
  base: Base,
  tool: string,
  asOf?: string,
): Promise<{ readonly text: string } | { readonly why: string }> => {
  const { campaign, input } = await openCampaign(root, tool, asOf)
  const past = await campaignAt(root, base.commit, input)
  if (typeof past === 'string') return { why: `git: ${past}` }
  const { history } = input
  const reviews = reviewsIfLanded(history, campaign.records)
  const summary = summaryOf(past, { campaign, texts: input.texts ?? new Map() }, reviews)
  const text = summaryMarkdown(summary, {
    base: base.commit.slice(0, SHORT),
    baseName: base.name,
    head: (commitOf(root, 'HEAD') ?? '').slice(0, SHORT),
    uncommitted: history?.state === 'known' ? history.uncommitted.size : 0,
  })
  return { text }
}
