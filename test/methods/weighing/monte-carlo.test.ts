/** First order against Monte Carlo (JCGM 101) on the same runs: standard uncertainties agree within 6 %. */
import { expect, test } from 'vitest'
import { method as fuelFlow } from '../../../src/methods/fuel-flow/index.ts'
import { method as massBalance } from '../../../src/methods/mass-balance/index.ts'
import { measureRun } from '../../../src/methods/measure.ts'
import { simulateMeasures } from '../../../src/methods/monte-carlo.ts'
import { method as travel } from '../../../src/methods/travel/index.ts'
import { method as weighing } from '../../../src/methods/weighing/index.ts'
import { standardUncertainty } from '../../../src/quantity/quantity.ts'
import { field, rehearsed, type Setup, type Truth } from '../bench.ts'
import { given, instrument, known } from '../parts.ts'

const fit = { gain: 0.001, shape: 'normal' } as const
const setups: readonly (readonly [string, Setup, Truth, readonly string[]])[] = [
  [
    'weighing',
    {
      method: weighing,
      inputs: {
        pitch: known('pitch', 0.01, 0.004, 'angle'),
        cg_height: known('cg_height', 0.8, 0.1, 'length'),
        arm_mains: known('arm_mains', 1.8, 0.003, 'length'),
        arm_nose: known('arm_nose', 0.4, 0.003, 'length'),
      },
      fields: { points: ['mains', 'nose'] },
      instruments: { reading: instrument('scale', { ...fit, resolution: 0.5, offset: 0.3 }) },
    },
    { weight: 400, cg: 1.5, repeats: 20, noise: 0.4 },
    ['weight', 'moment', 'cg', 'at_nose'],
  ],
  [
    'mass-balance',
    {
      method: massBalance,
      inputs: { mass: known('mass', 2, 0.01, 'mass'), chord: known('chord', 0.25, 0.002, 'length') },
      instruments: {
        reading: instrument('scale', { ...fit, resolution: 0.001, offset: 0.001 }),
        arm: instrument('rule', { resolution: 0.001, offset: 0.0005 }),
      },
    },
    { unbalance: 0.1, arm: 0.4, repeats: 20, noise: 0.002 },
    ['unbalance', 'cg_arm', 'balance_ratio'],
  ],
  [
    'fuel-flow',
    {
      method: fuelFlow,
      inputs: {
        required: given(7.5e-6, 'volume-flow'),
        density: known('density', 720, 3, 'density'),
        time_error: given(0.3, 'time'),
      },
      words: { feed: 'gravity' },
      instruments: { mass: instrument('scale', { ...fit, resolution: 0.001, linearity: 0.002 }) },
    },
    { noise: 0.003, readings: 30 },
    ['flow', 'flow_ratio', 'late_flow'],
  ],
  [
    'travel',
    {
      method: travel,
      inputs: { radius: known('radius', 0.4, 0.002, 'length') },
      words: { counted_from: 'zero', offset_as: 'chord' },
      fields: { positions: field(travel, 'positions', { left: { nominal: '28 deg', tolerance: '2 deg' } }) },
      instruments: { offset: instrument('rule', { ...fit, resolution: 0.001, offset: 0.001 }) },
    },
    { repeats: 20, noise: 0.001 },
    ['left', 'left_error', 'left_margin'],
  ],
]

test.each(setups)('%s', (_, setup, truth, names) => {
  const columns = rehearsed(setup, truth, 11)
  const { method, inputs, words = {}, fields = {}, instruments } = setup
  const schema = method.describe?.(fields, Object.keys(columns)) ?? method.schema
  const input = { runId: 'simulated', method, schema, columns, instruments, inputs, words, fields }
  const measured = measureRun(input)
  if (!measured.ok) throw new Error(measured.error)
  const simulated = simulateMeasures(input, measured.value, 4000, 5)
  for (const name of names) {
    const measure = measured.value.measures[name]
    const u = measure ? standardUncertainty(measure) : null
    expect(u, name).toBeGreaterThan(0)
    expect((simulated[name]?.u ?? Number.NaN) / (u ?? 1), name).toBeCloseTo(1, 1)
    expect(Math.abs((simulated[name]?.u ?? Number.NaN) / (u ?? 1) - 1), name).toBeLessThan(0.06)
  }
})
