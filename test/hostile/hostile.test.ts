import { describe, expect, test } from 'vitest'
import { readRecords } from '../../src/format/records.ts'
import { printTerminal } from '../../src/problems/printers/terminal.ts'
import { campaign, SCHEMAS } from '../format/base.ts'
import { CASES as RECORDS } from './cases.ts'
import { LOGGER_CASES } from './logger-cases.ts'

const CASES = [...RECORDS, ...LOGGER_CASES]

describe('each wrong file has exactly one problem, at the right place', () => {
  test.each(CASES)('$name', async ({ name, files, expect: expected }) => {
    const read = campaign(files)
    const { problems } = readRecords(read, SCHEMAS, new Set(read.map((file) => file.path)))
    const places = problems.map(({ code, at: { file, line, column } }) => ({ code, file, line, column }))
    expect(places).toEqual(expected === null ? [] : [expected])
    const textOf = (path: string) => read.find((file) => file.path === path)?.text
    if (problems[0])
      await expect(`${printTerminal(problems[0], textOf)}\n`).toMatchFileSnapshot(`printed/${name}.txt`)
  })

  test('names of cases are unique', () => {
    expect(new Set(CASES.map((entry) => entry.name)).size).toBe(CASES.length)
  })
})
