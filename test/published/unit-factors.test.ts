/** Unit factors: exact definitions, and NIST SP 811 appendix B. */
import { expect, test } from 'vitest'
import { toSI } from '../../src/quantity/convert.ts'
import { dimensionUnit } from '../../src/quantity/dimension.ts'
import type { Unit } from '../../src/quantity/types.ts'
import { parseUnit } from '../../src/quantity/unit-text.ts'
import { readTable, relativeError } from './data.ts'

function unit(text: string): Unit {
  const result = parseUnit(text)
  if (!result.ok) throw new Error(`${text}: ${result.error[0]?.message}`)
  return result.value
}

/** The table's name → the text that people write here. The heads at 32 °F, 39.2 °F and 60 °F are not units here. */
const WRITTEN: Readonly<Record<string, string>> = {
  mmHg_conventional: 'mmHg',
  inHg_conventional: 'inHg',
  mmH2O_conventional: 'mmH2O',
  inH2O_conventional: 'inH2O',
  lbf_in: 'lbf·in',
  lbf_ft: 'lbf ft',
  lbf_per_in: 'lbf/in',
  in3: 'in³',
  ft3: 'ft^3',
  lb_per_USgal: 'lb/US gal',
  slug_per_ft3: 'slug/ft3',
  ft_per_min: 'ft/min',
  mbar_L_per_s: 'mbar·L/s',
  Torr_L_per_s: 'Torr*L/s',
  std_cm3_per_s_same_T: 'atm·cm³/s',
  std_cm3_per_min_same_T: 'atm cm^3/min',
}
const SI: Readonly<Record<string, string>> = { 'N m': 'N·m', m3: 'm³', 'Pa m3/s': 'Pa·m³/s', 'Pa s': 'Pa·s' }

const rows = readTable('unit_factors').filter((row) => !/_(32F|60F|39\.2F|4C)$/.test(row.unit ?? ''))

test.each(rows)(
  'NIST SP 811 / definition: $unit = $factor $si_unit',
  ({ unit: name = '', si_unit: si = '', factor }) => {
    const written = unit(WRITTEN[name] ?? name)
    expect(relativeError(written.factor, Number(factor))).toBeLessThan(3e-16)
    expect(dimensionUnit(written.dim)).toBe(dimensionUnit(unit(SI[si] ?? si).dim))
  },
)

test('every factor of the table was looked at', () => expect(rows.length).toBeGreaterThanOrEqual(35))

test.each([
  ['°F', 32, 273.15],
  ['degF', 212, 373.15],
  ['°F', -40, 233.15],
  ['°C', -273.15, 0],
] as const)('NIST SP 811 B.8, temperature: %s %d', (text, value, kelvin) => {
  expect(toSI(value, unit(text))).toBeCloseTo(kelvin, 9)
})

test.each([
  // NIST SP 811 factors times a value, rounded to six figures
  ['psi', 3.5, 24131.6505],
  ['inH2O', 18, 4483.6],
  ['mmH2O', 450, 4412.99],
] as const)('NIST SP 811 conversion: %s · %d', (text, value, pascal) => {
  expect(relativeError(toSI(value, unit(text)), pascal)).toBeLessThan(1.2e-6)
})
