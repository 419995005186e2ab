/** The cases of the folder, from files to verdict. */
import { method } from '../../../src/methods/proof-load/index.ts'
import { testCases } from '../cases.ts'

testCases(method, {
  'lc-01': [
    'load cell',
    'range: -600 N .. 600 N\nresolution: 0.5 N\naccuracy: ± 0.3 % reading\nlinearity: ± 1 N',
  ],
  'dg-01': ['dial gauge', 'range: 0 mm .. 20 mm\nresolution: 0.01 mm\naccuracy: ± 0.02 mm'],
  'tw-01': ['torque wrench', 'range: 5 N·m .. 50 N·m\nresolution: 0.5 N·m\naccuracy: ± 4 % reading'],
})
