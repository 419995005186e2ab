/** What every folder of `src/methods/` must have and hold; a new method is covered as soon as it is there. */
import { existsSync, globSync, readdirSync, readFileSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { describe, expect, it } from 'vitest'
import { type CheckValue, runCheckValue } from '../../src/methods/check-values.ts'
import { loadMethods } from '../../src/methods/registry.ts'
import { prepareFormulas } from '../../src/quantity/formula/index.ts'
import { KINDS } from '../../src/quantity/kinds.ts'

const folder = resolve(import.meta.dirname, '../../src/methods')
// Some methods read formulas in fields of their own.
await prepareFormulas()
const methods = await loadMethods()

const HEADINGS = [
  'Question',
  'When to use',
  'Cautions',
  'Equations',
  'Assumptions',
  'When it misleads',
  'Never a pass',
  'Worked example',
  'Sources',
]

const checksOf = (id: string): CheckValue[] =>
  globSync('check-values/*.json', { cwd: join(folder, id) })
    .sort()
    .flatMap((file) => {
      const parsed: CheckValue | CheckValue[] = JSON.parse(readFileSync(join(folder, id, file), 'utf8'))
      return parsed
    })

it('finds every folder', () => {
  const folders = readdirSync(folder, { withFileTypes: true }).filter((entry) => entry.isDirectory())
  expect(Object.keys(methods).sort()).toEqual(folders.map((entry) => entry.name).sort())
})

describe.each(Object.entries(methods))('%s', (id, method) => {
  it('is named after its folder and has all its parts', () => {
    expect(method.id).toBe(id)
    for (const part of ['index.ts', 'schema.ts', 'handbook.md', 'rehearse.ts', 'estimate.ts']) {
      expect(existsSync(join(folder, id, part)), part).toBe(true)
    }
    expect(method.cautions.length).toBeGreaterThan(0)
    expect(method.question).toMatch(/\?$/)
  })

  it('has the headings of the handbook in order', () => {
    const text = readFileSync(join(folder, id, 'handbook.md'), 'utf8')
    const found = [...text.matchAll(/^## (.+)$/gm)].map((match) => match[1])
    expect(found).toEqual(HEADINGS)
  })

  it('says what every given, column and measure means, under a name that formulas can use', () => {
    for (const field of [...method.schema.givens, ...method.schema.columns, ...method.schema.measures]) {
      expect(field.name.replaceAll(/<[^>]+>/g, 'x')).toMatch(/^[a-z][a-z0-9_]*$/)
      expect(field.meaning.length, field.name).toBeGreaterThan(3)
      expect(KINDS[field.kind], field.name).toBeDefined()
    }
  })

  it('has check values, of which one comes from outside or is solved by hand', () => {
    const origins = checksOf(id).map((check) => check.origin)
    expect(origins.length).toBeGreaterThan(0)
    for (const origin of origins) expect(['published', 'independent program', 'by hand']).toContain(origin)
  })

  describe.each(checksOf(id))('$origin: $title', (check) => {
    const rows = runCheckValue(method, check)
    it.each(rows)(`$measure is $expected $unit [${check.source}]`, (row) => {
      expect(row, `computed ${row.computed}, u ${row.computedU}`).toMatchObject({ agrees: true })
    })
  })

  it('says what to do before a test', () => {
    expect(method.plan).toBeTypeOf('function')
  })

  it('has cases with what is expected of each', () => {
    const cases = join(folder, id, 'cases')
    const expected: unknown = JSON.parse(readFileSync(join(cases, 'expect.json'), 'utf8'))
    const records = globSync('**/*.md', { cwd: cases })
    expect(records.length).toBeGreaterThanOrEqual(2)
    expect(Object.keys(expected as object).length).toBeGreaterThan(0)
  })
})
