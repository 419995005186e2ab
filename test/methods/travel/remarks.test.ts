/** What angles do not show is said at every run: direction, and where the other controls stood. */
import { expect, test } from 'vitest'
import { method } from '../../../src/methods/travel/index.ts'
import { field, measured, rehearsed, remarksOf, type Setup } from '../bench.ts'
import { instrument } from '../parts.ts'

const DEG = Math.PI / 180
const setup: Setup = {
  method,
  inputs: {},
  words: { counted_from: 'zero' },
  fields: { positions: field(method, 'positions', { up: { nominal: '25 deg', tolerance: '2 deg' } }) },
  instruments: { angle: instrument('level', { resolution: 0.1 * DEG, offset: 0.1 * DEG }) },
}
const said = (of: Setup) => {
  const columns = rehearsed(of, { up: 25 * DEG, repeats: 3 }, 1)
  return remarksOf(of, measured(of, columns))
}

test('a pass does not answer for the direction', () => {
  const direction = said(setup).find(({ text }) => text.includes('right way'))
  expect(direction?.effect).toBe('note')
})

test('the configuration is asked for until it is given', () => {
  const missing = (of: Setup) => said(of).some(({ text }) => text.includes('`configuration` is not given'))
  expect(missing(setup)).toBe(true)
  expect(missing({ ...setup, words: { ...setup.words, configuration: 'flaps 10 deg, trim neutral' } })).toBe(
    false,
  )
})
