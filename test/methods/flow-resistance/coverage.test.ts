/** Simulated runs whose truth is known: the 95 % interval of every measure holds it in 93 to 97.5 % of them. */
import { describe, expect, test } from 'vitest'
import { method } from '../../../src/methods/flow-resistance/index.ts'
import { coverageOf, given, instrument, known, type Setup, type Truth } from './bench.ts'

const RUNS = 1000
const LITRE = 1 / 60_000

/** Standard uncertainties: a meter good to 1 % and 0.05 L/min, a gauge with an offset of 1 Pa. */
const meter = instrument('meter', {
  resolution: 0.01 * LITRE,
  gain: 0.006,
  offset: 0.03 * LITRE,
  shape: 'normal',
})
const gauge = instrument('gauge', {
  resolution: 0.5,
  gain: 0.004,
  offset: 1,
  linearity: 0.5,
  shape: 'normal',
})
const setup: Setup = {
  method,
  inputs: {
    ullage: known('ullage', 0.1, 0.0003, 'volume'),
    altitude: given(3000, 'length'),
    descent_rate: given(10.16, 'speed'),
    climb_rate: given(7.62, 'speed'),
    gas_density: known('gas_density', 1.2, 0.01, 'density'),
  },
  instruments: { flow: meter, pressure_drop: gauge },
}
/** 136 Pa at 8.25 L/min, a third of it laminar; a tenth more inwards. */
const truth: Truth = {
  laminar_coefficient: 5 / LITRE,
  turbulent_coefficient: 1.4 / LITRE ** 2,
  direction_ratio: 1.1,
  highest_flow: 10 * LITRE,
  noise: 1.5,
  flow_noise: 0,
}
const drop = (flow: number) => 5 * flow + 1.4 * flow * flow
const required = 7.7520504 // L/min inwards, 0.75 of it outwards
const expected = {
  laminar_coefficient_out: 5 / LITRE,
  turbulent_coefficient_out: 1.4 / LITRE ** 2,
  laminar_coefficient: 5.5 / LITRE,
  turbulent_coefficient_in: 1.54 / LITRE ** 2,
  required_flow: required * LITRE,
  drop_at_required: 1.1 * drop(required),
  drop_at_required_out: drop(0.75 * required),
  effective_area_out: 10 * LITRE * Math.sqrt(1.2 / (2 * drop(10))),
  direction_ratio: 1.1,
  highest_flow: 10 * LITRE,
  flow_reached: 10 / required,
  drop_at_no_flow_in: 0,
}

/** Names of measures whose intervals hold the truth too seldom or too often. */
const outOfBounds = (shares: Record<string, number>) =>
  Object.entries(shares).filter(([, share]) => share < 0.93 || share > 0.975)

describe('the 95 % interval holds the truth in 93 to 97.5 % of runs', () => {
  test('seven flows each way', () =>
    expect(outOfBounds(coverageOf(setup, { ...truth, readings: 7 }, expected, RUNS))).toEqual([]))
  test('thirty flows each way', () =>
    expect(outOfBounds(coverageOf(setup, { ...truth, readings: 30 }, expected, RUNS))).toEqual([]))
  test('a logger, two hundred rows each way', () => {
    // Of a sweep the highest flow is the mean of its last block, and the area that at this flow.
    const { highest_flow, flow_reached, effective_area_out, direction_ratio, ...rest } = expected
    expect(outOfBounds(coverageOf(setup, { ...truth, readings: 200 }, rest, 300))).toEqual([])
  })
})
