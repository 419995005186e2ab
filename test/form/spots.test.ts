/** What `check` says of a run is said at the control that can mend it. */
import { expect, it } from 'vitest'
import { previewRun } from '../../src/form/preview.ts'
import { reopenRun } from '../../src/form/reopen.ts'
import { methods, pack, textOf } from './demo.ts'

const opened = reopenRun(textOf('records/runs/2026-02/2026-02-05-0935-hull-bay-leak-bay-1.md'))
if (!opened.ok) throw new Error(opened.message)
const { state } = opened
const spots = (more: object): string[] =>
  previewRun(pack, methods, { ...state, ...more }, []).findings.map(({ spot }) => spot)

it.each([
  ['article', { article: '' }],
  ['by', { by: [] }],
  ['when', { when: '2026-02-05T09:35' }],
  ['witness', { witness: 'nobody-here' }],
  ['instruments.pressure', { instruments: { ...state.instruments, pressure: '' } }],
  ['cell.3.1', { rows: state.rows.map((row, at) => (at === 3 ? row.with(1, 'low') : row)) }],
  ['ambient.temperature', { ambient: { temperature: '12', note: '' } }],
])('%s', (spot, more) => {
  expect(spots({})).toEqual([])
  expect(spots(more)).toEqual([spot])
})
