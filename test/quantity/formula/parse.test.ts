import fc from 'fast-check'
import { beforeAll, describe, expect, test } from 'vitest'
import { formatNode, parseFormula, prepareFormulas } from '../../../src/quantity/formula/index.ts'
import type { Node } from '../../../src/quantity/formula/types.ts'

beforeAll(prepareFormulas)

function parse(text: string): Node {
  const result = parseFormula(text)
  if (!result.ok) throw new Error(`${text}: ${result.error[0]?.message}`)
  return result.value
}
function fault(text: string) {
  const result = parseFormula(text)
  if (result.ok) throw new Error(`${text} was read as ${formatNode(result.value)}`)
  return result.error[0]
}

describe('a number and its unit are one word', () => {
  test.each([
    ['6 cm^3/min', 1e-7],
    ['6 cm³ / min', 1e-7],
    ['5 lbf in/deg', 5 * 6.473553852289629],
    ['5 lbf in / deg', 5 * 6.473553852289629],
    ['2.5 kPa', 2500],
    ['95 %', 0.95],
    ['2 in', 0.0508],
    ['24 h', 86400],
    ['-40 degC', 233.15],
    ['5 L/(kPa·min)', 5e-3 / 60000],
    ['20 US gal', 0.07570823568],
    ['3 delta degF', 5 / 3],
  ])('%s', (text, value) => {
    const node = parse(text)
    expect(node).toMatchObject({ type: 'number', text, start: 0, end: text.length })
    expect(node.type === 'number' ? node.value / value : 0).toBeCloseTo(1, 12)
  })
  test('units win over functions unless called', () => {
    expect(parse('5 kPa/min')).toMatchObject({ type: 'number' })
    expect(parse('5 kPa/min(a, b)')).toMatchObject({
      type: 'arithmetic',
      op: '/',
      right: { type: 'call', name: 'min' },
    })
  })
  test('a name behind a stroke stays a name', () => {
    expect(parse('5 N/area')).toMatchObject({ op: '/', left: { text: '5 N' }, right: { name: 'area' } })
    expect(parse('5 m/h_max')).toMatchObject({ op: '/', left: { text: '5 m' }, right: { name: 'h_max' } })
  })
})

describe('structure and places in the original text', () => {
  test('precedence as in mathematics', () => {
    expect(parse('a + b * c ^ 2')).toMatchObject({ op: '+', right: { op: '*', right: { op: '^' } } })
    expect(parse('-a^2')).toMatchObject({ type: 'minus', of: { op: '^' } })
    expect(parse('2^-1')).toMatchObject({ op: '^', right: { type: 'minus' } })
    expect(parse('a - b - c')).toMatchObject({ op: '-', left: { op: '-' } })
    expect(parse('a^b^c')).toMatchObject({ op: '^', right: { op: '^' } })
    expect(parse('a - (b - c)')).toMatchObject({ op: '-', right: { op: '-' } })
  })
  test('chains and conjunctions', () => {
    expect(parse('1 <= a < 3')).toMatchObject({
      type: 'compare',
      ops: ['<=', '<'],
      operands: [{}, { name: 'a' }, {}],
    })
    expect(parse('a < 1 and b > 2 and c <= 3')).toMatchObject({ type: 'and', terms: [{}, {}, {}] })
    expect(parse('a ≤ 5 and b ≥ −2 · c')).toMatchObject({ terms: [{ ops: ['<='] }, { ops: ['>='] }] })
  })
  test('offsets', () => {
    const text = '  leak_rate   <  max( limit , 6 cm^3/min )'
    expect(parse(text)).toMatchObject({
      start: 2,
      end: text.length,
      operands: [
        { start: 2, end: 11 },
        {
          type: 'call',
          start: 17,
          end: text.length,
          args: [
            { start: 22, end: 27 },
            { start: 30, end: 40 },
          ],
        },
      ],
    })
  })
  test("the parser's own words mean nothing", () => {
    for (const name of [
      'true',
      'false',
      'null',
      'end',
      'NaN',
      'Infinity',
      'undefined',
      'i',
      'e',
      'pi',
      'in',
    ]) {
      expect(parse(`${name} + 1`)).toMatchObject({ left: { type: 'name', name } })
    }
  })
})

