/** Flows to set against the required flow by hand and against the method's own conditions; what is advised after. */
import { expect, test } from 'vitest'
import { method } from '../../../src/methods/flow-resistance/index.ts'
import { barsOf, givensOf, rehearsed, type Setup } from '../bench.ts'
import { given } from '../parts.ts'
import {
  advised,
  asked,
  known,
  limit,
  numbersIn,
  numericColumn,
  planColumn,
  planned,
  sentences,
} from '../plan-bench.ts'

const LITRE_A_MINUTE = 1 / 60_000
const meter = asked(0.3 * LITRE_A_MINUTE, 0.1 * LITRE_A_MINUTE, {
  range: { low: 0, high: 15 * LITRE_A_MINUTE },
})
const setup = (more: Partial<Setup> = {}): Setup => ({
  method,
  inputs: {
    ullage: given(0.1, 'volume'),
    climb_rate: given(4, 'speed'),
    descent_rate: given(10, 'speed'),
    altitude: given(0, 'length'),
  },
  instruments: { flow: meter, pressure_drop: asked(20, 5) },
  ...more,
})
const gauges = { flow: { dim: [3, 0, -1, 0, 0, 0], unit: LITRE_A_MINUTE } } as const

test('by hand: 100 L that descend 10 m/s at sea level breathe g₀/(R T) · 1 m³/s = 1.18559e-4 m³/s', () => {
  // 9.80665/(287.05287 · 288.15)
  const [top, required] = numbersIn(planned(setup()), /flow inwards to/)
  expect(required).toBeCloseTo(9.80665 / (287.05287 * 288.15), 9)
  expect(top).toBeGreaterThan(required ?? Number.NaN)
})

test('the highest flow that is planned is reached with 95 %; a digit less is not', () => {
  const plan = planned(setup(), { gauges })
  const [flows, ways] = [numericColumn(plan.readings, 'flow to set'), planColumn(plan.readings, 'direction')]
  const inwards = flows.filter((_, row) => ways[row] === 'in')
  expect(inwards.length).toBeGreaterThanOrEqual(5)
  const one = setup({ inputs: { ...setup().inputs, climb_rate: given(0, 'speed') } })
  const read = (top: number) => {
    const columns = rehearsed(one, { highest_flow: top, noise: 0, flow_noise: 0, ways: 2 }, 1)
    const values = Float64Array.from(columns.flow?.values ?? [], (_, row) => (top * ((row % 8) + 1)) / 8)
    return {
      ...columns,
      flow: { ...columns.flow, values, dim: gauges.flow.dim, resolution: meter.resolution },
    }
  }
  const top = Math.max(...inwards)
  expect(barsOf(one, read(top))).not.toMatch(/was not reached/)
  expect(barsOf(one, read(top - 2 * meter.resolution))).toMatch(/was not reached/)
})

test('expected drops are those of the earlier curve, and the limit stands at the required flow', () => {
  const measures = known({
    laminar_coefficient_in: [1e6, 'pressure-per-flow'],
    turbulent_coefficient_in: [1e10, 'pressure-per-flow-squared'],
  })
  const plan = planned(setup(), {
    gauges,
    earlier: [{ run: 'before', measures }],
    limits: [limit('drop_at_required_in', 'below', 250)],
  })
  const q = numericColumn(plan.steps, 'flow to set')[0] ?? Number.NaN
  expect(numericColumn(plan.steps, 'drop expected')[0]).toBeCloseTo(1e6 * q + 1e10 * q * q, 9)
  expect(numbersIn(plan, /may be at most/)[0]).toBe(250)
})

test('one way without direction; a meter that does not reach; nothing asked', () => {
  const line = setup({ inputs: { draw_rate: given(30 * LITRE_A_MINUTE, 'volume-flow') } })
  const plan = planned(line, { gauges })
  expect(sentences(plan)).toMatch(/Out of range/)
  expect(planned(setup({ inputs: {} })).readings).toBeNull()
})

test('advice, by hand: four times the drop wants twice the area of one narrow place; a thin line says so', () => {
  const measures = known({
    drop_at_required: [400, 'pressure'],
    required_flow: [1e-4, 'volume-flow'],
    laminar_coefficient: [0, 'pressure-per-flow'],
    turbulent_coefficient: [4e10, 'pressure-per-flow-squared'],
    effective_area: [10e-6, 'area'],
  })
  expect(advised(method, measures, 'drop_at_required', ['below', 100], givensOf(setup()))).toMatch(
    /4 times what is allowed[\s\S]*2 times as large, from 10 to 20 mm²/,
  )
  const thin = { ...measures, ...known({ laminar_coefficient: [4e6, 'pressure-per-flow'] }) }
  expect(advised(method, thin, 'drop_at_required', ['below', 100])).toMatch(/long thin passage/)
})
