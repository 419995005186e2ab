/** What needs columns and givens together. */
import type { Columns, Givens, Method } from '../method.ts'
import { channelsOf } from './describe.ts'
import { at, liveRows, signOf } from './readings.ts'

type Finding = ReturnType<NonNullable<Method['validate']>>[number]

/** Small cycles go both ways; the proof load goes one way, that of the target. */
const otherSign = (columns: Columns, givens: Givens): Finding[] => {
  const sign = signOf(givens)
  const half = Math.abs(givens.numbers.target ?? 0) / 2
  let [most, against, row] = [0, 0, -1]
  for (const each of liveRows(columns, givens)) {
    const load = sign * at(columns.load, each)
    if (load > most) most = load
    if (-load > against) [against, row] = [-load, each]
  }
  if (!(half > 0 && against >= half && against > most)) return []
  return [
    {
      code: 'proof-load/other-sign',
      column: 'load',
      row,
      message: 'the load goes the other way than the target',
      why: 'the sign of the load is its direction; a surface that holds upwards has not held downwards',
      hint: 'write the load with the sign of the target, or mend the sign of the load case on the card',
    },
  ]
}

export const validate = (columns: Columns, givens: Givens): readonly Finding[] => {
  const findings: Finding[] = []
  const { target } = givens.numbers
  if (target === 0)
    findings.push({
      code: 'proof-load/no-target',
      given: 'target',
      message: 'the target load is 0, so there is nothing to reach',
    })
  const { time } = columns
  const back = Array.from(time?.values ?? []).findIndex((t, row) => row > 0 && t < at(time, row - 1))
  if (back > 0)
    findings.push({
      code: 'proof-load/time-order',
      column: 'time',
      row: back,
      message: `the time of row ${back + 1} lies before that of the row above`,
      why: 'the hold is counted along the clock',
      hint: 'keep the rows in the order they were read and mend the time, or write the date change as `hh:mm` past midnight',
    })
  findings.push(...otherSign(columns, givens))
  const channels = channelsOf(Object.keys(columns))
  const [first] = channels
  const other = channels.find(
    (name) => first && columns[name]?.dim.some((x, i) => x !== columns[first]?.dim[i]),
  )
  if (first && other)
    findings.push({
      code: 'proof-load/mixed-movement',
      column: other,
      message: `\`${first}\` and \`${other}\` are not of one kind: one is a length, the other an angle`,
      why: 'the worst of all stations is shown, and a length cannot be worse than an angle',
      hint: 'give all stations as lengths or all as angles, or write two runs',
    })
  return findings
}
