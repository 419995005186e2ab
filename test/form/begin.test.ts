/** A new run begins with what is known, and with nothing that is only likely. */
import { describe, expect, it } from 'vitest'
import { beginRun } from '../../src/form/begin.ts'
import { articleOf } from '../../src/form/state.ts'
import type { FormInstrument, FormView } from '../../src/form/view.ts'
import { pressureColumn } from './columns.ts'

const pressure = pressureColumn()
const gauge = (more: Partial<FormInstrument>): FormInstrument => ({
  id: 'pg-01',
  title: 'Gauge',
  unit: 'Pa',
  periods: [{ on: '2026-01-10', due: '2026-12-31' }],
  columns: { pressure: [] },
  ...more,
})
const view = (instrument: FormInstrument, articles = ['wing-left/tank']): FormView => ({
  card: 'tank-leak',
  title: 'Leak check',
  articles,
  people: [],
  givens: [],
  columns: [pressure],
  before: { pressure: instrument.id },
  instruments: [instrument],
  every: null,
  forge: '',
  main: 'main',
  mostBytes: 1,
  fitted: [],
  taken: [],
  cards: [],
  sources: [],
})
it('which article lies there is said by the person, where the card serves several', () => {
  const begun = beginRun(view(gauge({}), ['wing-left/tank', 'wing-right/tank']), '2026-03-04T09:12+01:00')
  expect(begun.article).toBe('')
  expect(articleOf(begun, ['wing-left/tank', 'wing-right/tank'])).toBe('')
  expect(articleOf(begun, ['wing-left/tank'])).toBe('wing-left/tank')
})

const chosen = (more: Partial<FormInstrument>): string | undefined =>
  beginRun(view(gauge(more)), '2026-03-04T09:12+01:00').instruments.pressure

describe('the instrument of the last run', () => {
  it('is chosen where it is as good as the card asks and in calibration', () => {
    expect(chosen({})).toBe('pg-01')
  })
  it.each([
    ['its calibration has lapsed', { periods: [{ on: '2025-01-10', due: '2026-03-03' }] }],
    ['it was calibrated only later', { periods: [{ on: '2026-03-05', due: '2027-03-05' }] }],
    ['it is worse than the card asks by now', { columns: { pressure: ['resolution 50 Pa, asked <= 1 Pa'] } }],
  ])('is left to the person where %s', (_, more) => {
    expect(chosen(more)).toBeUndefined()
  })
})
