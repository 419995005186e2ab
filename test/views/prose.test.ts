/** Markdown of records on pages: what must never get through, and where addresses lead. */
import { describe, expect, it } from 'vitest'
import { href, withBase } from '../../src/views/address.ts'
import { equation } from '../../src/views/equation.ts'
import { besideRecord, isServed } from '../../src/views/files.ts'
import { proseOf } from '../../src/views/prose.ts'
import type { Site } from '../../src/views/site.ts'

const pages: Readonly<Record<string, string>> = {
  'tank-leak': 'cards/tank-leak/',
  '2026-03-04-0912-tank-leak': 'runs/2026-03-04-0912-tank-leak/',
  'wing/tank': 'articles/wing/tank/',
}
const site = { page: (id: string) => pages[id] ?? null } as Pick<Site, 'page'> as Site
const record = 'records/runs/2026-03/2026-03-04-0912-tank-leak.md'
const html = (markdown: string): string => proseOf(markdown, record, site).html

describe('prose', () => {
  it.each([
    '<script>alert(1)</script>',
    'text <img src=x onerror=alert(1)> text',
    '<div style="position:fixed">over</div>',
    '[a](javascript:alert(1))',
    '[a](JaVaScRiPt:alert(1))',
    '[a](data:text/html,x)',
    '[a](//elsewhere.example/x)',
    '![a](https://elsewhere.example/x.png)',
    '![" onerror="alert(1)](x.png)',
    '[" onclick="alert(1)](tank-leak)',
    '`<b>`',
    '```\n</code></pre><script>\n```',
    '| a | b |\n|:--|--:|\n| <i> | x |',
  ])('lets nothing run and nothing load from elsewhere: %s', (markdown) => {
    const made = html(markdown)
    const tags = [...made.matchAll(/<[^>]*>/g)].map(([tag]) => tag)
    expect(tags.filter((tag) => /<(?:script|iframe|object|style|div style|i>|b>)/i.test(tag))).toEqual([])
    expect(tags.filter((tag) => /\s(?:on\w+|style)=/i.test(tag.replace(/"[^"]*"/g, '""')))).toEqual([])
    expect(made).not.toMatch(/(?:href|src)="(?!base:|https?:\/\/|mailto:|#)/)
    expect(made).not.toMatch(/src="https?:/)
  })

  it('leads to pages by id, by file, and with an anchor', () => {
    expect(html('[card](tank-leak)')).toContain('href="base:cards/tank-leak/"')
    expect(html('[card](../../../shared/cards/tank-leak.md#steps)')).toContain(
      'href="base:cards/tank-leak/#steps"',
    )
    expect(html('[tank](../../../shared/articles/wing/tank.md)')).toContain('href="base:articles/wing/tank/"')
    expect(html('[out](https://example.org/a?b=c&d)')).toContain('href="https://example.org/a?b=c&amp;d"')
  })

  it('names the pictures beside a record, so that they are copied', () => {
    const made = proseOf('![the rig](photos/rig.jpg)', record, site)
    expect(made.files).toEqual(['records/runs/2026-03/photos/rig.jpg'])
    expect(made.html).toContain('src="base:files/records/runs/2026-03/photos/rig.jpg" alt="the rig"')
  })

  it('puts every address under the base path, and nothing that only looks like one', () => {
    const made = withBase(html('[card](tank-leak) and `href="base:x"`'), '/some/base/')
    expect(made).toContain('href="/some/base/cards/tank-leak/"')
    expect(made).toContain('href=&quot;base:x&quot;')
    expect(href('runs/a b/', '/some/base/')).toBe('/some/base/runs/a%20b/')
    expect(href('#here', '/some/base/')).toBe('#here')
    expect(href('https://example.org/', '/some/base/')).toBe('https://example.org/')
  })

  it('lowers headings and turns the alignment of tables into classes', () => {
    expect(html('## Steps')).toContain('<h3>Steps</h3>')
    const table = html('| a | b |\n|---|--:|\n| 1 | 2 |')
    expect(table).toContain('<td class="align-right">2</td>')
    expect(table).not.toContain('align="')
  })

  it('sets equations as MathML without style attributes, and shows what it cannot read', () => {
    const made = proseOf(
      'so $p = \\rho g h$ and\n\n$$\\color{red} q = \\frac{V}{P}\\,\\dot{p}$$\n',
      record,
      site,
      0,
      true,
    ).html
    expect(made).toContain('<math')
    expect(made).not.toMatch(/style=/)
    expect(equation('\\frac{', true)).toBeNull()
    expect(proseOf('$$\\frac{$$\n', record, site, 0, true).html).toContain('<code>\\frac{</code>')
    expect(proseOf('costs $5 and $6', record, site, 0, true).html).toContain('costs $5 and $6')
  })
})

describe('files beside a record', () => {
  it('stay inside the repository', () => {
    expect(besideRecord(record, '../a.jpg')).toBe('records/runs/a.jpg')
    expect(besideRecord(record, '../../../../a.jpg')).toBeNull()
  })

  it('are passed on only where a browser would not run them', () => {
    expect(['a.jpg', 'b.PNG', 'c.csv', 'd.pdf'].every(isServed)).toBe(true)
    expect(['a.svg', 'b.html', 'c.js', 'd'].some(isServed)).toBe(false)
  })
})
