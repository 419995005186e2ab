/**
 * The two Vega-Lite charts of the site: a figure of a run, and a measure over rounds. Each is compiled once; the
 * numbers come in as named data sets. Colours are the style sheet's variables, so that a plot follows light and
 * dark; text in `«»` is put in after drawing. No axis is a time scale: nothing depends on a time zone.
 */
import type { TopLevelSpec } from 'vega-lite'

export const WIDTH = 440
export const HEIGHT = 236

const quantitative = (field: string, more: object = {}) => ({ field, type: 'quantitative' as const, ...more })
const asIs = (field: string) => ({ field, type: 'nominal' as const, scale: null })

const axisY = {
  title: '«y»',
  titleAngle: 0,
  titleAlign: 'left' as const,
  titleBaseline: 'bottom' as const,
  titleAnchor: 'end' as const,
  titleX: -44,
  titleY: -10,
  minExtent: 44,
  maxExtent: 44,
  tickCount: 5,
  grid: true,
  domain: false,
  ticks: false,
  labelPadding: 6,
}
const y = (field: string) => quantitative(field, { axis: axisY, scale: { zero: false, nice: true } })

/** Limits, bands and error bars: the same in both charts. `x` is how a chart places its x. */
const sharedLayers = (x: (field: string) => object) => [
  {
    data: { name: 'bandsX' },
    mark: { type: 'rect', color: 'var(--wash)' },
    encoding: { x: x('from'), x2: { field: 'to' }, y: { value: 0 }, y2: { value: HEIGHT } },
  },
  {
    data: { name: 'bandsY' },
    mark: { type: 'rect', color: 'var(--wash)' },
    encoding: { y: y('from'), y2: { field: 'to' }, x: { value: 0 }, x2: { value: WIDTH } },
  },
  {
    data: { name: 'refusedAbove' },
    mark: { type: 'rect', color: 'var(--fail)', opacity: 0.08 },
    encoding: { y: y('at'), y2: { value: 0 }, x: { value: 0 }, x2: { value: WIDTH } },
  },
  {
    data: { name: 'refusedBelow' },
    mark: { type: 'rect', color: 'var(--fail)', opacity: 0.08 },
    encoding: { y: y('at'), y2: { value: HEIGHT }, x: { value: 0 }, x2: { value: WIDTH } },
  },
  {
    data: { name: 'limitsY' },
    mark: { type: 'rule', color: 'var(--ink)', strokeWidth: 1.5 },
    encoding: { y: y('at') },
  },
  {
    data: { name: 'limitsX' },
    mark: { type: 'rule', color: 'var(--ink)', strokeWidth: 1.5 },
    encoding: { x: x('at') },
  },
  {
    data: { name: 'lines' },
    mark: { type: 'line', strokeWidth: 1.75 },
    encoding: {
      x: x('x'),
      y: y('y'),
      stroke: asIs('colour'),
      strokeDash: { field: 'dash', type: 'nominal', scale: null },
      detail: { field: 'series', type: 'nominal' },
      order: { field: 'order', type: 'quantitative' },
    },
  },
  {
    data: { name: 'bars' },
    mark: { type: 'rule', strokeWidth: 2.5 },
    encoding: { x: x('x'), y: y('low'), y2: { field: 'high' }, stroke: asIs('colour') },
  },
  {
    data: { name: 'points' },
    mark: { type: 'point', strokeWidth: 1.5, opacity: 1 },
    encoding: {
      x: x('x'),
      y: y('y'),
      shape: asIs('shape'),
      stroke: asIs('colour'),
      fill: asIs('fill'),
      size: { field: 'size', type: 'quantitative', scale: null },
    },
  },
  {
    data: { name: 'limitsY' },
    mark: { type: 'text', align: 'right', baseline: 'bottom', dx: -4, dy: -3, color: 'var(--ink)' },
    encoding: { y: y('at'), x: { value: WIDTH }, text: { field: 'label', type: 'nominal' } },
  },
  {
    data: { name: 'limitsX' },
    mark: { type: 'text', align: 'right', baseline: 'top', dx: -4, dy: 4, color: 'var(--ink)' },
    encoding: { x: x('at'), y: { value: 0 }, text: { field: 'label', type: 'nominal' } },
  },
  {
    data: { name: 'bandsX' },
    mark: { type: 'text', align: 'left', baseline: 'bottom', dx: 4, dy: -4, color: 'var(--soft)' },
    encoding: { x: x('from'), y: { value: HEIGHT }, text: { field: 'label', type: 'nominal' } },
  },
  {
    data: { name: 'bandsY' },
    mark: { type: 'text', align: 'left', baseline: 'top', dx: 4, dy: 4, color: 'var(--soft)' },
    encoding: { y: y('to'), x: { value: 0 }, text: { field: 'label', type: 'nominal' } },
  },
]

const config = {
  aria: false,
  background: 'transparent',
  view: { stroke: null },
  font: 'inherit',
  axis: {
    labelColor: 'var(--soft)',
    titleColor: 'var(--ink)',
    labelFontSize: 12,
    titleFontSize: 12,
    titleFontWeight: 'normal' as const,
    gridColor: 'var(--hair)',
    domainColor: 'var(--ink)',
    tickColor: 'var(--ink)',
    labelFlush: false,
    labelOverlap: true,
  },
  text: { fontSize: 12 },
}

const head = { width: WIDTH, height: HEIGHT, padding: 4, config, data: { values: [] } }

const figureX = (field: string) =>
  quantitative(field, {
    axis: {
      title: '«x»',
      titleAnchor: 'end',
      titleAlign: 'right',
      tickCount: 6,
      grid: false,
      tickSize: 4,
      titlePadding: 6,
    },
    scale: { zero: false, nice: true },
  })

export const figureSpec = { ...head, layer: sharedLayers(figureX) } as unknown as TopLevelSpec

const trendX = (field: string) =>
  quantitative(field, { axis: null, scale: { zero: false, nice: false, domain: { expr: 'extent' } } })

/** Reworks stand as dashed lines between the rounds; rounds are named under the plot. */
export const trendSpec = {
  ...head,
  params: [{ name: 'extent', value: [0.5, 2.5] }],
  layer: [
    {
      data: { name: 'marks' },
      mark: { type: 'rule', color: 'var(--stale)', strokeDash: [2, 4], strokeWidth: 1.5 },
      encoding: { x: trendX('at') },
    },
    ...sharedLayers(trendX),
    {
      data: { name: 'places' },
      mark: { type: 'text', baseline: 'top', dy: 6, color: 'var(--ink)' },
      encoding: { x: trendX('at'), y: { value: HEIGHT }, text: { field: 'label', type: 'nominal' } },
    },
    {
      data: { name: 'marks' },
      mark: { type: 'text', baseline: 'top', dy: 22, color: 'var(--stale)' },
      encoding: { x: trendX('at'), y: { value: HEIGHT }, text: { field: 'label', type: 'nominal' } },
    },
  ],
} as unknown as TopLevelSpec
