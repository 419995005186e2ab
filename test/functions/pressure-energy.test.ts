import { describe, expect, test } from 'vitest'
import { call, near, refusal } from './call.ts'

describe('stand-off: ASME PCC-2, SI equations, computed apart', () => {
  // Absolute pressure Pa, volume m³, then with the exponent 0.286 that the standard prints: mass of TNT kg, R of 2008,
  // R on twice the mass, table. Ours has the exponent 2/7: up to 0.1 % less energy, 0.04 % less distance.
  test.each([
    [107_894.76, 0.1, 1.182705e-4, 0.9817227, 1.236893, 30],
    [125_131.65, 0.1, 4.357462e-4, 1.516263, 1.910372, 30],
    [114_789.51, 0.06, 1.450314e-4, 1.050793, 1.323917, 30],
    [1_101_000, 1, 0.319319, 13.6701, 17.22324, 30],
    [2_101_000, 50, 35.71199, 65.86196, 82.98087, 60],
  ])('%d Pa in %d m³', (absolute, volume, mass, once, twice, table) => {
    const energy = call('stored_energy', absolute - 101_000, volume)
    near(call('tnt_mass', energy), mass, 1.1e-3)
    near(call('standoff', 'pcc2_2008', energy), once, 4e-4)
    near(call('standoff', 'pcc2_501', energy), twice, 4e-4)
    expect(call('standoff_least', energy)).toBe(table)
  })

  test('beyond 271 MJ the table ends; other editions and negative energies are refused in words', () => {
    expect(call('standoff_least', 135.5e6)).toBe(30)
    expect(call('standoff_least', 271e6)).toBe(60)
    expect(refusal('standoff_least', 1.7e9)).toMatch(/equation of standoff/)
    expect(refusal('standoff', 'pcc1', 10)).toBe('edition is one of pcc2_2008, pcc2_501')
    for (const name of ['tnt_mass', 'standoff_least']) expect(refusal(name, -1)).toMatch(/not negative/)
    expect(refusal('standoff', 'pcc2_501', -1)).toMatch(/not negative/)
  })
})

describe('energy of walls and liquid', () => {
  // 0.1 m³ of water (2.18 GPa) in a rigid tank at 3.5 psi, by hand: 0.01335634 J, some 140,000 times less than air.
  test('water stores next to nothing', () => {
    const pressure = 24_131.65
    near(call('elastic_energy', pressure, 0.1 / 2.18e9), 0.01335634, 1e-6)
    const ratio = call('stored_energy', pressure, 0.1) / call('elastic_energy', pressure, 0.1 / 2.18e9)
    expect(Math.round(ratio / 10_000)).toBe(14)
  })

  test('it is the work of raising the pressure in small steps', () => {
    const compliance = 3e-8
    let work = 0
    for (let i = 0; i < 1000; i += 1) work += (i + 0.5) * 7 * (compliance * 7)
    near(call('elastic_energy', 7000, compliance), work, 1e-12)
    expect(call('elastic_energy', -7000, compliance)).toBe(call('elastic_energy', 7000, compliance))
    expect(refusal('elastic_energy', 1, -1)).toMatch(/not negative/)
  })
})
