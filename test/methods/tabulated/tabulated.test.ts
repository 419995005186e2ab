/** Fields of the card, what aggregates take, what is left out and why, and what must not change the result. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { certified } from '../../../src/methods/coverage.ts'
import { simulateMeasures } from '../../../src/methods/monte-carlo.ts'
import { method } from '../../../src/methods/tabulated/index.ts'
import { KINDS } from '../../../src/quantity/kinds.ts'
import { exact } from '../../../src/quantity/quantity.ts'
import type { Quantity } from '../../../src/quantity/types.ts'
import { column, fieldsOf, prepared, readField, u, words } from './bench.ts'

const SPRING = {
  time: { unit: 's', meaning: 'stopwatch' },
  force: { unit: 'N', meaning: 'pull' },
  travel: { unit: 'mm', meaning: 'movement' },
}
const one = (measure: string) => prepared({ columns: SPRING, measures: { out: measure } })
const spring = (force: number[], travel: number[], r = 0) => ({
  time: column(
    's',
    force.map((_, row) => row),
  ),
  force: column('N', force, r),
  travel: column('mm', travel, r),
})

describe('aggregates by hand', () => {
  const rows = spring([10, 30, 20, 40, 50], [1, 3, 2, 4, 5])
  test.each([
    ['mean(force)', 30],
    ['max(force)', 50],
    ['min(force)', 10],
    ['first(force)', 10],
    ['last(force)', 50],
    ['range(force)', 40],
    ['count(force)', 5],
    ['slope(force, travel)', 10_000],
    ['at(force, time, 2.5 s)', 30],
    ['at(force, time, 1 s)', 30],
    ['integral(force, time)', 120],
    ['max(first(force), last(force))', 50],
    ['(last(force) - first(force)) / range(time)', 10],
  ])('%s', (formula, value) => {
    expect(one(formula).measured(rows).measures.out?.value).toBeCloseTo(value, 9)
  })

  test('an area of a parabola goes to its integral: ∫ t² dt from 0 to 1 is 1/3', () => {
    const count = 2001
    const t = Array.from({ length: count }, (_, row) => row / (count - 1))
    const area = one('integral(force, time)').measured({
      ...spring(
        t.map((each) => each ** 2),
        t,
      ),
      time: column('s', t),
    }).measures.out
    expect(area?.value).toBeCloseTo(1 / 3, 6)
    // What the bend between readings leaves, h²/12 · (f′(1) − f′(0)), lies inside the interval.
    expect(Math.abs((area?.value ?? 0) - 1 / 3)).toBeLessThan(2 * u(area))
  })

  test('of two readings, whichever is the higher', () => {
    for (const force of [
      [10, 30],
      [30, 10],
    ]) {
      const two = spring(force, [1, 2])
      expect(one('range(force)').measured(two).measures.out?.value).toBe(20)
      expect(one('at(force, time, 0.25 s)').measured(two).measures.out?.value).toBe(
        (force[0] ?? 0) * 0.75 + (force[1] ?? 0) * 0.25,
      )
      expect(one('at(force, time, 1 s)').measured(two).measures.out?.value).toBe(force[1])
    }
  })

  test('count is exact, and a measure of counts only', () => {
    expect(one('count(force) - 2').measured(rows).measures.out).toMatchObject({ value: 3, parts: {} })
  })
})

describe('uncertainty', () => {
  test('identical readings carry their digit: 0.5/√12, 0.5/√6, 0.5/(√6 · span) (GUM F.2.2.1)', () => {
    const same = spring([20, 20, 20, 20], [1, 2, 3, 4])
    const rows = { ...same, force: column('N', [20, 20, 20, 20], 0.5) }
    const uOf = (formula: string) => u(one(formula).measured(rows).measures.out)
    for (const single of [
      'mean(force)',
      'max(force)',
      'min(force)',
      'first(force)',
      'last(force)',
      'at(force, time, 1 s)',
    ])
      expect(uOf(single), single).toBeCloseTo(0.5 / Math.sqrt(12), 12)
    for (const both of [
      'range(force)',
      'last(force) - first(force)',
      'max(force) - min(force)',
      'mean(force) - last(force)',
    ])
      expect(uOf(both), both).toBeCloseTo(0.5 / Math.sqrt(6), 12)
    expect(uOf('slope(force, time)')).toBeCloseTo(0.5 / Math.sqrt(6) / 3, 12)
    expect(uOf('integral(force, time)')).toBeCloseTo((0.5 / Math.sqrt(12)) * 3, 12)
  })

  test('the zero error of one gauge drops out of a difference, and counts once in a sum', () => {
    const gauge = { force: certified('gauge', { offset: 2 }) }
    const rows = spring([10, 30, 20, 40, 50], [1, 3, 2, 4, 5])
    expect(u(one('last(force) - first(force)').measured(rows, gauge).measures.out)).toBeCloseTo(0, 9)
    expect(u(one('last(force) + first(force)').measured(rows, gauge).measures.out)).toBeCloseTo(4, 9)
  })

  test('accuracy that is not stated is not known, and a given counts', () => {
    const rows = spring([10, 30, 20, 40, 50], [1, 3, 2, 4, 5])
    const gauge = { force: certified('gauge', { gain: null, offset: null }) }
    expect(one('mean(force)').measured(rows, gauge).measures.out?.parts).toBeNull()
    const arm: Quantity = {
      value: 0.5,
      dim: KINDS.length.dim,
      parts: { arm: { u: 0.01, dof: Number.POSITIVE_INFINITY, pool: 'arm', shape: 'normal' } },
      why: [],
    }
    const { out } = prepared({
      columns: SPRING,
      measures: { out: 'max(force) * arm' },
      inputs: { arm },
    }).measured(rows).measures
    expect(out?.value).toBe(25)
    expect(out?.dim).toEqual(KINDS.moment.dim)
    expect(u(out)).toBeCloseTo(0.5, 9)
  })

  test('a rate over time needs the drift of its instrument, unless the column says otherwise', () => {
    const rows = spring([10, 30, 20, 40, 50], [1, 3, 2, 4, 5])
    const gauge = { force: certified('gauge', { drift: null }) }
    expect(one('slope(force, time)').measured(rows, gauge).measures.out?.parts).toBeNull()
    expect(one('slope(force, travel)').measured(rows, gauge).measures.out?.parts).not.toBeNull()
    const still = { ...SPRING, force: { ...SPRING.force, hold: 'no' } }
    const card = prepared({ columns: still, measures: { out: 'slope(force, time)' } })
    const { out } = card.measured(rows, gauge).measures
    expect(out?.parts).not.toBeNull()
  })

  test('Monte Carlo on the same function agrees with first order', () => {
    const card = prepared({
      columns: SPRING,
      measures: { out: 'slope(force, travel) * mean(travel) / max(force)' },
    })
    const force = [10.2, 19.7, 30.4, 39.9, 50.1, 60.2, 69.5, 80.3]
    const rows = spring(force, [1, 2, 3, 4, 5, 6, 7, 8], 0.1)
    const gauges = {
      force: certified('cell', { gain: 0.01, offset: 0.3 }),
      travel: certified('dial', { offset: 2e-5 }),
    }
    const measured = card.measured(rows, gauges)
    const simulated = simulateMeasures(measured.input, measured, 20_000, 7).out
    // The scatter is t with 6 degrees of freedom: its standard deviation is wider than u by up to √(6/4).
    expect((simulated?.u ?? 0) / u(measured.measures.out)).toBeGreaterThan(0.97)
    expect((simulated?.u ?? 0) / u(measured.measures.out)).toBeLessThan(1.25)
  })
})

describe('what must not change the result', () => {
  const force = fc.array(fc.double({ min: 1, max: 500, noNaN: true }), { minLength: 5, maxLength: 20 })
  const gauges = { force: certified('cell', { gain: 0.01, offset: 0.3 }) }
  test('rows in another order, for mean, max, range and slope', () => {
    fc.assert(
      fc.property(force, (values) => {
        const travel = values.map((_, row) => row)
        for (const formula of ['mean(force)', 'max(force)', 'range(force)', 'slope(force, travel)']) {
          const there = one(formula).measured(spring(values, travel, 0.1), gauges).measures.out
          const back = one(formula).measured(spring(values.toReversed(), travel.toReversed(), 0.1), gauges)
            .measures.out
          expect(back?.value).toBeCloseTo(there?.value ?? Number.NaN, 6)
          expect(u(back) / u(there)).toBeCloseTo(1, 6)
        }
      }),
      { numRuns: 25 },
    )
  })
  test('US units, the zero of the clock, and the sign', () => {
    fc.assert(
      fc.property(force, (values) => {
        const t = values.map((_, row) => row)
        const formula = 'slope(force, time) * 1 s + mean(force)'
        const si = one(formula).measured({ time: column('s', t), force: column('N', values, 0.1) }).measures
          .out
        const later = {
          time: column(
            'min',
            t.map((each) => (each + 1e4) / 60),
          ),
          force: column('N', values, 0.1),
        }
        const moved = one(formula).measured(later).measures.out
        const us = {
          time: column('s', t),
          force: column(
            'lbf',
            values.map((each) => each / 4.4482216152605),
            0.1 / 4.4482216152605,
          ),
        }
        const pounds = one(formula).measured(us).measures.out
        const negative = one(formula).measured({
          time: column('s', t),
          force: column(
            'N',
            values.map((each) => -each),
            0.1,
          ),
        }).measures.out
        for (const [other, sign] of [
          [moved, 1],
          [pounds, 1],
          [negative, -1],
        ] as const) {
          expect((sign * (other?.value ?? Number.NaN)) / (si?.value ?? 1)).toBeCloseTo(1, 6)
          expect(u(other) / u(si)).toBeCloseTo(1, 5)
        }
      }),
      { numRuns: 25 },
    )
  })
  test('a measure through another one is the same as written out, with the same budget', () => {
    const rows = spring([30.1, 30, 30.2, 30.3, 30.1], [1, 3, 2, 4, 5], 0.1)
    const apart = prepared({
      columns: SPRING,
      measures: { mass: 'mean(force) / g0', out: 'mass * g0 / mean(force)' },
    })
    const { out } = apart.measured(rows, gauges).measures
    expect(out?.value).toBeCloseTo(1, 12)
    // But for the finite steps of first order.
    expect(u(out)).toBeLessThan(1e-5)
  })
})

describe('left out, with the reason, and never 0', () => {
  const rows = spring([10, 30, 20, 40, 50], [1, 3, 2, 4, 5])
  const said = (formula: string, columns = rows) => {
    const card = one(formula)
    expect(card.measured(columns).measures.out).toBeUndefined()
    return card
      .remarks(columns)
      .map(({ text }) => text)
      .join('; ')
  }
  test('too few readings', () => {
    expect(said('mean(force)', spring([1], [1]))).toContain('needs 2 readings, and there is one')
    expect(said('slope(force, time)', spring([1, 2], [1, 2]))).toContain('needs 3 readings')
    expect(said('first(force) - last(force)', spring([5], [1]))).toContain('two values of it are taken')
  })
  test('a place that is not reached, or passed twice', () => {
    expect(said('at(force, time, 9 s)')).toContain('nothing is extrapolated')
    expect(said('at(travel, force, 25 N)')).toContain('passes the place')
  })
  test('an area over what does not rise; a formula without a value; a column that is not there', () => {
    expect(said('integral(force, travel)')).toContain('does not rise')
    expect(said('1 / (first(force) - first(force))')).toContain('left out')
    const { travel: _, ...without } = rows
    expect(said('mean(travel)', without as typeof rows)).toContain('no column `travel`')
  })
  test('a given that the day did not bring, or in another dimension', () => {
    expect(said('max(force) * arm')).toContain('`arm` is not known here')
    const card = prepared({
      columns: SPRING,
      measures: { out: 'max(force) + arm' },
      inputs: { arm: exact(1, KINDS.length.dim) },
    })
    expect(card.measured(rows).measures.out).toBeUndefined()
  })
})

describe('missing values', () => {
  const gap = (row: number) => {
    const rows = spring([10, 20, 30, 40, 50, 60, 70, 80, 90, 100], [1, 2, 3, 4, 5, 6, 7, 8, 9, 10])
    const values = rows.force.values.with(row, Number.NaN)
    return {
      ...rows,
      force: { ...rows.force, values, missing: Uint8Array.from(values, (_, at) => (at === row ? 1 : 0)) },
    }
  }
  const bars = (formula: string, row: number) =>
    one(formula)
      .remarks(gap(row))
      .filter(({ effect }) => effect === 'bars-pass')
      .map(({ text }) => text)
      .join('; ')
  test('are said, and bar what they may have changed', () => {
    expect(bars('max(force)', 4)).toContain('may lie beyond')
    expect(bars('last(force)', 9)).toContain('the last row')
    expect(bars('last(force)', 4)).toBe('')
    expect(bars('integral(force, time)', 4)).toContain('bridges')
    expect(bars('at(force, time, 4.5 s)', 4)).toContain('not neighbours')
    expect(bars('slope(force, time)', 4)).toBe('')
    expect(
      one('slope(force, time)')
        .remarks(gap(4))
        .map(({ text }) => text),
    ).toEqual(['one row has no value of `force` or `time`: it is left out'])
  })
})

describe('diagnostics', () => {
  test('few readings behind a mean, and readings that wander', () => {
    const three = one('mean(force)').remarks(spring([10, 12, 11], [1, 2, 3]))
    expect(three[0]?.text).toContain('2 degrees of freedom')
    const drifting = Array.from({ length: 30 }, (_, row) => 100 + 10 * Math.sin(row / 6))
    expect(one('mean(force)').remarks(spring(drifting, drifting))[0]?.text).toContain('wander together')
    // One digit up in the middle is the digit alone.
    const step = Array.from({ length: 20 }, (_, row) => (row < 10 ? 20 : 20.4))
    const rows = { ...spring(step, step), force: column('N', step, 1) }
    expect(one('mean(force)').remarks(rows)).toEqual([])
  })
  test('reach measures through other measures', () => {
    const card = prepared({
      columns: SPRING,
      measures: { inner: 'mean(force)', out: 'inner * 2', other: 'max(force)' },
    })
    expect(card.remarks(spring([10, 12, 11], [1, 2, 3]))[0]?.measures).toEqual(['inner', 'out'])
  })
})

test('words mark rows: one is that reading, several their mean with its scatter', () => {
  const columns = {
    side: { unit: 'text', words: ['left', 'right'], meaning: 'side' },
    pull: { unit: 'N', meaning: 'pull' },
  }
  const card = prepared({
    columns,
    measures: { left: 'at(pull, side, left)', split: 'at(pull, side, left) - at(pull, side, right)' },
  })
  const single = card.measured({ side: words('right', 'left'), pull: column('N', [3, 5], 0.1) }).measures
  expect(single.left?.value).toBe(5)
  expect(u(single.split)).toBeCloseTo(0.1 / Math.sqrt(6), 12)
  const four = {
    side: words('left', 'right', 'left', 'left', 'left'),
    pull: column('N', [4, 3, 5, 6, 5], 0.1),
  }
  const { left } = card.measured(four).measures
  expect(left?.value).toBe(5)
  // s² = (1 + 0 + 1 + 0)/3
  expect(u(left)).toBeCloseTo(Math.sqrt(2 / 3 / 4), 12)
})

describe('the schema of a card', () => {
  const card = prepared({
    columns: {
      time: { unit: 'hh:mm', meaning: 'clock' },
      rpm: { unit: 'rpm', meaning: 'engine speed' },
      oil: { unit: 'degC', meaning: 'oil temperature', required: 'no' },
      torque: { unit: 'N·m', meaning: 'torque of the brake' },
      work: { unit: 'J', meaning: 'counter' },
    },
    measures: {
      drop: { formula: 'first(rpm) - min(rpm)', positive: 'yes', meaning: 'drop on one ignition' },
      hot: 'max(oil)',
      rise: 'last(oil) - first(oil)',
      above: 'hot - 20 degC',
      odd: 'max(rpm) * max(rpm) * max(oil)',
      open: 'max(torque) * factor',
    },
  })
  test('columns in the kind of their unit, measures in that of their formula', () => {
    const kinds = Object.fromEntries(
      [...card.schema.columns, ...card.schema.measures].map(({ name, kind }) => [name, kind]),
    )
    expect(kinds).toMatchObject({
      time: 'time',
      rpm: 'angular-speed',
      oil: 'temperature',
      torque: 'moment',
      work: 'energy',
      drop: 'angular-speed',
      hot: 'temperature',
      rise: 'temperature-difference',
      above: 'temperature-difference',
    })
    expect(card.schema.columns.map(({ required }) => required)).toEqual([true, true, false, true, true])
    expect(card.schema.measures.find(({ name }) => name === 'odd')?.dim).toEqual([0, 0, -2, 0, 1, 2])
    expect(card.schema.measures.find(({ name }) => name === 'open')?.dim).toBeNull()
    expect(card.schema.uses).toEqual(['factor'])
  })

  test.each([
    ['columns', { rpm: { meaning: 'speed' } }, 'either a `unit` or a `kind`'],
    ['columns', { rpm: { unit: 'rpmm', meaning: 'speed' } }, 'rpmm'],
    ['columns', { rpm: { unit: 'N·s·A', meaning: 'speed' } }, 'of no kind'],
    ['columns', { rpm: { unit: 'rpm' } }, 'needs a `meaning`'],
    ['columns', { rpm: { unit: 'rpm', meaning: 'speed', needed: 'no' } }, 'no `needed`'],
    ['columns', { RPM: { unit: 'rpm', meaning: 'speed' } }, 'cannot be the name'],
    ['columns', { time: { unit: 'rpm', meaning: 'speed' } }, 'clock of the run'],
    ['columns', { remark: { unit: 'text', meaning: 'words' } }, 'without being declared'],
    ['columns', { rpm: { unit: 'rpm', meaning: 'speed', required: 'maybe' } }, 'yes or no'],
    ['columns', { rpm: { unit: 'rpm', meaning: 'speed', words: ['a'] } }, 'not words'],
    ['columns', { constructor: { unit: 'rpm', meaning: 'speed' } }, 'cannot be the name'],
    ['columns', [], 'names what is read'],
    ['measures', {}, 'what is computed'],
    ['measures', { mean: 'mean(force)' }, 'meaning in formulas'],
    ['measures', { rpm: 'mean(force)' }, 'name of a unit'],
    ['measures', { out: 'mean(force) < 3 N' }, 'compares'],
    ['measures', { out: 'mean(force' }, 'bracket'],
    ['measures', { out: { of: 'mean(force)' } }, 'no formula'],
    ['measures', { out: { formula: 'mean(force)', positive: 'true' } }, 'yes or no'],
  ])('%s %j is refused', (name, raw, said) => {
    const read = readField(name, raw)
    expect(read.ok).toBe(false)
    if (!read.ok) expect(read.error.map(({ message }) => message).join('; ')).toContain(said)
  })

  test.each([
    ['mean(forces)', 'takes a column'],
    ['mean(force * 2)', 'takes a column'],
    ['mean(force, time)', 'takes one column'],
    ['force * 2', 'is a column'],
    ['at(force, time, 3 N)', 'the place in `at` is not'],
    ['at(force, travel, time)', 'not the column'],
    ['at(force, side, left)', 'no word'],
    ['mean(side)', 'holds words'],
    ['mean(force) + mean(travel)', 'neither added'],
    ['mean(force) * arm', 'not known here'],
    ['median(force)', 'no function'],
    ['out + mean(force)', 'in a ring'],
  ])('%s is a problem of the card', (formula, said) => {
    const fields = fieldsOf({
      columns: { ...SPRING, side: { unit: 'text', meaning: 'side', words: ['port'] } },
      measures: { out: formula },
    })
    const found = method.checkFields?.(fields, {}) ?? []
    expect(found.map(({ message }) => message).join('; ')).toContain(said)
    expect(found[0]?.path).toEqual(['measures', 'out'])
  })
})

test('a rehearsal reaches what its truth says of measures', () => {
  const columns = {
    point: { unit: 'text', words: ['left', 'right', 'nose'], meaning: 'wheel' },
    scale: { unit: 'kg', meaning: 'scale' },
    volume: { unit: 'L', meaning: 'can' },
    time: { unit: 's', meaning: 'clock' },
  }
  const measures = {
    nose: 'at(scale, point, nose)',
    weight: 'at(scale, point, left) + at(scale, point, right) + nose',
    flow: 'slope(volume, time)',
    spread: 'range(scale)',
  }
  const card = prepared({ columns, measures })
  const truth = { nose: 80, weight: 600, flow: 1e-5 }
  const reached = card.measured(method.rehearse(card.givens, truth, {}, 1)).measures
  for (const [name, value] of Object.entries(truth))
    expect((reached[name]?.value ?? 0) / value, name).toBeCloseTo(1, 6)
})

test('a logger file of a million rows in seconds, and its scatter by blocks', () => {
  const count = 1_000_000
  const t = Array.from({ length: count }, (_, row) => row / 1000)
  const card = prepared({
    columns: SPRING,
    measures: {
      rate: 'slope(force, time)',
      area: 'integral(force, time)',
      level: 'mean(force)',
      top: 'max(force)',
    },
  })
  const rows = {
    time: column('s', t),
    force: column(
      'N',
      t.map((each, row) => each + (row % 7)),
      0.1,
    ),
  }
  const begun = performance.now()
  const { measures } = card.measured(rows, { force: certified('cell', { gain: 0.001, offset: 0.1 }) })
  expect(performance.now() - begun).toBeLessThan(8_000)
  expect(measures.rate?.value).toBeCloseTo(1, 5)
  expect(measures.level?.value).toBeCloseTo(499.9995 + 3, 2)
  expect(measures.area?.value).toBeCloseTo(499_999.0 + 3 * 999.999, -2)
})

test('figures: each used column over what it is taken over, with its line', () => {
  const card = one('slope(force, travel) + 0 N/m')
  const rows = spring([10, 20, 30], [1, 2, 3])
  const { selection, measures } = card.measured(rows)
  const [figure, second] = method.figures(measures, rows, card.givens, selection)
  expect(second).toBeUndefined()
  expect(figure).toMatchObject({ x: { kind: 'length' }, y: { kind: 'force' } })
  expect(figure?.series.map(({ name }) => name)).toEqual(['force', 'fit'])
})
