/** The records as they would be with what was handed in among them; nothing is written. */
import { computeCampaign } from '../../src/campaign/compute.ts'
import type { Campaign } from '../../src/campaign/types.ts'
import { dataFile, isDataFile } from '../../src/format/data-file.ts'
import type { Loaded } from '../../src/format/node/load.ts'
import { readRecords, type TextFile } from '../../src/format/records.ts'
import { FUNCTIONS } from '../../src/functions/index.ts'
import type { Method } from '../../src/methods/method.ts'
import { sortProblems } from '../../src/problems/sort.ts'
import type { Problem } from '../../src/problems/types.ts'
import { type Placement, textOf } from '../../src/take/parcel.ts'

export type Checked = {
  readonly campaign: Campaign
  /** Of what was handed in, and those of other files that are there only with it. */
  readonly problems: readonly Problem[]
  readonly textOf: (file: string) => string | undefined
}

const asText = ({ path, bytes, what }: Placement): TextFile[] => {
  if (what === 'run') return [{ path, text: textOf(bytes) }]
  return isDataFile(path) ? [dataFile(path, bytes)] : []
}

const keyOf = ({ code, message, at }: Problem): string => JSON.stringify([code, message, at.file])

export const checkWith = (
  { texts, exists, problems: before }: Loaded,
  placements: readonly Placement[],
  methods: Readonly<Record<string, Method>>,
  asOf: string,
  tool: string,
): Checked => {
  const own = placements.flatMap(asText)
  const files = new Map<string, TextFile>([
    ...[...texts].map(([path, text]) => [path, { path, text }] as const),
    ...own.map((file) => [file.path, file] as const),
  ])
  const all = new Set([...exists, ...placements.map(({ path }) => path)])
  const { records, problems: read } = readRecords([...files.values()], methods, all)
  const allTexts = new Map([...files.values()].map(({ path, text }) => [path, text]))
  const campaign = computeCampaign({
    records,
    problems: read,
    methods,
    functions: FUNCTIONS,
    asOf,
    tool,
    history: undefined,
    texts: allTexts,
  })
  const placed = new Set(placements.map(({ path }) => path))
  const isOwn = ({ at }: Problem): boolean => placed.has(at.file)
  const known = new Set(before.map(keyOf))
  // Another file may be blamed for what came in: of two with one id, say.
  const others = read.filter((problem) => !isOwn(problem) && !known.has(keyOf(problem)))
  const problems = sortProblems([...campaign.problems.filter(isOwn), ...others])
  return { campaign, problems, textOf: (file) => allTexts.get(file) }
}
