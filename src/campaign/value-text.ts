import { formatQuantity } from '../quantity/display.ts'
import type { Quantity, Unit } from '../quantity/types.ts'

const FIGURES = 5

/** A value as it stands in a worked-out formula: rounded to what is known of it, with its unit, without ±. */
export const valueText = (quantity: Quantity, unit: Unit): string => {
  const { value: shown, U } = formatQuantity(quantity, unit)
  // What is worked out from exact numbers has no last digit of its own: five figures are enough to set a load by.
  const value = U === '0' ? String(Number(Number(shown).toPrecision(FIGURES))) : shown
  return unit.text === '1' ? value : `${value} ${unit.text}`
}
