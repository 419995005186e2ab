/** A method's figure as a plot: in the units that the run was read in, thinned where there are more points than can be seen. */
import type { Run } from '../campaign/types.ts'
import type { Figure } from '../methods/method.ts'
import { toUnit, toUnitDifference } from '../quantity/convert.ts'
import { sameDimension } from '../quantity/dimension.ts'
import { kindUnit } from '../quantity/display.ts'
import type { Kind } from '../quantity/kinds.ts'
import { KINDS } from '../quantity/kinds.ts'
import type { Unit } from '../quantity/types.ts'
import { parseUnit } from '../quantity/unit-text.ts'
import { numberText, unitText } from './show.ts'
import type { Plot, Series, Table } from './view.ts'

const MOST_POINTS = 300
const MOST_ROWS = 60

const unitNamed = (text: string | undefined): Unit | null => {
  const unit = text ? parseUnit(text) : null
  return unit?.ok ? unit.value : null
}

/** As the run was read, else as the campaign prefers, else as a result of this run is shown, else SI. Clock columns are shown in minutes or hours. */
const axisUnit = (
  kind: Kind,
  run: Run,
  preferred: Readonly<Record<string, string>>,
  values: readonly number[],
): Unit => {
  const { dim } = KINDS[kind]
  if (kind === 'time') {
    const longest = values.reduce((most, value) => Math.max(most, Math.abs(value)), 0)
    return unitNamed(longest > 6 * 3600 ? 'h' : longest > 300 ? 'min' : 's') ?? kindUnit(kind)
  }
  const read = run.record.readings.columns.find(
    (column) => !column.text && sameDimension(column.dim, dim) && unitNamed(column.unit),
  )
  const shown = Object.values(run.units).find((unit) => sameDimension(unit.dim, dim))
  const choices = [unitNamed(read?.unit), unitNamed(preferred[kind]), shown ?? null, kindUnit(kind)]
  const unit = choices.find((choice) => choice !== null && sameDimension(choice.dim, dim)) ?? kindUnit(kind)
  // A difference of temperatures is not a point on a scale.
  return kind === 'temperature-difference' ? kindUnit(kind) : unit
}

/** Every so manieth point, first and last kept. */
const thin = <T>(points: readonly T[], most: number): T[] => {
  if (points.length <= most) return [...points]
  const step = (points.length - 1) / (most - 1)
  return Array.from({ length: most }, (_, index) => points[Math.round(index * step)]).filter(
    (point) => point !== undefined,
  )
}

const axisLabel = (label: string, unit: Unit): string =>
  unit.text === '1' ? label : `${label}, ${unitText(unit.text)}`

const tableOf = (figure: Figure, series: readonly Series[], x: string, y: string): Table => {
  const rows = series.flatMap((one) =>
    thin(one.points, MOST_ROWS).map(([px, py, U]) => ({
      cells: [[one.name], [numberText(px, 6)], [numberText(py, 6)], U === null ? [] : [numberText(U, 2)]],
    })),
  )
  const columns = [
    { text: 'series' },
    { text: x, numeric: true },
    { text: y, numeric: true },
    { text: '±', numeric: true },
  ]
  return { caption: `Values of “${figure.title}”`, columns, rows, narrow: 'scroll' }
}

export const figurePlot = (
  figure: Figure,
  run: Run,
  preferred: Readonly<Record<string, string>>,
  prefix = '',
): Plot => {
  const xUnit = axisUnit(
    figure.x.kind,
    run,
    preferred,
    figure.series.flatMap((series) => thin(series.x, 50)),
  )
  const yUnit = axisUnit(
    figure.y.kind,
    run,
    preferred,
    figure.series.flatMap((series) => thin(series.y, 50)),
  )
  const unitOf = (axis: 'x' | 'y'): Unit => (axis === 'x' ? xUnit : yUnit)
  let left = 0
  const series = figure.series.map((one): Series => {
    const points = one.x.map((x, index): readonly [number, number, number | null] => {
      const u = one.u?.[index]
      // A bar is drawn for about 95 %, twice the standard uncertainty.
      return [
        toUnit(x, xUnit),
        toUnit(one.y[index] ?? Number.NaN, yUnit),
        u === undefined ? null : toUnitDifference(2 * u, yUnit),
      ]
    })
    const finite = points.filter(([x, y]) => Number.isFinite(x) && Number.isFinite(y))
    const kept = thin(finite, MOST_POINTS)
    left += finite.length - kept.length
    return { name: one.name, mark: one.mark, muted: one.muted ?? false, points: kept }
  })
  const x = axisLabel(figure.x.label, xUnit)
  const y = axisLabel(figure.y.label, yUnit)
  const bars = figure.series.some((one) => one.u) ? ' Bars are ± 2 standard uncertainties.' : ''
  const thinned = left > 0 ? ' Drawn thinned: not every reading has a point.' : ''
  return {
    kind: 'figure',
    id: `${prefix}figure-${figure.id}`,
    title: figure.title,
    caption: [`${figure.caption.trim()}${bars}${thinned}`],
    alt: `${y} against ${x}: ${series.map((one) => one.name).join(', ')}. ${figure.caption.trim()}`,
    x,
    y,
    series,
    limits: figure.limits.map((limit) => ({
      axis: limit.axis,
      at: toUnit(limit.at, unitOf(limit.axis)),
      label: limit.label,
    })),
    bands: figure.bands.map((band) => ({
      axis: band.axis,
      from: toUnit(band.from, unitOf(band.axis)),
      to: toUnit(band.to, unitOf(band.axis)),
      label: band.label,
    })),
    places: [],
    marks: [],
    table: tableOf(figure, series, x, y),
  }
}
