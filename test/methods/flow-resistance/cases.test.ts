/** The cases of the folder, from files to verdict. */
import { method } from '../../../src/methods/flow-resistance/index.ts'
import { testCases } from '../cases.ts'

testCases(method, {
  'fm-01': [
    'flow meter',
    'range: 0 L/min .. 20 L/min\nresolution: 0.1 L/min\naccuracy: ± 1 % reading\nlinearity: ± 0.1 L/min',
  ],
  'dp-01': ['pressure gauge', 'range: -1000 Pa .. 1000 Pa\nresolution: 1 Pa\naccuracy: ± 3 Pa'],
})
