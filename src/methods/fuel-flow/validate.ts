/** What columns and givens must have between them: a density, one quantity, an amount that grows. */
import type { Columns, Givens, Method } from '../method.ts'
import { isKind } from './schema.ts'
import { at, select } from './select.ts'

type Finding = ReturnType<NonNullable<Method['validate']>>[number]

const density = (columns: Columns, { numbers, dims }: Givens): Finding[] => {
  const read = columns.mass && !columns.volume ? 'mass' : 'volume'
  const asked = isKind(dims?.required, 'mass-flow') ? 'mass' : 'volume'
  if (numbers.density !== undefined || read === asked) return []
  return [
    {
      code: 'fuel-flow/no-density',
      given: 'density',
      message: `a ${read} was read and the consumption is a ${asked} per time: the density of the fuel is missing`,
      why: 'it varies with kind and temperature of the fuel, petrol by a tenth of a per cent per kelvin',
      hint: 'measure it with a hydrometer on the day: `density: 0.722 ± 0.002 kg/L`',
    },
  ]
}

export const validate = (columns: Columns, givens: Givens): readonly Finding[] => {
  const findings = density(columns, givens)
  if (columns.volume && columns.mass)
    findings.push({
      code: 'fuel-flow/two-quantities',
      column: 'mass',
      message: 'both `volume` and `mass` were read, and nothing says which counts',
      hint: 'keep one of them; the other may go into a note',
    })
  const { rows, collected } = select(columns)
  const resolution = columns[collected]?.resolution ?? 0
  const falls = rows.find((row, k) => {
    const before = at(columns, collected, rows[k - 1] ?? -1)
    return before - at(columns, collected, row) > Math.max(resolution, 0.02 * Math.abs(before))
  })
  if (falls !== undefined)
    findings.push({
      code: 'fuel-flow/falls',
      column: collected,
      row: falls,
      message: `the ${collected} in row ${falls + 1} is less than in the row above`,
      why: 'the column is what has run into the can so far, which only grows',
      hint: 'write what has run so far, not what is left in the tank nor what came since the last reading',
    })
  return findings
}
