/** A plot as the text of an SVG, at build time, without a canvas. */
import { parse, View } from 'vega'
import type { TopLevelSpec } from 'vega-lite'
import { compile } from 'vega-lite'
import type { Plot } from '../views/view.ts'
import { keepLast } from './keep.ts'
import { plotRows } from './rows.ts'
import { figureSpec, trendSpec } from './spec.ts'
import { tidySvg } from './tidy.ts'

const EMPTY_SETS = [
  'lines',
  'points',
  'bars',
  'limitsX',
  'limitsY',
  'refusedAbove',
  'refusedBelow',
  'bandsX',
  'bandsY',
]

/** Compiling and parsing cost more than drawing, so each chart is prepared once and fed with data after. */
const prepare = (spec: TopLevelSpec) => parse(compile(spec).spec)
let charts: {
  readonly figure: ReturnType<typeof prepare>
  readonly trend: ReturnType<typeof prepare>
} | null = null

export const renderPlot = async (plot: Plot): Promise<string> => {
  charts ??= { figure: prepare(figureSpec), trend: prepare(trendSpec) }
  const view = new View(charts[plot.kind], { renderer: 'none' })
  const rows = plotRows(plot)
  const sets = plot.kind === 'trend' ? [...EMPTY_SETS, 'places', 'marks'] : EMPTY_SETS
  for (const name of sets) view.data(name, [...(rows[name] ?? [])])
  if (plot.kind === 'trend') view.signal('extent', [0.5, plot.places.length + 0.5])
  const svg = await view.toSVG()
  view.finalize()
  return tidySvg(svg, plot)
}

const KEPT = 256

/** The same, for pages: many plots stand in two of them, most often one after the other. */
export const drawnPlot = keepLast(renderPlot, KEPT)
