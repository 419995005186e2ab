/** The summary of very much: what a comment on a forge holds (65,536 characters, common knowledge of the trade, no source). */
import { expect, it } from 'vitest'
import { summaryMarkdown } from '../../src/views/summary-markdown.ts'
import type { RunLine, Summary } from '../../src/views/summary-types.ts'

const run = (number: number): RunLine => ({
  id: `2026-03-08-0900-pull-${number}`,
  is: 'new',
  card: 'Pull',
  article: 'frame',
  by: ['ann'],
  reviewed: [],
  before: null,
  verdict: 'fail',
  reasons: ['±'.repeat(5000)],
  criteria: [
    {
      name: 'reached',
      result: '0.8 ± 0.1',
      before: null,
      limit: 'above 1',
      probability: '< 0.1 %',
      verdict: 'fail',
    },
  ],
})

const many = (count: number): Summary => ({
  title: 'Invented',
  asOf: '2026-04-01',
  nothing: false,
  looks: Array.from({ length: count }, (_, index) => ({
    what: 'record changed',
    text: `run ${index}`,
    details: Array.from({ length: 50 }, () => ({ at: 'given volume', before: '1 L', after: '2 L' })),
  })),
  runs: Array.from({ length: count }, (_, index) => run(index)),
  cards: [{ card: 'Pull', article: 'frame', before: 'pass', after: 'fail' }],
  gates: [{ title: 'Fly', before: 'clear', after: 'held', more: ['x'.repeat(10_000)] }],
  opened: Array.from({ length: count }, () => ({ kind: 'k', title: 'title', closes: 'c' })),
  closed: [],
  shared: [],
  files: [],
  problems: [],
  oldWarnings: 3,
})

const between = { base: '0123456789', baseName: 'main', head: 'abcdef0123', uncommitted: 0 }

it('of ten thousand runs stays in bounds, keeps cards and gates, and says what was cut', () => {
  const text = summaryMarkdown(many(10_000), between)
  expect(Buffer.byteLength(text)).toBeLessThanOrEqual(65_000)
  expect(Buffer.byteLength(text)).toBeGreaterThan(50_000)
  expect(text).toContain('| Pull | frame | pass | **fail** |')
  expect(text).toContain('| Fly | clear | held |')
  expect(text).toMatch(/\*\d+ more points are not shown here: no room\.\*/)
  expect(text).toMatch(/\*\d+ more runs are not shown here: no room\.\*/)
  expect(text).toContain('10000 new runs (10000 fail)')
  expect(text).toContain('3 older warnings not shown')
})

it('of little leaves nothing out but many details of one point', () => {
  const text = summaryMarkdown(many(2), between)
  expect(text).toContain('and 38 more')
  expect(text).not.toContain('no room')
})
