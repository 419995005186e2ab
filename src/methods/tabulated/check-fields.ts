/** The formulas of `measures` against the columns and givens that they name. */
import type { Method } from '../method.ts'
import { dimensionsOf, planOf } from './plan.ts'

export const checkFields: NonNullable<Method['checkFields']> = (fields, given) => {
  const plan = planOf(fields)
  const found = [...plan.faults, ...dimensionsOf(plan, given).faults]
  const clashes = plan.measures
    .filter(({ name }) => plan.columns.some((column) => column.name === name) || Object.hasOwn(given, name))
    .map(({ name }) => ({
      code: 'tabulated/measures',
      message: `\`${name}\` is the name of a column or given already`,
      start: 0,
      end: name.length,
      hint: 'give the measure another name',
      path: ['measures', name],
    }))
  return [
    ...clashes,
    ...found.map(({ measure, fault }) => ({ ...fault, path: ['measures', ...measure.path] })),
  ]
}
