/** The cases of the folder, from files to verdict. */
import { method } from '../../../src/methods/mass-balance/index.ts'
import { testCases } from '../cases.ts'

testCases(method, {
  'sc-03': ['bench scale', 'range: 0 kg .. 5 kg\nresolution: 1 g\naccuracy: ± 1 g'],
  'rl-01': ['steel rule', 'range: 0 mm .. 1000 mm\nresolution: 1 mm\naccuracy: ± 0.5 mm'],
})
