/** What every kind of new file needs to know. */
import type { CampaignInput } from '../../src/campaign/compute.ts'
import type { Campaign } from '../../src/campaign/types.ts'

export type NewContext = {
  readonly campaign: Campaign
  readonly input: CampaignInput
  readonly root: string
  readonly when: string
  readonly by: string | null
  /** The name of the file without its ending, where somebody wants another one. */
  readonly id: string | undefined
}

export type Draft = {
  readonly folder: string
  readonly id: string
  readonly text: string
  /** Said beside, without harm. */
  readonly notes: readonly string[]
}

/** A list on the command line: `a,b` or `a, b`. */
export const listOf = (text: string | undefined): string[] =>
  (text ?? '')
    .split(',')
    .map((each) => each.trim())
    .filter((each) => each !== '')
