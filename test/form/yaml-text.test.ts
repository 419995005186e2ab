/** Whatever is typed stands in the file as it was typed: read back by the reader of all files. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { parse } from 'yaml'
import { flowText, scalarText } from '../../src/form/yaml-text.ts'
import { readYaml } from '../../src/format/yaml.ts'

const readBack = (text: string): unknown => {
  const yaml = `a: ${scalarText(text)}\nb:\n  - {${scalarText(text)}: ${scalarText(text)}, c: [${scalarText(text)}]}\n`
  const read = readYaml(yaml)
  return read.ok ? read.value : { yaml, error: read.error }
}

const same = (text: string): unknown => ({ a: text, b: [{ [text]: text, c: [text] }] })

const usable = (text: string): boolean => !['', 'c', '<<', '__proto__'].includes(text)

describe('a text', () => {
  it.each([
    'vent-plug',
    '96.4 ± 0.6 L',
    '2026-03-04T09:12+01:00',
    'a: b',
    'a:',
    '#x',
    'a #b',
    '- a',
    '-5',
    '[x]',
    '{x}',
    'a, b',
    '"q"',
    "it's",
    '*a',
    '&a',
    '!a',
    '|',
    '>',
    '%',
    '@',
    '`',
    '~',
    '?',
    '...',
    '---',
    'yes',
    'null',
    ' lead',
    'trail ',
    'two\nlines',
    'tab\there',
    '…',
    '\u0007',
    '\u0085',
    '\u2028',
    '\ufeffx',
    'e\u0301',
    '👩🏽‍🔧',
    'a\\b',
  ])('%j comes back', (text) => {
    expect(readBack(text)).toEqual(same(text))
  })
  it('comes back whatever it is', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 20 }).filter(usable), (text) => {
        expect(readBack(text)).toEqual(same(text.toWellFormed()))
      }),
      { numRuns: 2000 },
    )
  })
  it('is the same to another reader of YAML (npm yaml, failsafe schema)', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme', maxLength: 20 }).filter(usable), (text) => {
        expect(parse(`a: ${flowText([text])}`, { schema: 'failsafe' })).toEqual({ a: [text.toWellFormed()] })
      }),
    )
  })
  it('is plain where that is safe', () => {
    expect(['th-03', '96.4 ± 0.6 L', '-5 kPa', 'door shut'].map(scalarText)).toEqual([
      'th-03',
      '96.4 ± 0.6 L',
      '-5 kPa',
      'door shut',
    ])
  })
})
