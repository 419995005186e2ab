/** A small invented campaign as texts, to be changed piece by piece: one card, one gate, one scale. */
import { type CampaignInput, computeCampaign } from '../../src/campaign/compute.ts'
import type { Campaign } from '../../src/campaign/types.ts'
import { readRecords } from '../../src/format/records.ts'
import { loadMethods } from '../../src/methods/registry.ts'
import { prepareFormulas } from '../../src/quantity/formula/index.ts'

const methods = await loadMethods()
await prepareFormulas()

/** Front matter of fields; later ones win, undefined takes one out. */
const record = (fields: Readonly<Record<string, string | undefined>>): string =>
  `---\n${Object.entries(fields)
    .flatMap(([name, value]) => (value === undefined ? [] : [`${name}: ${value}`]))
    .join('\n')}\n---\nInvented.\n`

type Fields = Readonly<Record<string, string | undefined>>

const table = (peak: number): string =>
  `|\n  time  load\n  s     N\n  0     0.0\n  10    ${peak.toFixed(1)}\n  20    ${peak.toFixed(1)}\n  30    0.0`

export const run = (day: string, peak = 110, more: Fields = {}): Readonly<Record<string, string>> => ({
  [`records/runs/${day.slice(0, 7)}/${day}-0900-pull.md`]: record({
    card: 'pull',
    when: `${day}T09:00+01:00`,
    by: '[ann]',
    witness: 'bob',
    instruments: '{load: lc}',
    readings: table(peak),
    ...more,
  }),
})

export const rework = (day: string, more: Fields = {}): Readonly<Record<string, string>> => ({
  [`records/rework/${day}-1200-change.md`]: record({
    title: 'Hook changed',
    when: `${day}T12:00+01:00`,
    by: '[ann]',
    changes: '[frame/hook]',
    ...more,
  }),
})

export const item = (id: string, more: Fields): Readonly<Record<string, string>> => ({
  [`records/items/${id}.md`]: record({
    title: `Item ${id}`,
    kind: 'discrepancy',
    raised: '{when: 2026-03-10T10:00+01:00, by: ann}',
    ...more,
  }),
})

export const meeting = (day: string, more: Fields = {}): Readonly<Record<string, string>> => ({
  [`records/readiness/${day}-1500-fly.md`]: record({
    gate: 'fly',
    when: `${day}T15:00+01:00`,
    present: '[ann, cy]',
    decision: 'go',
    ...more,
  }),
})

export const card = (more: Fields = {}): Readonly<Record<string, string>> => ({
  'shared/cards/pull.md': record({
    title: 'Pull on the hook',
    method: 'proof-load',
    owner: 'cy',
    article: 'frame',
    'stop-at': '{load: 150 N}',
    instruments: '{load: {range: 0 N .. 200 N, uncertainty: <= 2 N, resolution: <= 0.5 N}}',
    given: '{target: 100 N, hold: 5 s}',
    criteria: '{reached: {accept: peak_ratio >= 1, why: invented}}',
    ...more,
  }),
})

export const scale = (more: Fields = {}): Readonly<Record<string, string>> => ({
  'shared/instruments/lc.md': record({
    title: 'Scale',
    kind: 'load cell',
    serial: 'S-1',
    range: '0 N .. 200 N',
    resolution: '0.1 N',
    accuracy: '± 0.5 N',
    calibrations: '[{on: 2026-01-10, due: 2027-01-10, by: lab, certificate: C-1}]',
    ...more,
  }),
})

/** What stands in every campaign that is made here. */
export const BASE: Readonly<Record<string, string>> = {
  'shared/campaign.yaml':
    'title: Invented\npurpose: To test\nmain: main\ntimezone: Europe/Zurich\nrule: guarded 95 %\nreview: [trailer]\nfiles: {size: 1 MB, kinds: [jpg]}\n',
  'shared/people.yaml':
    'ann:\n  name: Ann\n  emails: [ann@example.org]\n  roles: [record]\nbob:\n  name: Bob\n  emails: [bob@example.org]\n  roles: [witness]\ncy:\n  name: Cy\n  emails: [cy@example.org]\n  roles: [review, concede]\n',
  'shared/articles/frame.md': record({ title: 'Frame', parts: '[hook, lug]' }),
  'shared/gates/fly.md': record({ title: 'Fly', order: '1', cards: '[pull]' }),
  ...card(),
  ...scale(),
}

/** The campaign of these files alone. */
export const campaignOfFiles = (
  texts: ReadonlyMap<string, string>,
  more: Pick<CampaignInput, 'history'> = {},
): Campaign => {
  const files = [...texts].map(([path, text]) => ({ path, text }))
  const { records, problems } = readRecords(files, methods)
  const asOf = '2026-04-01'
  return computeCampaign({
    records,
    problems,
    methods,
    functions: {},
    asOf,
    tool: 'test',
    texts,
    ...more,
  })
}

/** The campaign with these files in place of, or beside, those of the base. */
export const campaignOf = (...parts: readonly Readonly<Record<string, string>>[]): Campaign =>
  campaignOfFiles(new Map(Object.entries(Object.assign({}, BASE, ...parts) as Record<string, string>)))

/** Kinds of the open items, each once, sorted. */
export const kinds = (campaign: Campaign): string[] =>
  [...new Set(campaign.items.map((each) => each.kind))].sort()
