/** The unit that each measure is shown in. */
import type { CardRecord } from '../format/types.ts'
import { dimensionUnit, sameDimension } from '../quantity/dimension.ts'
import { KINDS, type Kind } from '../quantity/kinds.ts'
import { keptWith } from '../quantity/lazily.ts'
import type { Dimension, Unit } from '../quantity/types.ts'
import { parseUnit } from '../quantity/unit-text.ts'

const si = (text: string, dim: Dimension): Unit => ({ text, dim, factor: 1, offset: 0, energy: false })

/** The SI unit of a dimension, under the name of a kind where one fits. */
export const siUnit = (dim: Dimension, kind?: Kind): Unit => {
  if (kind && sameDimension(KINDS[kind].dim, dim)) return si(KINDS[kind].unit, dim)
  const fitting = Object.values(KINDS).find((info) => sameDimension(info.dim, dim))
  return si(fitting?.unit ?? dimensionUnit(dim), dim)
}

const parsed = (text: string | undefined, dim: Dimension): Unit | undefined => {
  if (!text) return undefined
  const unit = parseUnit(text)
  return unit.ok && sameDimension(unit.value.dim, dim) ? unit.value : undefined
}

/** Found once a card: its runs have the same measures. */
const unitsOf = keptWith((_: CardRecord) => new Map<string, Unit>())

/** `show` of the card for this measure, else of a criterion that is over it alone, else SI. */
export const measureUnit = (card: CardRecord, name: string, dim: Dimension, kind?: Kind): Unit => {
  const known = unitsOf(card)
  const key = `${name} ${kind} ${dim}`
  const unit = known.get(key) ?? findUnit(card, name, dim, kind)
  known.set(key, unit)
  return unit
}

const findUnit = (card: CardRecord, name: string, dim: Dimension, kind: Kind | undefined): Unit => {
  const alone = new RegExp(`^[^a-z_]*${name}\\b(?!\\()`)
  const criterion = card.criteria.find((each) => each.show && alone.test(each.accept))
  return parsed(card.show[name], dim) ?? parsed(criterion?.show, dim) ?? siUnit(dim, kind)
}

export const criterionUnit = (
  card: CardRecord,
  show: string | undefined,
  measures: readonly string[],
  dim: Dimension,
): Unit => {
  const [only, second] = measures
  const ofMeasure = only && !second ? parsed(card.show[only], dim) : undefined
  return parsed(show, dim) ?? ofMeasure ?? siUnit(dim)
}
