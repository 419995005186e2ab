/** The edge: files of a folder → Campaign. The day comes from outside, too. */
import { loadRecords, readTextFile } from '../../format/node/load.ts'
import { FUNCTIONS } from '../../functions/index.ts'
import { readHistory } from '../../history/node/read.ts'
import { loadMethods } from '../../methods/registry.ts'
import { prepareFormulas } from '../../quantity/formula/index.ts'
import { type CampaignInput, computeCampaign } from '../compute.ts'
import type { Campaign } from '../types.ts'

export type Opened = {
  readonly campaign: Campaign
  /** What it was computed from: to be computed again with something changed. */
  readonly input: CampaignInput
  /** Text of a file below the root, for excerpts. */
  readonly textOf: (file: string) => string | undefined
}

const readText = (root: string, path: string): string | undefined => {
  try {
    return readTextFile(root, path).text
  } catch {
    return undefined
  }
}

const today = (timezone: string): string => {
  try {
    return new Intl.DateTimeFormat('sv-SE', { timeZone: timezone }).format(new Date())
  } catch {
    return new Date().toISOString().slice(0, 10)
  }
}

export type OpenOptions = {
  /** `false`: git is not asked, and nothing is said about it. */
  readonly history?: boolean
}

/** `asOf` is `YYYY-MM-DD`; without it, today where the campaign is. */
export const openCampaign = async (
  root: string,
  tool: string,
  asOf?: string,
  options: OpenOptions = {},
): Promise<Opened> => {
  const [methods] = await Promise.all([loadMethods(), prepareFormulas()])
  const { records, problems, texts } = loadRecords(root, methods)
  const { main, timezone } = records.settings
  const history = options.history === false ? undefined : await readHistory(root, { main })
  const input: CampaignInput = {
    records,
    problems,
    methods,
    functions: FUNCTIONS,
    asOf: asOf ?? today(timezone),
    tool,
    history,
    texts,
  }
  return { campaign: computeCampaign(input), input, textOf: (file) => readText(root, file) }
}
