/** `check` on what is staged: files read and run computed as always, but only those that the staged ones need. */
import { computeCampaign } from '../../src/campaign/compute.ts'
import { readRecords } from '../../src/format/records.ts'
import type { Records } from '../../src/format/types.ts'
import { FUNCTIONS } from '../../src/functions/index.ts'
import { loadMethods } from '../../src/methods/registry.ts'
import { sortProblems } from '../../src/problems/sort.ts'
import type { Problem } from '../../src/problems/types.ts'
import { prepareFormulas } from '../../src/quantity/formula/index.ts'
import type { StagedContent } from './content.ts'

/** Only the cards that are wanted themselves or have a run here are worked out. */
const narrowed = (records: Records, wanted: ReadonlySet<string>): Records => {
  const used = new Set(Object.values(records.runs).map(({ card }) => card))
  const cards = Object.entries(records.cards).filter(
    ([id, { source }]) => used.has(id) || wanted.has(source.path),
  )
  return { ...records, cards: Object.fromEntries(cards), gates: {}, readiness: {} }
}

export type StagedCheck = {
  readonly problems: readonly Problem[]
  readonly textOf: (file: string) => string | undefined
}

/**
 * Problems of the files that are wanted, and those that another file has because of them.
 * @param asOf `YYYY-MM-DD`
 */
export const checkStaged = async (
  input: StagedContent & { readonly asOf: string; readonly tool: string },
): Promise<StagedCheck> => {
  const { files, wanted, whole, exists, asOf, tool } = input
  const [methods] = await Promise.all([loadMethods(), prepareFormulas()])
  const { records, problems } = readRecords(files, methods, exists)
  const campaign = computeCampaign({
    records: narrowed(records, wanted),
    problems,
    methods,
    functions: FUNCTIONS,
    asOf,
    tool,
  })
  const concerns = ({ at, related = [] }: Problem): boolean =>
    whole || wanted.has(at.file) || related.some((other) => wanted.has(other.at.file))
  const texts = new Map(files.map(({ path, text }) => [path, text]))
  return {
    problems: sortProblems(campaign.problems.filter(concerns)),
    textOf: (file) => texts.get(file),
  }
}
