/** The cases of the folder, from files to verdict. */
import { method } from '../../../src/methods/ring-down/index.ts'
import { testCases } from '../cases.ts'

testCases(method, {
  'ac-01': ['accelerometer', 'range: -50 m/s^2 .. 50 m/s^2\nresolution: 0.01 m/s^2\naccuracy: ± 1 % reading'],
})
