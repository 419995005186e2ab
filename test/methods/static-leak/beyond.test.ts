/** Blown up far beyond the stated airspeed: what it loses there is not what it loses at the stated one. */
import { expect, test } from 'vitest'
import { KNOT, pitotLine, record, run } from './bench.ts'

const at = (knots: number) => ({
  ...pitotLine,
  numbers: { ...pitotLine.numbers, test_airspeed: knots * KNOT },
})
const readings = record(pitotLine, {}, 1)

test('twice the impact pressure and more bars a pass, a little more does not', () => {
  expect(run(at(140), readings).bars.join(' ')).not.toContain('of the stated one: what it loses')
  // Impact pressure goes about with the square of the airspeed: 150 kt is 2.8 times that of 90 kt.
  expect(run(at(90), readings).bars.join(' ')).toContain('of the stated one: what it loses')
})
