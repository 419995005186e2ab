/** The cases of the folder, from files to verdict. */
import { method } from '../../../src/methods/static-leak/index.ts'
import { testCases } from '../cases.ts'

testCases(method, {
  'al-01': ['altimeter', 'range: -1000 ft .. 20000 ft\nresolution: 1 ft\naccuracy: ± 20 ft\ndrift: ± 5 ft/h'],
  'th-02': ['thermometer', 'range: -20 °C .. 60 °C\nresolution: 0.01 K\naccuracy: ± 0.2 K'],
})
