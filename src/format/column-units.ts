/** Units of columns, read once each: a campaign of ten thousand runs has a few dozen. */
import { converter } from '../quantity/convert.ts'
import type { Result, Unit } from '../quantity/types.ts'
import { parseUnit } from '../quantity/unit-text.ts'

export type ColumnUnit = Unit & { readonly toSI: (value: number) => number }

const known = new Map<string, Result<ColumnUnit>>()
const MOST = 500

/** The unit of a column and the way to SI. A pure function that remembers what it was asked. */
export function columnUnit(text: string): Result<ColumnUnit> {
  const remembered = known.get(text)
  if (remembered) return remembered
  const unit = parseUnit(text)
  const read: Result<ColumnUnit> = unit.ok
    ? { ok: true, value: { ...unit.value, toSI: converter(unit.value) } }
    : unit
  if (known.size < MOST) known.set(text, read)
  return read
}
