/** A light drawing of a figure: axes, limits, bands, series. What it shows is said in words beside it. */

import type { Plot } from '../../views/view.ts'
import { drawPlot } from '../drawing.ts'
import { h, svg } from './dom.ts'

export const plotFigure = (plot: Plot): HTMLElement => {
  const drawing = drawPlot(plot)
  const { width, height, left, right, top, bottom } = drawing.frame
  const text = (x: number, y: number, words: string, anchor: string) =>
    svg('text', { x, y, 'text-anchor': anchor }, words)
  return h(
    'figure',
    { class: 'plot live-plot' },
    svg(
      'svg',
      { viewBox: `0 0 ${width} ${height}`, role: 'img', 'aria-label': plot.alt },
      ...drawing.bands.map((band) => svg('rect', { class: 'band-of', ...band })),
      ...drawing.y.map(({ at, label }) =>
        svg(
          'g',
          {},
          svg('path', { class: 'grid', d: `M${left} ${at}H${right}` }),
          text(left - 6, at + 4, label, 'end'),
        ),
      ),
      ...drawing.x.map(({ at, label }) =>
        svg(
          'g',
          {},
          svg('path', { class: 'tick-of', d: `M${at} ${bottom}v5` }),
          text(at, bottom + 18, label, 'middle'),
        ),
      ),
      svg('path', { class: 'axis', d: `M${left} ${top}V${bottom}H${right}` }),
      ...drawing.limits.map(({ d }) => svg('path', { class: 'limit', d })),
      ...drawing.series.map(({ line, points, colour }) =>
        svg(
          'g',
          { class: `series-${colour}` },
          line && svg('path', { class: 'line', d: line }),
          ...points.map(({ x, y }) => svg('circle', { cx: x, cy: y, r: 3 })),
        ),
      ),
      ...drawing.limits.map(({ x, y, label, anchor }) => text(x, y, label, anchor)),
      text(left, top - 8, plot.y, 'start'),
      text(right, bottom + 36, plot.x, 'end'),
    ),
    h(
      'figcaption',
      {},
      h('strong', {}, plot.title),
      ' ',
      ...plot.caption.map((piece) => (typeof piece === 'string' ? piece : '')),
    ),
  )
}
