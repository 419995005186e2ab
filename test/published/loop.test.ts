/**
 * The stored synthetic loop (k 20 N/mm, play 1.2 mm, friction 6 N, noise-free) and the numbers that follow from its
 * model: x = (F ∓ f)/k ± g/2. The data file carries its own header.
 */
import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { linesOf } from '../../src/methods/circuit-stiffness/fits.ts'
import { choiceOf } from '../../src/methods/circuit-stiffness/select.ts'
import type { Columns } from '../../src/methods/method.ts'
import { fitLine } from '../../src/quantity/fit.ts'
import { type Bench, column, gauge, given, measured } from '../methods/circuit-stiffness/bench.ts'

const rows = readFileSync(new URL('./data/synthetic_load_deflection_loop.csv', import.meta.url), 'utf8')
  .split('\n')
  .filter((line) => line !== '' && !line.startsWith('#'))
  .slice(1)
  .map((line) => line.split(','))

const load = rows.map((row) => Number(row[1]))
const deflection = rows.map((row) => Number(row[2]) * 1e-3)
const words = rows.map((row) => (row[0] ?? '').replace(/^(pos|neg)_/, ''))

const columns: Columns = {
  load: column('force', load, 0.1),
  deflection: column('length', deflection, 1e-6),
}
const named: Columns = {
  ...columns,
  branch: {
    ...column(
      'text',
      load.map(() => Number.NaN),
    ),
    texts: words,
  },
}
const bench: Bench = {
  inputs: { limit_load: given(100, 'force') },
  instruments: { load: gauge('cell', { resolution: 0.1 }), deflection: gauge('dial', { resolution: 1e-6 }) },
}

describe.each([
  ['branches found from the load', columns],
  ['branches named in the column', named],
])('synthetic loop, %s', (_, readings) => {
  const { measures, selection } = measured(bench, readings)
  const value = (name: string) => measures[name]?.value ?? Number.NaN

  test('play 1.2 mm, friction 6 N, slope 0.05 mm/N (metrology.md section 9)', () => {
    expect(value('free_play')).toBeCloseTo(1.2e-3, 12)
    expect(value('friction')).toBeCloseTo(6, 9)
    expect(value('hysteresis')).toBeCloseTo(0.6e-3, 12)
    expect(value('linear_stiffness')).toBeCloseTo(20e3, 6)
    expect(value('compliance')).toBeCloseTo(0.05e-3, 14)
    expect(value('nonlinearity')).toBeCloseTo(0, 10)
  })

  test('four slopes 0.05 mm/N; intercepts +0.3, +0.9, −0.3, −0.9 mm (metrology.md section 9)', () => {
    const lines = linesOf(
      choiceOf(selection).legs,
      readings.load?.values ?? new Float64Array(),
      readings.deflection?.values ?? new Float64Array(),
    )
    expect(lines.map((line) => line.slope * 1e3)).toEqual(
      [0.05, 0.05, 0.05, 0.05].map((x) => expect.closeTo(x, 12)),
    )
    expect(lines.map((line) => (line.meanMotion - line.slope * line.meanLoad) * 1e3)).toEqual(
      [0.3, 0.9, -0.3, -0.9].map((x) => expect.closeTo(x, 10)),
    )
  })

  test('not the wrong 17.258883 N/mm of one line through all points (metrology.md section 9)', () => {
    expect(1e-3 / fitLine(load, deflection).slope).toBeCloseTo(17.258883, 6)
    expect(value('linear_stiffness') / 1e3).not.toBeCloseTo(17.258883, 1)
  })

  test('deflection at 100 N is the reading 5.3 mm; the secant is 100/5.3 N/mm', () => {
    expect(value('deflection_at_limit')).toBeCloseTo(5.3e-3, 12)
    expect(value('secant_at_limit')).toBeCloseTo(100 / 5.3e-3, 6)
  })
})
