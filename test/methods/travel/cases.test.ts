/** The cases of the folder, from files to verdict. */
import { method } from '../../../src/methods/travel/index.ts'
import { testCases } from '../cases.ts'

testCases(method, {
  'lv-01': ['digital level', 'range: -90 deg .. 90 deg\nresolution: 0.1 deg\naccuracy: ± 0.2 deg'],
  'rl-01': ['steel rule', 'range: -1000 mm .. 1000 mm\nresolution: 1 mm\naccuracy: ± 1 mm'],
})
