/** A tank skin under 7 kPa, read with dials of 0.01 mm. */
import { method } from '../../../src/methods/proof-pressure/index.ts'
import type { Setup } from '../bench.ts'
import { given, instrument, known } from '../parts.ts'

export const TARGET = 7000
export const DIGIT = 1e-5

/** Standard uncertainties: a gauge good to 0.5 % and 10 Pa. */
export const gauge = instrument('gauge', { resolution: 1, gain: 0.0029, offset: 5 })
export const dial = instrument('dial', { resolution: DIGIT, gain: 1e-3, offset: 5e-6 })

export const setupOf = (stations: readonly string[], more: Partial<Setup> = {}): Setup => ({
  method,
  inputs: {
    target: given(TARGET, 'pressure'),
    hold: given(60, 'time'),
    volume: known('volume', 0.1, 0.001, 'volume'),
  },
  instruments: {
    pressure: gauge,
    ...Object.fromEntries(stations.map((name) => [name, { ...dial, id: name }])),
  },
  ...more,
})
