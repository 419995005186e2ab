/** What the columns of a run must have between them before anything is computed. */
import type { Columns, Method } from '../method.ts'

type Finding = ReturnType<NonNullable<Method['validate']>>[number]

export const validate = (columns: Columns): readonly Finding[] => {
  const time = columns.time?.values ?? new Float64Array(0)
  let last = Number.NEGATIVE_INFINITY
  for (let row = 0; row < time.length; row += 1) {
    const t = time[row] as number
    if (t <= last)
      return [
        {
          code: 'ring-down/time-order',
          column: 'time',
          row,
          message: 'The time does not go on from the row before',
          why: 'frequency and damping are read off the clock; a clock with too few digits shows the same time twice',
          hint: 'write the times with more digits, or as the number of the reading over the sampling rate',
        },
      ]
    if (Number.isFinite(t)) last = t
  }
  return []
}
