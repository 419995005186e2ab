/**
 * The 95 % interval that is shown holds the true value in 93 to 97.5 % of simulated runs, of every measure of every
 * method; what is wide on purpose says why. The truth is outside of the code under test: it is put into the readings.
 * The bounds are the project's own; 95 % is the meaning of an expanded uncertainty (JCGM 100, 6.2.1).
 */
import { existsSync, readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import { describe, expect, it } from 'vitest'
import { coverageOf, notShown, type StoredCoverage, shareOf, verdictOf } from '../../src/methods/coverage.ts'
import { loadCoverages, loadMethods } from '../../src/methods/registry.ts'
import { prepareFormulas } from '../../src/quantity/formula/index.ts'

await prepareFormulas()
const methods = await loadMethods()
const coverages = await loadCoverages()

/** Few, so that the test takes seconds: the stored figures rest on many. */
const RUNS = 40
/** One in ten thousand of a normal distribution: hundreds of shares are compared. */
const FAR = 3.9

const deviation = (share: number, runs: number): number => Math.sqrt((share * (1 - share)) / runs)

/** A name of the schema with parts in angle brackets stands for many. */
const asPattern = (name: string): RegExp => new RegExp(`^${name.replaceAll(/<[^>]+>/g, '[a-z0-9_]+')}$`)

const storedOf = (id: string): StoredCoverage | null => {
  const file = resolve(import.meta.dirname, '../../src/methods', id, 'coverage.json')
  return existsSync(file) ? JSON.parse(readFileSync(file, 'utf8')) : null
}

it('every method has set-ups', () => {
  expect(Object.keys(coverages)).toEqual(Object.keys(methods))
})

describe.each(Object.entries(coverages))('%s', (id, coverage) => {
  const method = methods[id]
  if (!method) throw new Error(`no method ${id}`)
  const stored = storedOf(id)
  const rows = coverage.setups.map((setup) => ({
    setup,
    rows: coverageOf(method, setup, RUNS, stored?.seed ?? 1),
  }))

  it.each(['few', 'many'] as const)(
    'every measure stands in a set-up with %s readings, or why not',
    (readings) => {
      if (readings === 'many' && coverage.onlyFew) return
      const reasons = { ...coverage.without, ...(readings === 'few' ? coverage.onlyMany : {}) }
      const shown = rows.filter(({ setup }) => setup.readings === readings).flatMap((each) => each.rows)
      const missing = method.schema.measures
        .map(({ name }) => name)
        .filter((name) => reasons[name] === undefined)
        .filter((name) => !shown.some(({ measure }) => asPattern(name).test(measure)))
      expect(missing).toEqual([])
    },
  )

  it('the kept figures lie within the bounds, or beyond for a reason that is stated', () => {
    expect(stored?.rows.filter((row) => verdictOf(row) === 'outside')).toEqual([])
    expect(stored?.runs).toBeGreaterThanOrEqual(1000)
    expect(stored?.not).toEqual(notShown(coverage))
  })

  it('no reason is given where none is needed', () => {
    const excused = (stored?.rows ?? []).filter(({ wide, narrow }) => wide ?? narrow)
    const needed = new Set(excused.filter((row) => verdictOf(row) !== 'within').map(({ measure }) => measure))
    expect(excused.filter(({ measure }) => !needed.has(measure))).toEqual([])
  })

  it.each(rows)('$setup.title: the kept figures are those of the code as it is', ({ setup, rows: own }) => {
    const kept = stored?.rows.filter((row) => row.setup === setup.title) ?? []
    expect(kept.map(({ measure }) => measure)).toEqual(own.map(({ measure }) => measure))
    for (const [k, row] of own.entries()) {
      const then = kept[k]
      if (!then) continue
      expect(row.runs, row.measure).toBe(RUNS)
      expect(then.runs, row.measure).toBe(stored?.runs)
      const share = Math.min(shareOf(then), 1 - 1 / then.runs)
      const off = FAR * deviation(share, RUNS) + 1 / RUNS
      expect(Math.abs(shareOf(row) - share), `${row.measure} was ${share}`).toBeLessThanOrEqual(off)
      expect(row.U / then.U, `U of ${row.measure}`).toBeGreaterThan(0.85)
      expect(row.U / then.U, `U of ${row.measure}`).toBeLessThan(1.15)
    }
  })
})
