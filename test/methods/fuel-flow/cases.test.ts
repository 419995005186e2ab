/** The cases of the folder, from files to verdict. */
import { method } from '../../../src/methods/fuel-flow/index.ts'
import { testCases } from '../cases.ts'

testCases(method, {
  'sc-03': ['bench scale', 'range: 0 kg .. 10 kg\nresolution: 1 g\naccuracy: ± 5 g'],
  'rl-01': ['steel rule', 'range: 0 mm .. 1000 mm\nresolution: 1 mm\naccuracy: ± 1 mm'],
  'cn-01': ['measuring can', 'range: 0 L .. 5 L\nresolution: 10 mL\naccuracy: ± 10 mL'],
})
