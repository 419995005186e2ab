/** The cases of the folder through the whole pipeline: files in, verdict and problems out. */
import { readdirSync, readFileSync } from 'node:fs'
import { beforeAll, describe, expect, test } from 'vitest'
import { computeCampaign } from '../../../src/campaign/compute.ts'
import { readRecords, type TextFile } from '../../../src/format/records.ts'
import aggregateCode from '../../../src/methods/tabulated/codes/aggregate.ts'
import columnsCode from '../../../src/methods/tabulated/codes/columns.ts'
import measuresCode from '../../../src/methods/tabulated/codes/measures.ts'
import { method } from '../../../src/methods/tabulated/index.ts'
import { prepareFormulas } from '../../../src/quantity/formula/index.ts'

type Expectation = { verdict: string | null; problems: string[]; reason?: string }

const folder = new URL('../../../src/methods/tabulated/cases/', import.meta.url)
const expected: Record<string, Expectation> = JSON.parse(readFileSync(new URL('expect.json', folder), 'utf8'))

const instrumentText = (kind: string, fields: string): string =>
  `---\ntitle: Invented\nkind: ${kind}\nserial: X-1\n${fields}\ncalibrations:\n  - {on: 2026-01-10, due: 2027-01-10, by: invented, certificate: none}\n---\nInvented.\n`

const BASE: Readonly<Record<string, string>> = {
  'shared/campaign.yaml':
    'title: Invented\npurpose: To test one method\nmain: main\ntimezone: Europe/Zurich\nrule: guarded 95 %\nreview: [trailer]\nfiles: {size: 8 MB, kinds: [jpg]}\n',
  'shared/people.yaml': 'moduya:\n  name: M. Oduya\n  emails: [m.oduya@example.org]\n  roles: [record]\n',
  'shared/articles/wing-left.md': '---\ntitle: Left wing\nparts: [tip]\n---\n',
  'shared/articles/wing-left/tank.md': '---\ntitle: Left tank\nparts: [skin]\n---\n',
  'shared/instruments/sc-01.md': instrumentText(
    'scale',
    'range: 0 lb .. 1000 lb\nresolution: 1 lb\naccuracy: ± 0.1 % reading\nlinearity: ± 0.5 lb',
  ),
  'shared/instruments/can-01.md': instrumentText(
    'measuring can',
    'range: 0 L .. 2 L\nresolution: 0.01 L\naccuracy: ± 0.01 L',
  ),
  'shared/instruments/ta-01.md': instrumentText(
    'tachometer',
    'range: 0 rpm .. 4000 rpm\nresolution: 10 rpm\naccuracy: ± 10 rpm',
  ),
  'shared/instruments/th-01.md': instrumentText(
    'thermometer',
    'range: 0 °C .. 150 °C\nresolution: 0.5 °C\naccuracy: ± 1 K',
  ),
  'shared/instruments/lc-01.md': instrumentText(
    'load cell',
    'range: 0 N .. 600 N\nresolution: 0.5 N\naccuracy: ± 0.3 % reading\nlinearity: ± 1 N',
  ),
}

const filesOf = (name: string): TextFile[] => [
  ...Object.entries(BASE).map(([path, text]) => ({ path, text })),
  ...readdirSync(new URL(`${name}/`, folder)).map((file) => ({
    path: /^\d/.test(file) ? `records/runs/${file.slice(0, 7)}/${file}` : `shared/cards/${file}`,
    text: readFileSync(new URL(`${name}/${file}`, folder), 'utf8'),
  })),
]

const campaignOf = (name: string) => {
  const methods = { tabulated: method }
  const { records, problems } = readRecords(filesOf(name), methods)
  return computeCampaign({ records, problems, methods, functions: {}, asOf: '2026-03-05', tool: 'test' })
}

beforeAll(() => prepareFormulas())

test('every case says what is expected of it', () => {
  const folders = readdirSync(folder, { withFileTypes: true }).filter((entry) => entry.isDirectory())
  expect(folders.map((entry) => entry.name).sort()).toEqual(Object.keys(expected).sort())
})

describe.each(Object.entries(expected))('%s', (name, { verdict, problems: codes, reason }) => {
  test(`is ${verdict}`, () => {
    const campaign = campaignOf(name)
    expect(campaign.problems.map(({ code, message }) => ({ code, message }))).toMatchObject(
      codes.map((code) => ({ code })),
    )
    expect(campaign.problems).toHaveLength(codes.length)
    const [run] = campaign.runs
    expect(run?.verdict ?? null, run?.reasons.join('; ')).toBe(verdict)
    if (reason) expect(run?.reasons.join(' ')).toContain(reason)
  })
})

test('problems of a formula stand at the piece of it that is wrong', () => {
  const [problem] = campaignOf('bare-column').problems
  expect(problem?.message).toBe('`rpm` is a column, and a formula needs one value')
  const card = filesOf('bare-column').find(({ path }) => path.startsWith('shared/cards'))?.text ?? ''
  const line = card.split('\n')[(problem?.at.line ?? 0) - 1] ?? ''
  expect(line.slice((problem?.at.column ?? 0) - 1, (problem?.at.endColumn ?? 0) - 1)).toBe('rpm')
})

describe('examples of the codes', () => {
  const replaced = (field: string, example: string): TextFile[] =>
    filesOf('bare-column').map(({ path, text }) => {
      if (!path.startsWith('shared/cards')) return { path, text }
      const block = new RegExp(`^${field}:\\n(?: .*\\n)+`, 'm')
      return { path, text: text.replace(block, `${example}\n`) }
    })
  test.each([columnsCode, measuresCode, aggregateCode])('$code', ({ code, example }) => {
    const codesOf = (text: string) => {
      const methods = { tabulated: method }
      const { records, problems } = readRecords(replaced(text.split(':')[0] ?? '', text), methods)
      const campaign = computeCampaign({
        records,
        problems,
        methods,
        functions: {},
        asOf: '2026-03-05',
        tool: 'test',
      })
      return campaign.problems.map((problem) => problem.code)
    }
    expect(codesOf(example.wrong)).toContain(code)
    expect(codesOf(example.right)).not.toContain(code)
  })
})

test('an instrument is asked for, and planning knows whether it can decide', () => {
  const campaign = campaignOf('weighing')
  const [state] = campaign.cards
  expect(state?.decidable.find(({ criterion }) => criterion === 'weight')?.verdict).toBe('not known')
  expect(Object.keys(campaign.runs[0]?.computed?.measures ?? {})).toContain('cg')
  const unread = campaignOf('fuel-flow')
  expect(unread.runs[0]?.units.flow?.text).toBe('L/h')
})
