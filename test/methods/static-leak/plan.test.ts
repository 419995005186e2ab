/** The timetable at the limit against the regulation's figures, the hold against the engine. */
import { describe, expect, test } from 'vitest'
import { expectedU, holdFor, rateAt, settingOf } from '../../../src/methods/static-leak/hold-time.ts'
import { method } from '../../../src/methods/static-leak/index.ts'
import { expanded } from '../../../src/quantity/quantity.ts'
import { givensOf, measured, rehearsed, type Setup } from '../bench.ts'
import { given } from '../parts.ts'
import { asked, limit, numbersIn, numericColumn, planned, sentences } from '../plan-bench.ts'

const FOOT = 0.3048
const KNOT = 1852 / 3600
const altimeter = asked(30 * FOOT, 2 * FOOT, { drift: (20 * FOOT) / 3600 / Math.sqrt(3) })
const indicator = asked(2 * KNOT, 0.2 * KNOT, { drift: (2 * KNOT) / 3600 / Math.sqrt(3) })

/** 14 CFR 23.1325(b)(2)(i), as before amendment 64: 1000 ft, not more than 100 ft lost in a minute. */
const staticLine: Setup = {
  method,
  inputs: {
    test_climb: given(1000 * FOOT, 'length'),
    field_altitude: given(0, 'length'),
    temperature_error: given(0.1, 'temperature-difference'),
    settle: given(60, 'time'),
    hold: given(60, 'time'),
  },
  words: { side: 'static' },
  instruments: { altitude: altimeter },
}

/** FAA AC 43.13-1B, paragraph 12-59: 150 kt, not more than 10 kt lost in a minute. */
const pitotLine: Setup = {
  ...staticLine,
  inputs: {
    test_airspeed: given(150 * KNOT, 'speed'),
    temperature_error: given(0.1, 'temperature-difference'),
    settle: given(60, 'time'),
    hold: given(60, 'time'),
  },
  words: { side: 'pitot' },
  instruments: { airspeed: indicator },
}
const lines = [
  ['static', staticLine, 'altitude', 'altitude_loss', 100 * FOOT],
  ['pitot', pitotLine, 'airspeed', 'airspeed_loss', 10 * KNOT],
] as const

test('1000 ft at sea level are 3608.5 Pa of suction (U.S. Standard Atmosphere, 1976: 97,716.6 Pa)', () => {
  expect(settingOf(givensOf(staticLine), 'altitude').test).toBeCloseTo(97_716.6 - 101_325, 0)
})

describe.each(lines)('%s line', (_, setup, line, measure, loss) => {
  const setting = settingOf(givensOf(setup), line)
  const plan = planned(setup, { every: 10, limits: [limit(measure, 'below', loss)] })

  test('at the limit it loses just that in the minute after the stated pressure', () => {
    const rate = rateAt(setting, loss)
    const left = setting.toReading(setting.test * Math.exp(-60 * rate))
    expect(setting.toReading(setting.test) - left).toBeCloseTo(loss, 6)
  })

  test('a line rehearsed at its limit shows the readings of the table', () => {
    const shown = numericColumn(plan.readings, 'at the limit')
    const start = setting.toGauge(shown[0] ?? Number.NaN) / setting.test
    const perfect = { ...setup, instruments: {} }
    const columns = rehearsed(perfect, { [measure]: loss, start_ratio: start }, 1)
    expect(shown.length).toBe(13)
    columns[line]?.values.forEach((value, row) => {
      expect(shown[row]).toBeCloseTo(value, 2)
    })
  })

  test('and still shows the stated pressure, surely, when the hold begins', () => {
    const shown = numericColumn(plan.readings, 'at the limit')
    const [, , , sure] = numbersIn(plan, /then hold for/)
    expect(shown[6]).toBeGreaterThanOrEqual((sure ?? Number.NaN) - 1e-9)
    expect(sure).toBeGreaterThan(setting.toReading(setting.test))
  })

  test('what it says of U is what the engine makes of such readings', () => {
    for (const hold of [60, 180, 600]) {
      const one = {
        ...setup,
        inputs: { ...setup.inputs, hold: given(hold, 'time'), settle: given(0, 'time') },
      }
      const fields = { temperature: 'not measured' }
      const columns = rehearsed(one, { every: hold / 10, start_ratio: 1.01 }, 3)
      const found = measured({ ...one, fields }, columns).measures[measure]
      const ratio =
        expectedU(setting, givensOf(one), setup.instruments, hold) / (found ? (expanded(found)?.U ?? 0) : 0)
      expect(ratio, `${hold} s`).toBeGreaterThan(0.75)
      expect(ratio, `${hold} s`).toBeLessThan(1.3)
    }
  })

  test('the hold that it asks for brings U to a quarter of the limit, and not sooner', () => {
    const hold = holdFor(setting, givensOf(setup), setup.instruments, loss) ?? Number.NaN
    const U = (time: number) => expectedU(setting, givensOf(setup), setup.instruments, time)
    expect(U(hold)).toBeLessThanOrEqual(loss / 4)
    expect(U(hold - 2)).toBeGreaterThan(loss / 4)
  })
})

test('what cannot be told is not told', () => {
  const drifting = { ...staticLine, instruments: { altitude: asked(9, 0.6) } }
  const limits = [limit('altitude_loss', 'below', 100 * FOOT)]
  expect(sentences(planned(drifting, { limits }))).toMatch(/must state its digits and its drift/)
  const hot = {
    ...staticLine,
    inputs: { ...staticLine.inputs, temperature_error: given(500, 'temperature-difference') },
  }
  expect(sentences(planned(hot, { limits }))).toMatch(/no hold brings U down/)
  expect(planned({ ...staticLine, inputs: {} }).readings).toBeNull()
  const { field_altitude: __, ...inputs } = staticLine.inputs
  expect(sentences(planned({ ...staticLine, inputs }))).toMatch(/above what it shows with the line open/)
  expect(sentences(planned(staticLine, { stopAt: { altitude: 1000 * FOOT } }))).toMatch(/leaves no room/)
})
