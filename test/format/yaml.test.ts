/**
 * Every scalar is the text that was written (failsafe schema, YAML 1.2.2 chapter 10.1), and every place is where
 * another parser, the package `yaml`, finds the same node.
 */
import { describe, expect, test } from 'vitest'
import { isCollection, isMap, isScalar, LineCounter, type Node, parseDocument } from 'yaml'
import { splitFrontMatter } from '../../src/format/front-matter.ts'
import { makeSource } from '../../src/format/source.ts'
import type { FieldPath } from '../../src/format/types.ts'
import { readYaml } from '../../src/format/yaml.ts'
import { BASE, RUN } from './base.ts'

const scalarOf = (text: string) => {
  const read = readYaml(`a: ${text}\n`)
  return read.ok ? read.value.a : null
}

// What a YAML 1.1 reader makes of these (750, 45000, 15, 1000, true, null, Date) was found by trial, 2026-11.
test.each([
  '12:30',
  '12:30:00',
  '017',
  '1_000',
  '2025-13-45',
  '2026-03-04',
  'yes',
  'no',
  'null',
  '~',
  '0x10',
  '1e3',
  '00123',
])('%s stays the text that was written', (text) => expect(scalarOf(text)).toBe(text))

test('a # without a blank before it belongs to the text', () => expect(scalarOf('run#pin')).toBe('run#pin'))
test('a # in quotes belongs to the text', () => expect(scalarOf('"left #2"')).toBe('left #2'))
test('a comment on its own line is no problem', () =>
  expect(readYaml('# one\na: b\n  # two\n').ok).toBe(true))
test('a # in a block of text is no comment', () => expect(readYaml('a: |\n  x # y\n').ok).toBe(true))
test('names of the prototype are names like others', () => {
  expect(readYaml('constructor: a\ntoString: b\n')).toEqual({
    ok: true,
    value: { constructor: 'a', toString: 'b' },
  })
  expect(readYaml('__proto__: {a: b}\n').ok).toBe(false)
})

type Found = { readonly path: FieldPath; readonly start: number; readonly value: string }

function scalars(node: Node | null, path: FieldPath, found: Found[]): Found[] {
  if (isScalar(node) && node.range) found.push({ path, start: node.range[0], value: String(node.value) })
  if (isMap(node))
    for (const { key, value } of node.items) scalars(value as Node, [...path, String(key)], found)
  else if (isCollection(node))
    for (const [index, item] of node.items.entries()) scalars(item as Node, [...path, index], found)
  return found
}

describe.each(Object.entries(BASE).filter(([path]) => path.endsWith('.md')))('%s', (path, text) => {
  test.each([text, `\uFEFF${text}`, text.replaceAll('\n', '\r\n')])(
    'each value stands where `yaml` finds it',
    (variant) => {
      const split = splitFrontMatter(variant)
      if (!split.ok) throw new Error('a good file was refused')
      const { yaml, start } = split.value
      const source = makeSource(path, variant, { start, text: yaml })
      const counter = new LineCounter()
      const found = scalars(
        parseDocument(yaml, { schema: 'failsafe', lineCounter: counter }).contents,
        [],
        [],
      )
      expect(found.length).toBeGreaterThan(2)
      for (const { path: field, start: offset, value } of found) {
        const { line, col } = counter.linePos(offset)
        const place = source.locate(field)
        const quoted = yaml[offset] === '"' ? 1 : 0
        if (yaml[offset] === '|' || yaml[offset] === '>') expect(place.line, value).toBe(line + 2)
        else expect([place.line, place.column], value).toEqual([line + 1, col + quoted])
      }
    },
  )
})

test('a span inside a field points into its text, and a cell to its line and column', () => {
  const split = splitFrontMatter(BASE[RUN] ?? '')
  if (!split.ok) throw new Error('a good file was refused')
  const source = makeSource(RUN, BASE[RUN] ?? '', { start: split.value.start, text: split.value.yaml })
  expect(source.locate(['given', 'drift_error'], 'value', { start: 4, end: 5 })).toMatchObject({
    line: 8,
    column: 26,
  })
  expect(source.locate(['given'], 'key')).toMatchObject({ line: 8, column: 1, endColumn: 6 })
  expect(source.locate(['given', 'nothing'])).toMatchObject({ line: 8, column: 1 })
  expect(source.locate(['nothing', 3])).toMatchObject({ line: 1, column: 1 })
  expect(source.locateCell(-2, 2)).toMatchObject({ line: 13, column: 16, endColumn: 26 })
  expect(source.locateCell(1, 4)).toMatchObject({ line: 16, column: 36, endColumn: 51 })
})
