/** What comes out so far: verdict, criteria against their limits, measures, figures. */
import { drawInterval } from '../../plots/interval.ts'
import type { Against, CriterionRow, Inline } from '../../views/view.ts'
import type { Preview } from '../preview.ts'
import { type Child, h, part, svg } from './dom.ts'
import type { Live } from './live.ts'

const stamp = (word: string, style: string): HTMLElement =>
  h('span', { class: `stamp ${style}` }, h('span', {}, word))

const inline = (piece: Inline): Child => {
  if (typeof piece === 'string') return piece
  if (piece.is === 'stamp') return stamp(piece.word, piece.style)
  return 'text' in piece && typeof piece.text === 'string' ? piece.text : null
}

const interval = (against: Against): SVGElement => {
  const drawing = drawInterval(against, 200, 4)
  const { style, words, U } = against
  return svg(
    'svg',
    { class: `interval ${style}`, viewBox: '0 0 200 24', role: 'img', 'aria-label': words },
    ...drawing.refused.map(({ from, to }) =>
      svg('rect', { class: 'refused', x: from, y: 3, width: Math.max(0, to - from), height: 16 }),
    ),
    svg('path', { class: 'axis', d: 'M4 19H196' }),
    ...drawing.limits.map((x) => svg('path', { class: 'limit', d: `M${x} 1v22` })),
    U !== null &&
      svg('path', {
        class: 'bar',
        d: `M${drawing.low} 11H${drawing.high}M${drawing.low} 7v8M${drawing.high} 7v8`,
      }),
    style === 'fail'
      ? svg('path', { class: 'cross', d: `M${drawing.value - 4} 7l8 8m0 -8l-8 8` })
      : svg('circle', { class: 'value', cx: drawing.value, cy: 11, r: 4 }),
  )
}

const criterionBox = (row: CriterionRow): HTMLElement =>
  h(
    'section',
    { class: 'live-criterion', 'aria-label': row.name },
    h(
      'p',
      {},
      h('strong', {}, row.name),
      ' ',
      inline(row.stamp),
      ' ',
      h('code', {}, row.accept),
      ' ',
      h('small', {}, row.rule),
    ),
    ...row.terms.map((term) =>
      h(
        'div',
        { class: 'term' },
        h(
          'p',
          {},
          h('b', {}, term.result),
          ` against ${term.limit}; margin ${term.margin}; conforms with ${term.probability}`,
          ...term.more.map((line) => h('small', {}, ` ${line}`)),
        ),
        term.against && interval(term.against),
      ),
    ),
    ...row.reasons.map((reason) => h('p', { class: 'reason' }, ...reason.map(inline))),
    ...row.settle.map((line) => h('p', {}, h('small', {}, 'Would settle it: ', ...line.map(inline)))),
  )

const listOf = (items: readonly string[]): HTMLElement | null =>
  items.length === 0 ? null : h('ul', { class: 'list' }, ...items.map((item) => h('li', {}, item)))

const measures = (preview: Preview): HTMLElement | null =>
  preview.measures.length === 0
    ? null
    : h(
        'div',
        { class: 'scroll', tabindex: 0, role: 'region', 'aria-label': 'All results so far' },
        h(
          'table',
          { class: 'stack' },
          h('caption', { class: 'unseen' }, 'All results so far'),
          h(
            'thead',
            {},
            h(
              'tr',
              {},
              h('th', { scope: 'col' }, 'measure'),
              h('th', { scope: 'col', class: 'n' }, 'result'),
              h('th', { scope: 'col' }, 'meaning'),
            ),
          ),
          h(
            'tbody',
            {},
            ...preview.measures.map(({ name, result, meaning }) =>
              h(
                'tr',
                {},
                h('th', { scope: 'row' }, name),
                h('td', { class: 'n', 'data-label': 'result' }, result),
                h('td', { 'data-label': 'meaning' }, meaning),
              ),
            ),
          ),
        ),
      )

const NOTHING = 'Nothing is computed yet: the first readings show here what comes out.'

export const resultPart = (live: Live): HTMLElement => {
  const headline = h('p', { class: 'answer', role: 'status' }, NOTHING)
  const details = h('div')
  const figures = h('div', { class: 'plots' })
  const every = h('div')
  const folded = h('details', { hidden: true }, h('summary', {}, 'All results so far'), every)
  const draw = async (preview: Preview): Promise<void> => {
    const { plotFigure } = await import('./plot.ts')
    // While it was fetched something newer may have come out.
    if (live.preview() === preview) figures.replaceChildren(...preview.plots.map(plotFigure))
  }
  let said = ''
  live.onPreview((preview) => {
    const { verdict } = preview
    const [first = NOTHING, ...others] = preview.reasons
    const words = verdict ?? first
    // Told once a change, not at each reading.
    if (words !== said)
      headline.replaceChildren(
        ...(verdict
          ? ['So far: ', stamp(verdict, verdict)]
          : [first, ' ', h('a', { href: '#hand-in' }, 'What is still to do')]),
      )
    said = words
    details.replaceChildren(
      ...[
        ...preview.criteria.map(criterionBox),
        listOf(
          verdict
            ? preview.reasons.filter(
                (reason) =>
                  !preview.criteria.some((row) => row.reasons.some((each) => each.includes(reason))),
              )
            : others,
        ),
        listOf([...preview.notes, ...preview.advice]),
        preview.items.length > 0 &&
          h(
            'aside',
            { class: 'strip loud' },
            h('strong', {}, 'This run would leave open'),
            listOf(preview.items),
          ),
      ].filter((each) => each !== null && each !== false),
    )
    const all = measures(preview)
    folded.hidden = all === null
    every.replaceChildren(...(all ? [all] : []))
    // Without its drawing the figure is missing; the numbers stand all the same.
    if (preview.plots.length > 0) draw(preview).catch(() => figures.replaceChildren())
    else figures.replaceChildren()
  })
  return part('result', 'What comes out so far', headline, details, figures, folded)
}
