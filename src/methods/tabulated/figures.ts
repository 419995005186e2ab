/** Each column that a measure takes values of, over what it is read against. */
import { fitLine, lineAt } from '../../quantity/fit.ts'
import type { Columns, Figure, Givens, Measures, Selection } from '../method.ts'
import { type Aggregate, isLabel } from './aggregates.ts'
import type { DeclaredColumn } from './columns.ts'
import { asChoice, type Choice } from './select.ts'
import { taken } from './values.ts'

const MOST_FIGURES = 8

/** What a slope, an area or a place takes it over; else the clock; else the order of the rows. */
const abscissaOf = (y: DeclaredColumn, { plan }: Choice, columns: Columns): DeclaredColumn | undefined => {
  const over = plan.aggregates.find(
    (each) => each.y.name === y.name && each.x && !isLabel(each.x) && columns[each.x.name],
  )?.x
  return (
    over ?? plan.columns.find(({ name }) => name === 'time' && name !== y.name && columns[name] !== undefined)
  )
}

const lineThrough = (columns: Columns, choice: Choice, slope: Aggregate | undefined): Figure['series'] => {
  const rows = slope && choice.picks.get(slope.key)?.rows
  if (!slope?.x || !rows || rows.length < 2) return []
  const x = taken(columns, slope.x.name, rows)
  const line = fitLine(x, taken(columns, slope.y.name, rows))
  const ends = [x.reduce((a, b) => Math.min(a, b)), x.reduce((a, b) => Math.max(a, b))]
  return [{ name: 'fit', mark: 'line', x: ends, y: ends.map((end) => lineAt(line, end)) }]
}

const plain = (name: string): string => name.replaceAll('_', ' ')

const figureOf = (y: DeclaredColumn, columns: Columns, choice: Choice): Figure[] => {
  const column = columns[y.name]
  if (!column) return []
  const x = abscissaOf(y, choice, columns)
  const rows = Int32Array.from(column.values, (_, row) => row)
  const slope = choice.plan.aggregates.find(
    (each) => each.name === 'slope' && each.y.name === y.name && each.x === x,
  )
  return [
    {
      id: y.name.replaceAll('_', '-'),
      title: `${plain(y.name)} over ${x ? plain(x.name) : 'the readings'}`,
      caption: `${y.meaning.replace(/\.$/, '')}.`,
      x: x ? { label: plain(x.name), kind: x.kind } : { label: 'reading', kind: 'count' },
      y: { label: plain(y.name), kind: y.kind },
      series: [
        {
          name: plain(y.name),
          mark: x ? 'points' : 'both',
          x: Array.from(x ? taken(columns, x.name, rows) : rows.map((row) => row + 1)),
          y: Array.from(column.values),
        },
        ...lineThrough(columns, choice, slope),
      ],
      limits: [],
      bands: [],
    },
  ]
}

export const figures = (
  _measures: Measures,
  columns: Columns,
  _givens: Givens,
  selection: Selection,
): readonly Figure[] => {
  const choice = asChoice(selection)
  const used = new Set(choice.plan.aggregates.map(({ y }) => y))
  const rows = Object.values(columns)[0]?.values.length ?? 0
  if (rows < 2) return []
  return [...used]
    .filter((y) => y.kind !== 'text' && y.name !== 'time')
    .flatMap((y) => figureOf(y, columns, choice))
    .slice(0, MOST_FIGURES)
}
