/** A method's plan in the units of the gauge: sentences and tables. */
import { type Bench, gaugeUnit, instrumentFor } from '../campaign/plan/gauges.ts'
import { plannedSchema } from '../campaign/schema.ts'
import { differenceOf } from '../campaign/stated.ts'
import type { CardState } from '../campaign/types.ts'
import { measureUnit } from '../campaign/units.ts'
import type { ColumnField } from '../methods/method.ts'
import type { PlanNumber, PlanTable, PlanText } from '../methods/plan.ts'
import { printed, toUnit } from '../quantity/display.ts'
import { KINDS, type Kind } from '../quantity/kinds.ts'
import type { Unit } from '../quantity/types.ts'
import { strong } from './page.ts'
import { numberText, unitText } from './show.ts'
import type { Site } from './site.ts'
import type { Rich } from './view.ts'

/** What a card on an article is read with: columns of its method, each with the unit and the digit of its gauge. */
export type Gauges = {
  readonly bench: Bench
  readonly fields: readonly ColumnField[]
  readonly unit: (of: string | undefined, kind: Kind) => Unit
  /** Smallest step of the display, SI; undefined where not known. */
  readonly digit: (of: string | undefined) => number | undefined
}

export const gaugesOf = (state: CardState, site: Site): Gauges => {
  const { card, method } = state
  const { records, runs, asOf } = site.campaign
  const bench: Bench = { records, runs, card, day: asOf }
  const fields = method ? plannedSchema(method, card).columns : []
  const fieldOf = (of: string | undefined) => fields.find((field) => field.name === of)
  return {
    bench,
    fields,
    unit: (of, kind) => {
      const field = fieldOf(of)
      if (field && field.kind !== 'text') return gaugeUnit(bench, field)
      return measureUnit(card, of ?? '', KINDS[kind].dim, kind)
    },
    digit: (of) => {
      if (of === undefined || !fieldOf(of)) return undefined
      const stated = instrumentFor(bench, of)?.resolution ?? card.instruments[of]?.resolution
      return stated && differenceOf(stated)
    },
  }
}

/** `2 h 20 min`, `15 s` */
export const durationText = (seconds: number): string => {
  const whole = Math.round(seconds)
  const [hours, minutes, rest] = [Math.floor(whole / 3600), Math.floor((whole % 3600) / 60), whole % 60]
  const pieces = [
    hours > 0 ? `${hours} h` : '',
    minutes > 0 ? `${minutes} min` : '',
    rest > 0 ? `${rest} s` : '',
  ]
  if (seconds < 10) return `${Number(seconds.toPrecision(2))} s`
  return pieces.filter((piece) => piece !== '').join(' ')
}

const FIGURES = 4

/** A stop-at value in the unit of the gauge: what whoever holds the valve looks at. */
export const stopText = (limit: { readonly value: number }, unit: Unit): string =>
  `${plain(toUnit(limit.value, unit), 4)} ${unitText(unit.text)}`

/** A number that nobody measured: no zeros at its end. */
export const plain = (x: number, figures: number): string => {
  const size = Math.abs(x)
  if (size !== 0 && (size < 1e-3 || size >= 1e6)) return numberText(x, figures)
  return printed(String(Number(x.toPrecision(figures))))
}

export const planNumber = ({ value, kind, of, figures = FIGURES }: PlanNumber, gauges: Gauges): string => {
  const isColumn = gauges.fields.some((field) => field.name === of)
  if (kind === 'time' && !isColumn) return durationText(value)
  const unit = gauges.unit(of, kind)
  const number = plain(toUnit(value, unit), figures)
  return unit.text === '1' ? number : `${number} ${unitText(unit.text)}`
}

export const planSentence = (text: PlanText, gauges: Gauges, site: Site): Rich =>
  text.flatMap(
    (piece): Rich => (typeof piece === 'string' ? site.linked(piece) : [strong(planNumber(piece, gauges))]),
  )

type PlanColumn = PlanTable['columns'][number]

/** A number in the unit of the gauge, to its digit. */
const planValue = (value: number, column: PlanColumn, gauges: Gauges): number => {
  const digit = gauges.digit(column.of)
  const rounded = digit ? Math.round(value / digit) * digit : value
  return Number(toUnit(rounded, gauges.unit(column.of, column.kind)).toPrecision(digit ? 6 : FIGURES))
}

const decimals = (x: number): number => /\.(\d+)$/.exec(String(x))?.[1]?.length ?? 0

/** One column of a plan as texts, all with as many decimals as the finest of them; the unit stands over the column. */
export const planColumn = (table: PlanTable, at: number, gauges: Gauges): string[] => {
  const column = table.columns[at]
  const cells = table.rows.map((row) => row[at] ?? null)
  if (!column) return cells.map(() => '')
  const values = cells.map((cell) => (typeof cell === 'number' ? planValue(cell, column, gauges) : cell))
  const finest = Math.max(0, ...values.map((value) => (typeof value === 'number' ? decimals(value) : 0)))
  return values.map((value) =>
    typeof value === 'number' ? printed((value + 0).toFixed(finest)) : (value ?? ''),
  )
}

/** `load to reach, N` */
export const planHead = (column: PlanColumn, gauges: Gauges): string => {
  if (column.kind === 'text') return column.title
  const unit = gauges.unit(column.of, column.kind).text
  return unit === '1' ? column.title : `${column.title}, ${unitText(unit)}`
}
