/** Every code: a page, an example that provokes exactly it, a mended one that does not, and its printed text stored. */
import { globSync, readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { readRecords } from '../../src/format/records.ts'
import { printTerminal } from '../../src/problems/printers/terminal.ts'
import { loadCodes } from '../../src/problems/registry.ts'
import type { ProblemCode } from '../../src/problems/types.ts'
import { campaign, RUN, SCHEMAS } from '../format/base.ts'
import { withFields } from './with-fields.ts'

const codes = await loadCodes()

/** Formulas and what git knows are checked by the campaign, and only a file system can refuse to give a file. */
const elsewhere = (code: string) => /^(formula|history)\//.test(code) || code === 'file/unreadable'
/** What is wrong here is the name of the file, not what stands in it. */
const byName = (code: string) => ['file/place', 'file/double-id'].includes(code)
/** Methods bring their own codes and examples, which their own tests run. */
const general = codes.filter(
  ({ code }) => globSync(`src/problems/codes/${code.replace('/', '-')}.ts`).length === 1,
)

function read(example: string, { example: { in: path = RUN, data } }: ProblemCode) {
  const beside = data === undefined ? {} : { [RUN.replace(/md$/, 'csv')]: data }
  const files = campaign({ [path]: withFields(path, example), ...beside })
  const exists = new Set([...files.map((file) => file.path), 'records/runs/2026-03/gauge.jpg'])
  const textOf = (file: string) => files.find(({ path }) => path === file)?.text
  return { problems: readRecords(files, SCHEMAS, exists).problems, textOf }
}

describe('each code', () => {
  test.each(general.filter(({ code }) => !elsewhere(code)))('$code', async (code) => {
    const { problems, textOf } = read(code.example.wrong, code)
    const found = problems.filter((problem) => problem.code === code.code)
    expect(problems.map((problem) => problem.code)).toContain(code.code)
    expect(found.every((problem) => problem.severity === code.severity)).toBe(true)
    const [first] = found
    if (first) {
      const file = `printed/${code.code.replace('/', '-')}.txt`
      await expect(`${printTerminal(first, textOf)}\n`).toMatchFileSnapshot(file)
    }
    if (byName(code.code)) return
    expect(
      read(code.example.right, code).problems.map((problem) => `${problem.code}: ${problem.message}`),
    ).toEqual([])
  })

  test('is written out and named after its file', () => {
    expect(codes.length).toBeGreaterThan(80)
    expect(new Set(codes.map(({ code }) => code)).size).toBe(codes.length)
    for (const { code, title, page } of general) {
      expect(code).toMatch(/^[a-z-]+\/[a-z0-9-]+$/)
      expect(title, code).not.toMatch(/\.$/)
      expect(page.split('\n\n').length, `${code}: what happened and what to do`).toBeGreaterThanOrEqual(2)
    }
  })

  test('that the sources raise has a file, and no file is left over', () => {
    const sources = globSync('src/**/*.ts', { exclude: (path) => /[\\/](codes|methods)$/.test(path) })
    const text = sources.map((path) => readFileSync(path, 'utf8')).join('\n')
    const raised = [
      ...text.matchAll(/(?:code: |refuse\(\s*|fail\(reader, |whole\(|unknown\()'([a-z-]+\/[a-z-]+)'/g),
    ].map((match) => match[1])
    const known = general.map(({ code }) => code)
    expect([...new Set(raised)].filter((code) => !known.includes(code ?? '')).sort()).toEqual([])
    expect(known.filter((code) => !text.includes(`'${code}'`)).sort()).toEqual([])
  })
})
