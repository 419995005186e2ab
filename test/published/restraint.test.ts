/**
 * 14 CFR 23.561(b) by amendment. The rule as of amendment 62 was read in an opened copy of the eCFR and of the CFR
 * page; what each amendment changed, in a compilation of the final rules (29 FR 17955, 34 FR 13078, 53 FR 30802,
 * 59 FR 25766, 61 FR 5138, 76 FR 75736) that quotes each version. 170 lb for commuters: 23.785(c), read. The 215 lb of
 * 23.785(a) is second-hand and is compared with nothing but what builders quote. 1.33: 29.785(f)(2), 29.625(d), read.
 */
import { describe, expect, test } from 'vitest'
import { call, LB, LBF, near, refusal } from '../functions/call.ts'

const factor = (amendment: number, ...words: string[]) => call('emergency_load_factor', amendment, ...words)

describe('14 CFR 23.561(b)(2): occupants', () => {
  test.each([0, 7, 36, 46, 48, 62])('amendment %d: up 3.0 or 4.5, forward 9.0, side 1.5', (amendment) => {
    for (const category of ['normal', 'utility', 'acrobatic']) {
      expect(factor(amendment, category, 'occupant', 'up')).toBe(category === 'acrobatic' ? 4.5 : 3)
      expect(factor(amendment, category, 'occupant', 'forward')).toBe(9)
      expect(factor(amendment, category, 'occupant', 'side')).toBe(1.5)
    }
  })
  test('down 6.0 came with amendment 46', () => {
    expect(factor(46, 'normal', 'occupant', 'down')).toBe(6)
    expect(factor(62, 'acrobatic', 'occupant', 'down')).toBe(6)
    expect(refusal('emergency_load_factor', 45, 'normal', 'occupant', 'down')).toMatch(/before amendment 46/)
  })
  test('the commuter category came with amendment 34 and has the factors of the normal one', () => {
    expect(factor(34, 'commuter', 'occupant', 'up')).toBe(3)
    expect(refusal('emergency_load_factor', 33, 'commuter', 'occupant', 'up')).toMatch(/amendment 34/)
  })
})

describe('14 CFR 23.561(b)(3): items of mass in the cabin', () => {
  test('from amendment 36 up 3.0, forward 18.0, side 4.5, in every category', () => {
    for (const category of ['normal', 'utility', 'acrobatic', 'commuter']) {
      expect(factor(36, category, 'item_of_mass', 'up')).toBe(3)
      expect(factor(62, category, 'item_of_mass', 'forward')).toBe(18)
      expect(factor(62, category, 'item_of_mass', 'side')).toBe(4.5)
    }
  })
  test('before it as occupants, by paragraph (e)', () => {
    expect(factor(35, 'normal', 'item_of_mass', 'forward')).toBe(9)
    expect(factor(7, 'acrobatic', 'item_of_mass', 'up')).toBe(4.5)
  })
  test('no downward factor', () => {
    expect(refusal('emergency_load_factor', 62, 'normal', 'item_of_mass', 'down')).toMatch(/no downward/)
  })
})

test('amendment 64 has no figures; an amendment is a whole number; words outside the rule are named', () => {
  expect(refusal('emergency_load_factor', 64, 'normal', 'occupant', 'up')).toMatch(/23\.2270/)
  expect(refusal('restraint_load', 65, 'normal', 'up', 80)).toMatch(/23\.2270/)
  expect(refusal('emergency_load_factor', 23.62, 'normal', 'occupant', 'up')).toMatch(
    /62 for amendment 23-62/,
  )
  expect(refusal('emergency_load_factor', -1, 'normal', 'occupant', 'up')).toMatch(/from 0 on/)
  expect(refusal('emergency_load_factor', 62, 'normal', 'occupant', 'aft')).toBe(
    'direction is one of up, forward, side, down',
  )
})

describe('loads on the attachments', () => {
  // 215 lb: 1935 lbf forward, 2573.550 lbf = 11447.72 N with the fitting factor; 645 up, 322.5 to the side. 86 kg: 7590.347 N.
  test.each([
    ['forward', 215 * LB, 2573.55 * LBF],
    ['forward', 215 * LB, 11_447.72],
    ['up', 215 * LB, 1.33 * 645 * LBF],
    ['side', 215 * LB, 1.33 * 322.5 * LBF],
    ['forward', 170 * LB, 1.33 * 1530 * LBF],
    ['forward', 86, 1.33 * 7590.347],
  ])('%s, %d kg: %d N', (direction, mass, load) => {
    near(call('restraint_load', 62, 'normal', direction, mass), load, 1e-6)
  })
  test('nobody in the seat is refused in words', () => {
    expect(refusal('restraint_load', 62, 'normal', 'forward', 0)).toMatch(/greater than 0/)
  })
  test('occupants that the rule takes', () => {
    near(call('occupant_mass', 62, 'commuter'), 170 * LB, 1e-12)
    near(call('occupant_mass', 62, 'utility'), 215 * LB, 1e-12)
    near(call('occupant_mass', 23, 'normal'), 170 * LB, 1e-12)
    expect(refusal('occupant_mass', 64, 'normal')).toMatch(/23\.2270/)
  })
})
