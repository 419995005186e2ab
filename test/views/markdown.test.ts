/** Texts in Markdown, read again by a renderer of GitHub's dialect that is none of ours (marked), and in bounds. */
import fc from 'fast-check'
import { marked } from 'marked'
import { describe, expect, it } from 'vitest'
import {
  boundedText,
  markdownCode,
  markdownText,
  type Section,
  tableHead,
  tableRow,
} from '../../src/views/markdown.ts'

const ENTITIES: Readonly<Record<string, string>> = { amp: '&', lt: '<', gt: '>', quot: '"', '#39': "'" }

/** What a reader sees. */
const seen = (html: string): string =>
  html
    .replace(/<[^>]*>/g, '')
    .replace(/&(amp|lt|gt|quot|#39);/g, (_, name: string) => ENTITIES[name] ?? '')
    .replaceAll('\u200b', '')

const table = (cells: readonly string[]): string =>
  marked.parse([...tableHead(['a', 'b']), tableRow(cells), ''].join('\n'), { async: false })

const cellsOf = (html: string): string[] =>
  [...html.matchAll(/<td>(.*?)<\/td>/gs)].map(([, cell = '']) => cell)

const NASTY = [
  '<img src=x onerror=alert(1)>',
  '</td></tr></table><script>alert(1)</script>',
  'a | b \\| c \\\\| d',
  '@octocat fixes #12 and GH-3, owner/name#4',
  '**bold** _it_ ~~gone~~ `code` [x](http://evil.example) ![y](z)',
  'https://evil.example www.evil.example mail@evil.example',
  '# title',
  '- [ ] task',
  '1. first',
  '> quote',
  '&lt;b&gt; &amp; &#64;octocat',
  'left \u202e right \u200b\u0000\u001b[31m',
  'first\nsecond\r\n| x | y |\n\n---\n',
]

describe('a text', () => {
  it.each(NASTY)('%j is shown and not acted upon', (text) => {
    const html = marked.parse(`- ${markdownText(text)}\n`, { async: false })
    expect(html).not.toMatch(/<(?!\/?(?:ul|li)>)/)
    expect(html).not.toMatch(/@[a-z]|#\d|:\/\/|\bwww\./i)
    const [first, second, third] = cellsOf(table([markdownText(text), 'next']))
    expect([second, third]).toEqual(['next', undefined])
    expect(first).not.toMatch(/</)
  })
  it('says what it said, whatever it is', () => {
    const wanted = (text: string) =>
      text
        .replace(/\s+/g, ' ')
        .replace(/[\p{Cc}\p{Cf}]/gu, '')
        .trim()
    fc.assert(
      fc.property(
        fc.oneof(
          fc.string({ unit: 'grapheme', maxLength: 40 }),
          fc
            .array(fc.constantFrom(...'\\|`*_[]()<>&@#!~$-+=.:1 w'), { maxLength: 20 })
            .map((all) => all.join('')),
        ),
        (text) => {
          const [first = ''] = cellsOf(table([markdownText(text), 'next']))
          expect(seen(first)).toBe(wanted(text))
        },
      ),
      { numRuns: 500, seed: 4 },
    )
  })
  it('is cut where it is very long', () => {
    expect([...markdownText('x'.repeat(5000))].length).toBeLessThan(310)
  })
  it('as code stays one piece of code', () => {
    expect(marked.parseInline(markdownCode('a `b` <i> | @c'), { async: false })).toBe(
      '<code>a ’b’ &lt;i&gt; ∣ @c</code>',
    )
  })
})

const bytes = (text: string): number => Buffer.byteLength(text)

describe('a bounded text', () => {
  const section = (title: string, rows: number, row = 'ä row of some length'): Section => ({
    title,
    head: [],
    rows: Array.from({ length: rows }, (_, index) => `- ${index} ${row}`),
    of: 'rows',
  })
  it('leaves nothing out where there is room', () => {
    const text = boundedText(['intro'], [section('One', 2), section('Empty', 0)], 1000)
    expect(text).toBe('intro\n\n### One\n\n- 0 ä row of some length\n- 1 ä row of some length\n')
  })
  it('keeps what is short whole, cuts what is long, and says how much', () => {
    const text = boundedText(
      ['intro'],
      [section('Long', 5000), section('Short', 2), section('Other', 4000)],
      9000,
    )
    expect(bytes(text)).toBeLessThanOrEqual(9000)
    expect(bytes(text)).toBeGreaterThan(8000)
    expect(text).toContain('- 1 ä row of some length\n\n### Other')
    const kept = text.split('### Short')[0]?.match(/^- \d+/gm)?.length ?? 0
    expect(text).toContain(`*${5000 - kept} more rows are not shown here: no room.*`)
  })
  it('never becomes longer than it may', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.integer({ min: 0, max: 400 }), fc.integer({ min: 1, max: 400 })), {
          maxLength: 9,
        }),
        (drawn) => {
          const sections = drawn.map(([rows, length]) => section('Title', rows, '±'.repeat(length)))
          expect(bytes(boundedText(['intro'], sections, 8000))).toBeLessThanOrEqual(8000)
        },
      ),
      { numRuns: 100, seed: 5 },
    )
  })
})
