/** The cases of the folder, from files to verdict. */
import { method } from '../../../src/methods/pressure-decay/index.ts'
import { testCases } from '../cases.ts'

testCases(method, {
  'pg-07': [
    'pressure gauge',
    'range: -10 kPa .. 10 kPa\nresolution: 1 Pa\naccuracy: ± 4 Pa\ndrift: ± 2 Pa/h',
  ],
  'th-02': ['thermometer', 'range: -20 °C .. 60 °C\nresolution: 0.01 K\naccuracy: ± 0.2 K'],
  'ba-01': [
    'barometer',
    'range: 800 hPa .. 1100 hPa\nresolution: 0.1 hPa\naccuracy: ± 0.5 hPa\ndrift: ± 0.05 hPa/h',
  ],
})
