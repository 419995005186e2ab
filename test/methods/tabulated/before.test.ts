/** What a card of formulas says before the test: limits on its columns, rows by its words, readings that a line needs. */
import { expect, test } from 'vitest'
import { method } from '../../../src/methods/tabulated/index.ts'
import type { Setup } from '../bench.ts'
import { asked, limit, numbersIn, planColumn, planned, sentences } from '../plan-bench.ts'
import { fieldsOf } from './bench.ts'

const fields = fieldsOf({
  columns: {
    time: { unit: 's', meaning: 'time' },
    phase: { unit: 'text', words: ['warm', 'full', 'idle'], meaning: 'what is done' },
    speed: { unit: 'rpm', meaning: 'speed' },
    oil: { unit: 'bar', meaning: 'oil pressure' },
  },
  measures: {
    static_speed: 'at(speed, phase, full)',
    lowest_oil: 'min(oil)',
    twice: '2 * max(oil)',
    rate: 'slope(oil, time)',
  },
})
const setup: Setup = {
  method,
  inputs: {},
  fields,
  instruments: { oil: asked(1e4, 1e3, { range: { low: 0, high: 1e5 } }) },
}

test('a limit on one aggregate is one on the gauge; on a sum of several it is not', () => {
  const plan = planned(setup, { limits: [limit('lowest_oil', 'above', 1.5e5), limit('twice', 'below', 1e6)] })
  expect(sentences(plan)).toMatch(/the lowest oil must be above \{150000\}/)
  expect(numbersIn(plan, /Out of range/)).toEqual([1e5, 1.5e5])
  expect(sentences(plan)).not.toMatch(/1000000/)
})

test('each word has a row, and three where a formula looks; a line needs five readings', () => {
  const plan = planned(setup)
  expect(planColumn(plan.readings, 'phase')).toEqual(['warm', 'full', 'full', 'full', 'idle'])
  expect(sentences(plan)).toMatch(/Read oil at least 5 times/)
})

test('without words there are no rows', () => {
  const bare = fieldsOf({
    columns: { oil: { unit: 'bar', meaning: 'oil' } },
    measures: { highest: 'max(oil)' },
  })
  expect(planned({ ...setup, fields: bare })).toEqual({ steps: null, readings: null, text: [] })
})
