/** Traps found by trial (2026-11) in gray-matter 4.0.3; each is held here for the core and for the Node edge. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { splitFrontMatter } from '../../src/format/front-matter.ts'
import { readMatter } from '../../src/format/node/front-matter.ts'
import { readYaml } from '../../src/format/yaml.ts'
import { BASE } from './base.ts'

const codeOf = (text: string) => {
  const split = splitFrontMatter(text)
  return split.ok ? null : split.error.code
}

describe('the splitter', () => {
  test.each([
    ['a BOM and CRLF change nothing', '\uFEFF---\r\na: b\r\n---\r\nProse\r\n', null],
    ['blanks behind the dashes change nothing', '---  \na: b\n--- \n', null],
    ['no prose', '---\na: b\n---', null],
    ['empty', '', 'file/empty'],
    ['only blanks', ' \n\n', 'file/empty'],
    ['blank first line', '\n---\na: b\n---\n', 'front-matter/missing'],
    ['no dashes', 'a: b\n', 'front-matter/missing'],
    ['two dashes', '--\na: b\n--\n', 'front-matter/missing'],
    ['four dashes', '----\na: b\n----\n', 'front-matter/fence'],
    ['a language', '---js\nmodule.exports = {}\n---\n', 'front-matter/fence'],
    ['a language behind a blank', '--- yaml\na: b\n---\n', 'front-matter/fence'],
    ['not closed', '---\na: b\n', 'front-matter/not-closed'],
    ['not closed, one line', '---', 'front-matter/not-closed'],
    ['text behind the closing fence', '---\na: b\n---x\n---\n', 'front-matter/fence'],
  ])('%s', (_, text, code) => expect(codeOf(text)).toBe(code))

  test('never throws, whatever the text', () => {
    fc.assert(
      fc.property(
        fc.string({ unit: fc.constantFrom('-', '\n', 'a', ':', ' ', '\r', '\t', '#', '{', '"', '|') }),
        (text) => {
          const split = splitFrontMatter(`---\n${text}`)
          if (split.ok) readYaml(split.value.yaml)
          readYaml(text)
          readMatter(text)
        },
      ),
    )
  })
})

describe('gray-matter at the Node edge', () => {
  test.each(Object.entries(BASE).filter(([path]) => path.endsWith('.md')))(
    '%s reads as in the core',
    (_, text) => {
      for (const variant of [
        text,
        `\uFEFF${text}`,
        text.replaceAll('\n', '\r\n'),
        text.replace('---', '---  '),
      ]) {
        const split = splitFrontMatter(variant)
        const matter = readMatter(variant)
        if (!split.ok || !matter.ok) throw new Error('a good file was refused')
        const fields = readYaml(split.value.yaml)
        expect(matter.value.fields).toEqual(fields.ok ? fields.value : null)
        expect(matter.value.body).toBe(split.value.body)
      }
    },
  )

  test('runs no program, whatever the word behind the dashes', () => {
    const marked = globalThis as { ran?: boolean }
    for (const word of ['js', 'javascript', 'JS', ' js', 'json', 'coffee', 'yaml']) {
      expect(readMatter(`---${word}\n(globalThis.ran = true, {a: 1})\n---\n`).ok).toBe(false)
    }
    expect(marked.ran).toBeUndefined()
  })

  test('a broken head is refused the second time too, and equal files share nothing', () => {
    const broken = '---\na: [b\n---\n'
    expect(readMatter(broken).ok).toBe(false)
    expect(readMatter(broken).ok).toBe(false)
    const text = '---\na: {b: c}\n---\n'
    const [one, other] = [readMatter(text), readMatter(text)]
    if (!one.ok || !other.ok) throw new Error('a good file was refused')
    expect(one.value.fields).toEqual(other.value.fields)
    expect(one.value.fields).not.toBe(other.value.fields)
  })

  test('a head of comments alone is refused as in the core', () => {
    expect(readMatter('---\n# nothing\n---\n').ok).toBe(false)
    expect(readYaml('# nothing\n').ok).toBe(false)
  })
})
