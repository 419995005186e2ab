/** Plots: the specification is sound, the picture is plain SVG in the page's own colours, the same on every machine. */
import { execFileSync } from 'node:child_process'
import { compile } from 'vega-lite'
import { describe, expect, it, vi } from 'vitest'
import { renderPlot } from '../../src/plots/render.ts'
import { figureSpec, trendSpec } from '../../src/plots/spec.ts'
import { figure, trend } from './sample.ts'

/** y of each drawn point mark, from its translation within the plot. */
const pointsOf = (svg: string): { x: number; y: number }[] =>
  [...svg.matchAll(/<path transform="translate\(([-\d.]+),([-\d.]+)\)" d="[^"]*"[^>]*fill="var/g)].map(
    (match) => ({
      x: Number(match[1]),
      y: Number(match[2]),
    }),
  )

describe('the specifications', () => {
  it.each([
    ['figure', figureSpec],
    ['trend', trendSpec],
  ] as const)('%s compiles without a warning', (_, spec) => {
    const warned = vi.spyOn(console, 'warn').mockImplementation(() => {})
    compile(spec)
    const said = warned.mock.calls
    warned.mockRestore()
    expect(said).toEqual([])
  })
})

describe.each([
  ['figure', figure],
  ['trend', trend],
] as const)('the picture of a %s', (_, plot) => {
  it('has a name and a description, and takes the width that it is given', async () => {
    const svg = await renderPlot(plot)
    expect(svg).toMatch(/^<svg viewBox="0 0 \d+ \d+" role="img" aria-labelledby="/)
    expect(svg).toContain(`<title id="${plot.id}-title">`)
    expect(svg).toContain(`${plot.alt}</desc>`)
    expect(svg).not.toMatch(/<svg[^>]+(?:width|height)=/)
  })

  it('has no inline style, nothing from elsewhere and no colour of its own', async () => {
    const svg = await renderPlot(plot)
    expect(svg).not.toMatch(/style=|<script|href=|url\(|https?:/)
    const colours = [...svg.matchAll(/(?:fill|stroke)="([^"]+)"/g)].map((match) => match[1] ?? '')
    expect(
      colours.filter(
        (colour) => colour !== 'none' && colour !== 'transparent' && !colour.startsWith('var(--'),
      ),
    ).toEqual([])
  })

  it('shows its axes, limits and bands in words', async () => {
    const svg = await renderPlot(plot)
    const words = [
      plot.y,
      ...plot.limits.map((limit) => limit.label),
      ...plot.bands.map((band) => band.label),
      ...plot.places.map((place) => place.label),
    ]
    for (const word of words.filter((each) => each !== '')) expect(svg).toContain(`>${word}</text>`)
    expect(svg).not.toMatch(/«|»|NaN|undefined|null/)
  })

  it('comes out the same a second time, from the charts that were prepared once', async () => {
    expect(await renderPlot(plot)).toBe(await renderPlot(plot))
  })
})

describe('what is drawn where', () => {
  it('puts larger values higher, and every verdict in its place from left to right', async () => {
    const points = pointsOf(await renderPlot(trend))
    expect(points).toHaveLength(3)
    const [first, second, third] = points
    expect(first?.x).toBeLessThan(second?.x ?? 0)
    expect(second?.x).toBeLessThan(third?.x ?? 0)
    expect(first?.y).toBeGreaterThan(second?.y ?? 0)
    expect(second?.y).toBeGreaterThan(third?.y ?? 0)
  })

  it('leaves out what is not a number instead of drawing it at zero', async () => {
    const [whole] = figure.series
    if (!whole) throw new Error('the sample has no series')
    const holed = {
      ...whole,
      points: [
        ...whole.points,
        [30, Number.NaN, null] as const,
        [Number.POSITIVE_INFINITY, -2600, null] as const,
      ],
    }
    expect(await renderPlot({ ...figure, series: [holed] })).toBe(
      await renderPlot({ ...figure, series: [whole] }),
    )
  })

  it('keeps the small numbers of an axis', async () => {
    const small = {
      ...figure,
      limits: [],
      bands: [],
      series: [
        {
          name: 's',
          mark: 'points' as const,
          muted: false,
          points: [
            [0, 0.0001, null],
            [1, 0.0004, null],
          ] as const,
        },
      ],
    }
    expect(await renderPlot(small)).toMatch(/>0\.0002\d*</)
  })

  it('escapes what is written in a title', async () => {
    const svg = await renderPlot(figure)
    expect(svg).toContain('Pressure &lt;over&gt; time &amp; &quot;quotes&quot;')
  })
})

describe('under any time zone', () => {
  it('draws the same bytes', () => {
    const script = `import { renderPlot } from './src/plots/render.ts'; import { figure, trend } from './test/plots/sample.ts';
      process.stdout.write(await renderPlot(figure) + await renderPlot(trend))`
    const draw = (zone: string, language: string): string =>
      execFileSync(process.execPath, ['--input-type=module', '-e', script], {
        env: { ...process.env, TZ: zone, LANG: language, LC_ALL: language },
        encoding: 'utf8',
      })
    const home = draw('UTC', 'C')
    expect(home.length).toBeGreaterThan(1000)
    expect(draw('Pacific/Auckland', 'de_DE.UTF-8')).toBe(home)
    expect(draw('America/St_Johns', 'fr_FR.UTF-8')).toBe(home)
  })
})