describe('nothing else parses', () => {
  test.each([
    ['x = 3', 'formula/not-allowed', 2],
    ['f(x) = 3', 'formula/not-allowed', 5],
    ['x == 3', 'formula/not-allowed', 2],
    ['x != 3', 'formula/not-allowed', 2],
    ['x < 3 or y < 2', 'formula/not-allowed', 6],
    ['not x < 3', 'formula/not-allowed', 0],
    ['x mod 2', 'formula/not-allowed', 2],
    ['!x', 'formula/not-allowed', 0],
    ['x!', 'formula/not-allowed', 1],
    ["'a'", 'formula/not-allowed', 0],
    ['"a"', 'formula/not-allowed', 0],
    ['a.b', 'formula/not-allowed', 1],
    ['a[1]', 'formula/not-allowed', 1],
    ['[1, 2]', 'formula/not-allowed', 0],
    ['{a: 1}', 'formula/not-allowed', 0],
    ['a ? b : c', 'formula/not-allowed', 2],
    ['1:3', 'formula/not-allowed', 1],
    ['a; b', 'formula/not-allowed', 1],
    ['a # b', 'formula/not-allowed', 2],
    ['a % b', 'formula/not-allowed', 2],
    ['1_000', 'formula/syntax', 0],
    ['1.2.3', 'formula/syntax', 0],
    ['2,5 kPa', 'formula/syntax', 1],
    ['1/2 in', 'formula/syntax', 0],
    ['2 (a)', 'formula/syntax', 0],
    ['a b', 'formula/syntax', 0],
    ['(a)(b)', 'formula/syntax', 2],
    ['a ** 2', 'formula/syntax', 2],
    ['(a', 'formula/syntax', 0],
    ['a)', 'formula/syntax', 1],
    ['a +', 'formula/syntax', 3],
    ['* a', 'formula/syntax', 0],
    ['a < < b', 'formula/syntax', 4],
    ['max(a,)', 'formula/syntax', 6],
    ['', 'formula/syntax', 0],
    ['a @ b', 'formula/syntax', 2],
    ['5 kts', 'unit/unknown', 2],
    ['5x', 'unit/unknown', 1],
    [`${'('.repeat(5000)}a${')'.repeat(5000)}`, 'formula/syntax', 401],
    [`${'-'.repeat(5000)}a`, 'formula/syntax', 401],
  ])('%s', (text, code, start) => {
    expect(fault(text)).toMatchObject({ code, start })
  })
})

test('property: a formula printed and read again is the same formula', () => {
  const leaf = fc.constantFrom('a', 'b_1', '2.5', '6 cm^3/min', '-40 degC', '40 degC', '1e-3')
  const { tree } = fc.letrec<{ tree: string }>((tie) => ({
    tree: fc.oneof(
      { maxDepth: 4 },
      leaf,
      fc
        .tuple(tie('tree'), fc.constantFrom('+', '-', '*', '/', '^'), tie('tree'))
        .map(([l, op, r]) => `(${l}) ${op} (${r})`),
      tie('tree').map((of) => `-(${of})`),
      fc.tuple(tie('tree'), tie('tree')).map(([l, r]) => `max(${l}, ${r})`),
    ),
  }))
  const bare = (node: Node): unknown =>
    JSON.parse(JSON.stringify(node, (key, value) => (key === 'start' || key === 'end' ? undefined : value)))
  fc.assert(
    fc.property(tree, (text) => {
      const node = parse(text)
      expect(bare(parse(formatNode(node)))).toEqual(bare(node))
    }),
    { numRuns: 300 },
  )
})

test('property: no text makes it throw, and each fault lies in the text', () => {
  const letters = fc.string({ unit: fc.constantFrom(...'ab_m 0123.+-*/^()<>=,%·²and kPa°C') })
  fc.assert(
    fc.property(fc.oneof(fc.string(), letters), (text) => {
      const result = parseFormula(text)
      if (result.ok) return
      expect(result.error[0]?.start).toBeGreaterThanOrEqual(0)
      expect(result.error[0]?.end).toBeLessThanOrEqual(text.length + 1)
    }),
    { numRuns: 1000 },
  )
})
