/**
 * Expected rows of an inspection whose outcome is known.
 * Truth: the value of entries with limits by their names (SI; else the middle of the limits, or the one limit);
 * `not_ok` and `open`: how many of the entries without limits are left so (0).
 * The instruments of entries, by their names, add their errors and digits.
 */
import { toUnit } from '../../quantity/convert.ts'
import { normal, random, rectangular } from '../../quantity/random.ts'
import type { Column, Columns, Givens, Instruments } from '../method.ts'
import { checklistOf, type Entry, isValued } from './checklist.ts'

const expectedOf = ({ low, high }: Entry): number =>
  low && high ? (low.value + high.value) / 2 : ((low ?? high)?.value ?? Number.NaN)

const textColumn = (texts: readonly string[]): Column => ({
  values: new Float64Array(texts.length).fill(Number.NaN),
  texts,
  dim: [0, 0, 0, 0, 0, 0],
  resolution: 0,
})

export const rehearse = (
  givens: Givens,
  truth: Readonly<Record<string, number>>,
  instruments: Instruments,
  seed: number,
): Columns => {
  const generator = random(seed)
  const list = checklistOf(givens.fields)
  const plain = list.filter((entry) => !isValued(entry))
  const bad = truth.not_ok ?? 0
  const leftOut = new Set(plain.slice(bad, bad + (truth.open ?? 0)))
  const rows = list
    .filter((entry) => !leftOut.has(entry))
    .map((entry) => {
      const unit = (entry.low ?? entry.high)?.unit
      if (!unit) return { entry, answer: plain.indexOf(entry) < bad ? 'not-ok' : 'ok', unit: '-' }
      const model = instruments[entry.name]
      const error = (u: number | null | undefined) =>
        (u ?? 0) * (model?.shape === 'normal' ? normal(generator) : rectangular(generator))
      const value = (truth[entry.name] ?? expectedOf(entry)) * (1 + error(model?.gain))
      const shown = value + error(model?.offset) + error(model?.calibration)
      const digit = model && model.resolution > 0 ? model.resolution : 0.01 * unit.factor
      const places = Math.max(0, Math.ceil(-Math.log10(digit / unit.factor) - 1e-9))
      return {
        entry,
        answer: toUnit(Math.round(shown / digit) * digit, unit).toFixed(places),
        unit: unit.text,
      }
    })
  return {
    entry: textColumn(rows.map(({ entry }) => entry.name)),
    as_left: textColumn(rows.map(({ answer }) => answer)),
    unit: textColumn(rows.map(({ unit }) => unit)),
  }
}
