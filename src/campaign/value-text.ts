import { formatQuantity } from '../quantity/display.ts'
import type { Quantity, Unit } from '../quantity/types.ts'

/** A value as it stands in a worked-out formula: rounded to what is known of it, with its unit, without ±. */
export const valueText = (quantity: Quantity, unit: Unit): string => {
  const { value } = formatQuantity(quantity, unit)
  return unit.text === '1' ? value : `${value} ${unit.text}`
}
