/** The cases of the folder, from files to verdict. */
import { method } from '../../../src/methods/proof-pressure/index.ts'
import { testCases } from '../cases.ts'

testCases(method, {
  'pg-01': [
    'pressure gauge',
    'range: -10 kPa .. 10 kPa\nresolution: 10 Pa\naccuracy: ± 0.5 % reading\nlinearity: ± 10 Pa',
  ],
  'dg-01': ['dial gauge', 'range: 0 mm .. 10 mm\nresolution: 0.01 mm\naccuracy: ± 0.02 mm'],
})
