/** Positions and their ends by hand, the guard against the engine, and what is advised after. */
import { expect, test } from 'vitest'
import { method } from '../../../src/methods/travel/index.ts'
import { readPositions } from '../../../src/methods/travel/positions.ts'
import { standardUncertainty } from '../../../src/quantity/quantity.ts'
import { givensOf, measured, rehearsed, type Setup } from '../bench.ts'
import { given } from '../parts.ts'
import {
  advised,
  asked,
  known,
  numbersIn,
  numericColumn,
  planColumn,
  planned,
  sentences,
} from '../plan-bench.ts'

const DEGREE = Math.PI / 180
const read = readPositions({
  up: { nominal: '-25 deg', tolerance: '1 deg' },
  down: { nominal: '20 deg', plus: '0.5 deg', minus: '1.5 deg' },
})
const setup: Setup = {
  method,
  inputs: {},
  fields: { positions: read.ok ? read.value : [] },
  instruments: {
    angle: asked(0.3 * DEGREE, 0.1 * DEGREE, { range: { low: -45 * DEGREE, high: 45 * DEGREE } }),
  },
}
const degrees = (values: readonly number[]) => values.map((value) => Math.round((value / DEGREE) * 1e6) / 1e6)

test('ends by hand: −26° to −24°, and 18.5° to 20.5°, each three times with neutral', () => {
  const { readings } = planned(setup)
  expect(planColumn(readings, 'position')).toEqual(
    Array.from({ length: 3 }, () => ['neutral', 'up', 'down']).flat(),
  )
  expect(degrees(numericColumn(readings, 'from').slice(0, 2))).toEqual([-26, 18.5])
  expect(degrees(numericColumn(readings, 'to').slice(0, 2))).toEqual([-24, 20.5])
})

test('both sides where two surfaces are read', () => {
  const dim = [0, 0, 0, 0, 0, 0] as const
  const { readings } = planned(setup, { gauges: { side: { dim, unit: 1 } } })
  expect(readings?.rows.length).toBe(18)
  expect(planColumn(readings, 'side').slice(0, 6)).toEqual([
    'left',
    'left',
    'left',
    'right',
    'right',
    'right',
  ])
})

test('the guard is 1.645 standard uncertainties as the engine makes them', () => {
  const [guard] = numbersIn(planned(setup), /stays undetermined/)
  const columns = rehearsed(setup, { noise: 0.05 * DEGREE }, 2)
  const found = measured(setup, columns).measures.up
  const ratio = (guard ?? Number.NaN) / (1.645 * ((found && standardUncertainty(found)) ?? 0))
  expect(ratio).toBeGreaterThan(0.75)
  expect(ratio).toBeLessThan(1.25)
})

test('an instrument too coarse for the tolerance, and one that does not reach, are said', () => {
  expect(sentences(planned({ ...setup, instruments: { angle: asked(3 * DEGREE, DEGREE) } }))).toMatch(
    /can surely be in its tolerance/,
  )
  const short = {
    angle: asked(0.3 * DEGREE, 0.1 * DEGREE, { range: { low: -20 * DEGREE, high: 20 * DEGREE } }),
  }
  expect(sentences(planned({ ...setup, instruments: short }))).toMatch(/up to[\s\S]*down to/)
})

test('offset as a chord, by hand: 2 · 420 mm · sin(14°) = 203.2 mm at 28°', () => {
  const rudder = readPositions({ left: { nominal: '28 deg', tolerance: '1.5 deg' } })
  const plan = planned({
    ...setup,
    inputs: { radius: given(0.42, 'length') },
    fields: { positions: rudder.ok ? rudder.value : [] },
    instruments: { offset: asked(2e-3, 1e-3) },
  })
  expect(numericColumn(plan.readings, 'drawn')[1]).toBeCloseTo(0.84 * Math.sin(14 * DEGREE), 9)
  expect(planned({ ...setup, fields: {} }).readings).toBeNull()
})

test('advice says which stop to move how far, and nothing where all is inside', () => {
  const columns = rehearsed({ ...setup, instruments: {} }, { up: -23 * DEGREE, noise: 0 }, 1)
  const { measures } = measured({ ...setup, instruments: {} }, columns)
  const text = advised(method, measures, 'up_margin', ['above', 0], givensOf(setup))
  expect(text).toMatch(/up goes 2° short of its nominal, 1° outside its tolerance/)
  expect(text).not.toMatch(/down/)
  expect(
    advised(
      method,
      known({ up_margin: [0.01, 'angle'], up_error: [0, 'angle'] }),
      'up_margin',
      ['above', 0.02],
      givensOf(setup),
    ),
  ).toBe('')
})
