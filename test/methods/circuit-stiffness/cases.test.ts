/** The cases of the folder, from files to verdict. */
import method from '../../../src/methods/circuit-stiffness/index.ts'
import { testCases } from '../cases.ts'

testCases(method, {
  'lc-01': ['load cell', 'range: -150 N .. 150 N\nresolution: 0.1 N\naccuracy: ± 0.5 N\nlinearity: ± 0.1 N'],
  'dg-01': ['dial gauge', 'range: -40 mm .. 40 mm\nresolution: 0.01 mm\naccuracy: ± 0.02 mm'],
})
