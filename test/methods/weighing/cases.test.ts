/** The cases of the folder, from files to verdict. */
import { method } from '../../../src/methods/weighing/index.ts'
import { testCases } from '../cases.ts'

testCases(method, {
  'sc-01': ['platform scale', 'range: 0 kg .. 400 kg\nresolution: 0.5 kg\naccuracy: ± 0.5 kg'],
  'sc-02': ['platform scale', 'range: 0 kg .. 400 kg\nresolution: 0.5 kg\naccuracy: ± 0.5 kg'],
})
