/** The cases of the folder through the whole pipeline: files in, verdict and problems out. */
import { readdirSync, readFileSync } from 'node:fs'
import { beforeAll, describe, expect, test } from 'vitest'
import { computeCampaign } from '../../../src/campaign/compute.ts'
import { readRecords, type TextFile } from '../../../src/format/records.ts'
import expected from '../../../src/methods/pressure-decay/cases/expect.json' with { type: 'json' }
import { method } from '../../../src/methods/pressure-decay/index.ts'
import { prepareFormulas } from '../../../src/quantity/formula/index.ts'

const folder = new URL('../../../src/methods/pressure-decay/cases/', import.meta.url)

const instrumentText = (title: string, kind: string, fields: string): string =>
  `---\ntitle: ${title}\nkind: ${kind}\nserial: X-1\n${fields}\ncalibrations:\n  - {on: 2026-01-10, due: 2027-01-10, by: invented, certificate: none}\n---\nInvented.\n`

const BASE: Readonly<Record<string, string>> = {
  'shared/campaign.yaml':
    'title: Invented\npurpose: To test one method\nmain: main\ntimezone: Europe/Zurich\nrule: guarded 95 %\nreview: [trailer]\nfiles: {size: 8 MB, kinds: [jpg]}\n',
  'shared/people.yaml': 'moduya:\n  name: M. Oduya\n  emails: [m.oduya@example.org]\n  roles: [record]\n',
  'shared/articles/wing-left.md': '---\ntitle: Left wing\nparts: [tip]\n---\n',
  'shared/articles/wing-left/tank.md': '---\ntitle: Left tank\nparts: [skin]\n---\n',
  'shared/instruments/pg-07.md': instrumentText(
    'Gauge',
    'pressure gauge',
    'range: -10 kPa .. 10 kPa\nresolution: 1 Pa\naccuracy: ± 4 Pa\ndrift: ± 2 Pa/h',
  ),
  'shared/instruments/th-02.md': instrumentText(
    'Thermometer',
    'thermometer',
    'range: -20 °C .. 60 °C\nresolution: 0.01 K\naccuracy: ± 0.2 K',
  ),
  'shared/instruments/ba-01.md': instrumentText(
    'Barometer',
    'barometer',
    'range: 800 hPa .. 1100 hPa\nresolution: 0.1 hPa\naccuracy: ± 0.5 hPa\ndrift: ± 0.05 hPa/h',
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
    const methods = { 'pressure-decay': method }
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
