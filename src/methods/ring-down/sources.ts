/** The clock of the logger: a wrong rate moves every frequency by as much, and no ratio. */
import type { Columns, ExtraSource, Givens } from '../method.ts'

const QUARTZ = 1e-4

export const sources = (_: Columns, givens: Givens): readonly ExtraSource[] => {
  const limits = givens.numbers.clock_error ?? QUARTZ
  if (!(limits > 0)) return []
  const u = limits / Math.sqrt(3)
  return [
    {
      source: 'rate_of_the_clock',
      label: 'rate of the logger’s clock',
      shape: 'rectangular',
      perturb: (columns, same, z) => {
        const { time } = columns
        if (!time) return { columns, givens: same }
        const values = time.values.map((t) => t * (1 + z * u))
        return { columns: { ...columns, time: { ...time, values } }, givens: same }
      },
    },
  ]
}
