/** The cases of the folder, from files to verdict, and what planning and the codes make of them. */
import { describe, expect, test } from 'vitest'
import type { TextFile } from '../../../src/format/records.ts'
import aggregateCode from '../../../src/methods/tabulated/codes/aggregate.ts'
import columnsCode from '../../../src/methods/tabulated/codes/columns.ts'
import measuresCode from '../../../src/methods/tabulated/codes/measures.ts'
import { method } from '../../../src/methods/tabulated/index.ts'
import { casesOf, testCases } from '../cases.ts'

const instruments = {
  'sc-01': [
    'scale',
    'range: 0 lb .. 1000 lb\nresolution: 1 lb\naccuracy: ± 0.1 % reading\nlinearity: ± 0.5 lb',
  ],
  'can-01': ['measuring can', 'range: 0 L .. 2 L\nresolution: 0.01 L\naccuracy: ± 0.01 L'],
  'ta-01': ['tachometer', 'range: 0 rpm .. 4000 rpm\nresolution: 10 rpm\naccuracy: ± 10 rpm'],
  'th-01': ['thermometer', 'range: 0 °C .. 150 °C\nresolution: 0.5 °C\naccuracy: ± 1 K'],
  'lc-01': [
    'load cell',
    'range: 0 N .. 600 N\nresolution: 0.5 N\naccuracy: ± 0.3 % reading\nlinearity: ± 1 N',
  ],
} as const

testCases(method, instruments)

const { filesOf, campaignOf: campaignOfFiles } = casesOf(method, instruments)
const campaignOf = (name: string) => campaignOfFiles(filesOf(name))

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
    const codesOf = (text: string) =>
      campaignOfFiles(replaced(text.split(':')[0] ?? '', text)).problems.map((problem) => problem.code)
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
