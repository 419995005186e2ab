/** The cases of the folder through the whole pipeline: files in, verdict and problems out. */
import { readdirSync, readFileSync } from 'node:fs'
import { beforeAll, describe, expect, test } from 'vitest'
import { computeCampaign } from '../../../src/campaign/compute.ts'
import { readRecords, type TextFile } from '../../../src/format/records.ts'
import expected from '../../../src/methods/circuit-stiffness/cases/expect.json' with { type: 'json' }
import method from '../../../src/methods/circuit-stiffness/index.ts'
import { prepareFormulas } from '../../../src/quantity/formula/index.ts'

const folder = new URL('../../../src/methods/circuit-stiffness/cases/', import.meta.url)

const instrumentText = (title: string, kind: string, fields: string): string =>
  `---\ntitle: ${title}\nkind: ${kind}\nserial: X-1\n${fields}\ncalibrations:\n  - {on: 2026-01-10, due: 2027-01-10, by: invented, certificate: none}\n---\nInvented.\n`

const BASE: Readonly<Record<string, string>> = {
  'shared/campaign.yaml':
    'title: Invented\npurpose: To test one method\nmain: main\ntimezone: Europe/Zurich\nrule: guarded 95 %\nreview: [trailer]\nfiles: {size: 8 MB, kinds: [jpg]}\n',
  'shared/people.yaml': 'moduya:\n  name: M. Oduya\n  emails: [m.oduya@example.org]\n  roles: [record]\n',
  'shared/articles/elevator.md': '---\ntitle: Elevator circuit\nparts: [rod]\n---\n',
  'shared/instruments/lc-01.md': instrumentText(
    'Load cell',
    'load cell',
    'range: -150 N .. 150 N\nresolution: 0.1 N\naccuracy: ± 0.5 N\nlinearity: ± 0.1 N',
  ),
  'shared/instruments/dg-01.md': instrumentText(
    'Dial gauge',
    'dial gauge',
    'range: -40 mm .. 40 mm\nresolution: 0.01 mm\naccuracy: ± 0.02 mm',
  ),
}

const filesOf = (name: string): TextFile[] => [
  ...Object.entries(BASE).map(([path, text]) => ({ path, text })),
  ...readdirSync(new URL(`${name}/`, folder)).map((file) => ({
    path: /^\d/.test(file) ? `records/runs/${file.slice(0, 7)}/${file}` : `shared/cards/${file}`,
    text: readFileSync(new URL(`${name}/${file}`, folder), 'utf8'),
  })),
]

beforeAll(() => prepareFormulas())

test('every case says what is expected of it', () => {
  const folders = readdirSync(folder, { withFileTypes: true }).filter((entry) => entry.isDirectory())
  expect(folders.map((entry) => entry.name).sort()).toEqual(Object.keys(expected).sort())
})

describe.each(Object.entries(expected))('%s', (name, expectation) => {
  test(`is ${expectation.verdict}`, () => {
    const methods = { 'circuit-stiffness': method }
    const { records, problems } = readRecords(filesOf(name), methods)
    const campaign = computeCampaign({
      records,
      problems,
      methods,
      functions: {},
      asOf: '2026-03-05',
      tool: 'test',
    })
    expect(campaign.problems.map((problem) => problem.code)).toEqual(expectation.problems)
    const [run] = campaign.runs
    expect(run?.verdict).toBe(expectation.verdict)
    if ('reason' in expectation) expect(run?.reasons.join(' ')).toContain(expectation.reason)
  })
})
