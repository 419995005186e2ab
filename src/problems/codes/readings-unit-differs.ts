import { LOG, READINGS } from '../example-log.ts'
import type { ProblemCode } from '../types.ts'

const code: ProblemCode = {
  code: 'readings/unit-differs',
  severity: 'warning',
  title: `The run and the data file give different units`,
  page: `The file's line of units says another unit than the run. One of the two is wrong, by a factor that no other check may catch.

Write the unit of the file; or say in the prose why the file is wrong.`,
  example: {
    wrong: `readings:
  file: 2026-03-04-0912-spring-pull.csv
  columns:
    time: {from: Zeit, format: "HH:mm:ss"}
    load: {from: Kraft, unit: lbf}
    deflection: {from: Weg, unit: mm}`,
    right: READINGS,
    data: LOG,
  },
}
export default code
