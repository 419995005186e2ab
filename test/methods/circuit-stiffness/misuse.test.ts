/** A stiffness at the cockpit handed on as one at the surface: from the card, from the run, from another run. */
import { readFileSync } from 'node:fs'
import { beforeAll, describe, expect, test } from 'vitest'
import { computeCampaign } from '../../../src/campaign/compute.ts'
import type { Campaign } from '../../../src/campaign/types.ts'
import { readRecords } from '../../../src/format/records.ts'
import { FUNCTIONS } from '../../../src/functions/index.ts'
import method from '../../../src/methods/circuit-stiffness/index.ts'
import { prepareFormulas } from '../../../src/quantity/formula/index.ts'

beforeAll(() => prepareFormulas())

const CODE = 'circuit-stiffness/not-at-surface'
const caseFile = (file: string) =>
  readFileSync(new URL(`../../../src/methods/circuit-stiffness/cases/stiff/${file}`, import.meta.url), 'utf8')
const CARD = caseFile('elevator-stiffness.md')
const RUN = caseFile('2026-03-04-0912-elevator-stiffness.md')

const instrument = (kind: string, fields: string) =>
  `---\ntitle: ${kind}\nkind: ${kind}\nserial: X-1\n${fields}\ncalibrations:\n  - {on: 2026-01-10, due: 2027-01-10, by: invented, certificate: none}\n---\nInvented.\n`

const BASE = {
  'shared/campaign.yaml':
    'title: Invented\npurpose: To test one method\nmain: main\ntimezone: Europe/Zurich\nrule: guarded 95 %\nreview: [trailer]\nfiles: {size: 8 MB, kinds: [jpg]}\n',
  'shared/people.yaml': 'moduya:\n  name: M. Oduya\n  emails: [m.oduya@example.org]\n  roles: [record]\n',
  'shared/articles/elevator.md': '---\ntitle: Elevator circuit\nparts: [rod]\n---\n',
  'shared/instruments/lc-01.md': instrument(
    'load cell',
    'range: -150 N .. 150 N\nresolution: 0.1 N\naccuracy: ± 0.5 N',
  ),
  'shared/instruments/dg-01.md': instrument(
    'dial gauge',
    'range: -40 mm .. 40 mm\nresolution: 0.01 mm\naccuracy: ± 0.02 mm',
  ),
}

const campaignOf = (files: Readonly<Record<string, string>>): Campaign => {
  const methods = { 'circuit-stiffness': method }
  const texts = Object.entries({ ...BASE, ...files }).map(([path, text]) => ({ path, text }))
  const { records, problems } = readRecords(texts, methods)
  return computeCampaign({
    records,
    problems,
    methods,
    functions: FUNCTIONS,
    asOf: '2026-03-09',
    tool: 'test',
  })
}

const CARD_PATH = 'shared/cards/elevator-stiffness.md'
const RUN_PATH = 'records/runs/2026-03/2026-03-04-0912-elevator-stiffness.md'
const codes = (campaign: Campaign) => campaign.problems.map(({ code }) => code)
const accepting = (formula: string) => CARD.replace('surface_stiffness > 400 N·m/rad', formula)
const KEPT = 'deflection_kept(stiffness, 60 N·m/rad) >= 80 %'

describe('which end was loaded', () => {
  test('surface: the stiffness is that at the surface', () => {
    const campaign = campaignOf({ [CARD_PATH]: accepting(KEPT), [RUN_PATH]: RUN })
    expect(codes(campaign)).toEqual([])
    expect(campaign.runs[0]?.verdict).toBe('pass')
  })

  test('cockpit on the card: the card is in error, and the run has no verdict but says why', () => {
    const card = accepting(KEPT).replace('loaded_end: surface', 'loaded_end: cockpit')
    const campaign = campaignOf({ [CARD_PATH]: card, [RUN_PATH]: RUN })
    expect(codes(campaign)).toEqual([CODE])
    const [problem] = campaign.problems
    expect(problem?.at.file).toBe(CARD_PATH)
    expect(problem?.hint).toContain('surface_stiffness')
    expect(campaign.runs[0]).toMatchObject({ verdict: 'undetermined', computed: null })
    expect(campaign.runs[0]?.reasons.join()).toContain('at the cockpit')
  })

  test('cockpit for one article alone', () => {
    const card = accepting(KEPT)
      .replace('article: elevator', 'articles:\n  elevator: {loaded_end: cockpit}')
      .replace('  loaded_end: surface\n', '')
    expect(codes(campaignOf({ [CARD_PATH]: card }))).toEqual([CODE])
  })

  test('cockpit in the run alone: the run is named', () => {
    const card = accepting(KEPT)
      .replace('  loaded_end: surface\n', '')
      .replace('given:\n', 'ask: [loaded_end]\ngiven:\n')
    const run = (end: string) => RUN.replace('readings:', `given: {loaded_end: ${end}}\nreadings:`)
    expect(codes(campaignOf({ [CARD_PATH]: card, [RUN_PATH]: run('surface') }))).toEqual([])
    const campaign = campaignOf({ [CARD_PATH]: card, [RUN_PATH]: run('cockpit') })
    expect(codes(campaign)).toEqual([CODE])
    expect(campaign.problems[0]?.message).toContain('2026-03-04-0912-elevator-stiffness')
    expect(campaign.runs[0]?.verdict).toBe('undetermined')
  })
})

describe('a result of another run handed to a general function', () => {
  const later = (given: string, formula = 'surface_frequency(rod, 0.1 kg·m^2) > 1 Hz') => ({
    'shared/cards/elevator-again.md': CARD.replace('given:\n', `given:\n  rod: ${given}\n`).replace(
      'surface_stiffness > 400 N·m/rad',
      formula,
    ),
    'records/runs/2026-03/2026-03-05-0912-elevator-again.md': RUN.replaceAll(
      'card: elevator-stiffness',
      'card: elevator-again',
    ).replaceAll('2026-03-04', '2026-03-05'),
  })
  const from = (measure: string) => `{from: 2026-03-04-0912-elevator-stiffness, measure: ${measure}}`
  const cockpit = CARD.replace('loaded_end: surface', 'loaded_end: cockpit\n  gearing: 1.20 ± 0.02').replace(
    'criteria:\n',
    'derive:\n  soft: min(stiffness_positive, stiffness_negative)\n  at_surface: soft / gearing^2\ncriteria:\n',
  )
  const codesWith = (card: string, given: string, formula?: string) =>
    codes(campaignOf({ [CARD_PATH]: card, [RUN_PATH]: RUN, ...later(given, formula) }))

  test('at the surface, or taken there, it is right', () => {
    expect(codesWith(CARD, from('stiffness'))).toEqual([])
    expect(codesWith(cockpit, from('surface_stiffness'))).toEqual([])
    expect(codesWith(cockpit, from('at_surface'))).toEqual([])
  })
  test('at the cockpit it is not, nor through a derived value there', () => {
    expect(codesWith(cockpit, from('stiffness'))).toEqual([CODE])
    expect(codesWith(cockpit, from('soft'))).toEqual([CODE])
    expect(codesWith(cockpit, from('soft'), 'surface_frequency(2 * rod, 0.1 kg·m^2) > 1 Hz')).toEqual([CODE])
  })
})
