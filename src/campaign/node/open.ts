/** The edge: files of a folder → Campaign. The day comes from outside, too. */
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { loadRecords } from '../../format/node/load.ts'
import { FUNCTIONS } from '../../functions/index.ts'
import { loadMethods } from '../../methods/registry.ts'
import { prepareFormulas } from '../../quantity/formula/index.ts'
import { computeCampaign } from '../compute.ts'
import type { Campaign } from '../types.ts'

export type Opened = {
  readonly campaign: Campaign
  /** Text of a file below the root, for excerpts. */
  readonly textOf: (file: string) => string | undefined
}

const readText = (path: string): string | undefined => {
  try {
    return readFileSync(path, 'utf8')
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

/** `asOf` is `YYYY-MM-DD`; without it, today where the campaign is. */
export const openCampaign = async (root: string, tool: string, asOf?: string): Promise<Opened> => {
  const [methods] = await Promise.all([loadMethods(), prepareFormulas()])
  const { records, problems } = loadRecords(root, methods)
  const day = asOf ?? today(records.settings.timezone)
  const campaign = computeCampaign({ records, problems, methods, functions: FUNCTIONS, asOf: day, tool })
  return { campaign, textOf: (file) => readText(join(root, file)) }
}
