/** What scales leave unknown against the engine, how often to weigh, and what is advised after. */
import { describe, expect, test } from 'vitest'
import { method } from '../../../src/methods/weighing/index.ts'
import { expanded } from '../../../src/quantity/quantity.ts'
import { measured, rehearsed, type Setup } from '../bench.ts'
import { given } from '../parts.ts'
import {
  advised,
  asked,
  known,
  numbersIn,
  numericColumn,
  planColumn,
  planned,
  sentences,
} from '../plan-bench.ts'

const fields = { points: ['left', 'right', 'tail'], items: ['oil'] }
const setup = (more: Partial<Setup> = {}): Setup => ({
  method,
  inputs: {
    arm_left: given(2, 'length'),
    arm_right: given(2, 'length'),
    arm_tail: given(6, 'length'),
    pitch: given(0, 'angle'),
    cg_height: given(0.9, 'length'),
  },
  words: { datum: 'firewall', checked_on_the_spot: 'yes' },
  fields,
  instruments: { reading: asked(0.5, 0.1, { range: { low: 0, high: 300 } }) },
  ...more,
})
const loads = known({
  at_left: [220, 'mass'],
  at_right: [220, 'mass'],
  at_tail: [40, 'mass'],
  repeatability: [0.1, 'mass'],
})
const earlier = [{ run: 'before', measures: loads }]

describe('the plan', () => {
  test('U of mass and centre of gravity by the scales is what the engine makes of it', () => {
    // W = 480 kg at (440 · 2 + 40 · 6)/480 = 2.3333 m, by hand.
    const [U, UofCg] = numbersIn(planned(setup(), { earlier }), /their errors alone/)
    const columns = rehearsed(setup(), { weight: 480, cg: 1120 / 480, noise: 0.05 }, 1)
    const { weight, cg } = measured(setup(), columns).measures
    for (const [expected, found] of [
      [U, weight],
      [UofCg, cg],
    ] as const) {
      const ratio = (expected ?? Number.NaN) / (found ? (expanded(found)?.U ?? 0) : 0)
      expect(ratio).toBeGreaterThan(0.8)
      expect(ratio).toBeLessThan(1.2)
    }
  })
  test('by hand: one scale of ±0.5 kg under three points is ±1.5 kg on the mass, ±1.54 kg with its bend; three that change round by √3 less', () => {
    expect(numbersIn(planned(setup()), /their errors alone/)[0]).toBeCloseTo(1.5, 9)
    // 2 · 0.25 kg · √(3² + (√2/2)²): the ramp stands at ½, ½ and −½.
    const one = 0.5 * Math.sqrt(9.5)
    expect(numbersIn(planned(setup(), { earlier }), /their errors alone/)[0]).toBeCloseTo(one, 9)
    const three = setup({
      instruments: Object.fromEntries(['a', 'b', 'c'].map((name) => [`reading_${name}`, asked(0.5, 0.1)])),
    })
    const plan = planned(three, { earlier })
    expect(numbersIn(plan, /their errors alone/)[0]).toBeCloseTo(one / Math.sqrt(3), 9)
    const on = planColumn(plan.readings, 'on')
    // Every scale stands under every point once.
    const pairs = new Set(on.slice(0, 9).map((scale, row) => `${scale}/${row % 3}`))
    expect(pairs.size).toBe(9)
  })
  test('expects the loads of before, three times over, and the items', () => {
    const plan = planned(setup(), { earlier })
    expect(numericColumn(plan.readings, 'expected')).toEqual([220, 220, 40, 220, 220, 40, 220, 220, 40])
    expect(planColumn(plan.readings, 'point').at(-1)).toBe('oil')
  })
  test('more often where it repeated badly, and not at all where that does not help', () => {
    const at = (s: number) => [
      { run: 'before', measures: { ...loads, ...known({ repeatability: [s, 'mass'] }) } },
    ]
    expect(planned(setup(), { earlier: at(0.3) }).readings?.rows.length).toBeGreaterThan(10)
    expect(sentences(planned(setup(), { earlier: at(20) }))).toMatch(/drags or moves/)
  })
  test('says which scale is overloaded, and that nothing is known before the first weighing', () => {
    const small = setup({ instruments: { reading: asked(0.5, 0.1, { range: { low: 0, high: 200 } }) } })
    expect(numbersIn(planned(small, { earlier }), /Out of range/)).toEqual([200, 220])
    expect(sentences(planned(setup()))).toMatch(/make sure before that none is overloaded/)
    expect(planned(setup({ fields: {} })).readings).toBeNull()
  })
})

test('advice, by hand: 480 kg 10 mm too far forward take 4.8 kg·m; 12 kg too much must come off', () => {
  const measures = known({
    weight: [480, 'mass'],
    cg_forward_margin: [-0.01, 'length'],
    weight_margin: [-12, 'mass'],
  })
  expect(advised(method, measures, 'cg_forward_margin', ['above', 0])).toMatch(/10 mm aft: 4.8 kg·m/)
  expect(advised(method, measures, 'weight', ['below', 468])).toMatch(/12 kg must come off/)
  expect(
    advised(
      method,
      known({ weight: [480, 'mass'], cg_forward_margin: [0.01, 'length'] }),
      'cg_forward_margin',
      ['above', 0.02],
    ),
  ).toBe('')
})
