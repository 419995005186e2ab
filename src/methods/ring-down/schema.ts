/** What a ring-down run is made of: givens, columns, measures. Handbook, form and sheet come from here. */
import type { Kind } from '../../quantity/kinds.ts'
import type { ColumnField, Given, MeasureField, Schema } from '../method.ts'
import { bandField } from './band.ts'

/** Whatever follows the motion in proportion will do: its scale drops out of frequency and damping. */
export const signalKinds = [
  'acceleration',
  'speed',
  'length',
  'angle',
  'angular-speed',
  'force',
  'moment',
  'pressure',
  'number',
  'voltage',
  'current',
] as const satisfies readonly Kind[]

const [kind, ...or] = signalKinds

const givens: readonly Given[] = [
  {
    name: 'settle',
    kind: 'time',
    role: 'setpoint',
    required: false,
    default: '0 s',
    range: { low: 0 },
    meaning:
      'time after the largest swing that is left out, until what else was struck has died down (a tap rings higher modes, which fade first)',
  },
  {
    name: 'clock_error',
    kind: 'number',
    symbol: 'u_t',
    role: 'setpoint',
    required: false,
    default: '0.01 %',
    range: { low: 0, high: 0.1 },
    meaning:
      'largest error of the rate of the logger’s clock, as a part of it (limits): 0.01 % for quartz; more where a computer gave the times',
    source: 'common practice, no source',
  },
]

const columns: readonly ColumnField[] = [
  {
    name: 'time',
    kind: 'time',
    symbol: 't',
    required: true,
    ramp: 'own',
    hold: false,
    instrument: 'none',
    meaning: 'time of the reading; ten readings a turn or more',
  },
  {
    name: 'signal',
    kind,
    or,
    symbol: 'y',
    required: true,
    ramp: 'none',
    hold: false,
    instrument: 'required',
    meaning:
      'what the sensor shows of the free oscillation: acceleration, movement, strain (a pure number) or volts',
  },
]

const measures: readonly MeasureField[] = [
  { name: 'frequency', kind: 'frequency', symbol: 'f_d', meaning: 'frequency at which it rings' },
  {
    name: 'natural_frequency',
    kind: 'frequency',
    symbol: 'f_n',
    meaning: 'frequency without damping, f_d/√(1 − ζ²)',
  },
  {
    name: 'damping_ratio',
    kind: 'number',
    symbol: '\\zeta',
    positive: true,
    meaning: 'damping over critical damping; structural damping g is twice that where small',
    source: 'one degree of freedom, viscous damping',
  },
  {
    name: 'log_decrement',
    kind: 'number',
    symbol: '\\delta',
    positive: true,
    meaning:
      'logarithm of the ratio of successive amplitudes, by a line through those amplitudes: cross-check of the fit',
    source: 'δ = ln(x₀/xₙ)/n = 2πζ/√(1 − ζ²)',
  },
  {
    name: 'fit_residual',
    kind: 'number',
    meaning: 'scatter of the signal about the fit, over the amplitude at its beginning',
  },
  { name: 'damping_early', kind: 'number', meaning: 'damping ratio in the first half of the decay' },
  { name: 'damping_late', kind: 'number', meaning: 'damping ratio in the second half, at small amplitude' },
  { name: 'damping_change', kind: 'number', meaning: 'damping_late less damping_early' },
  { name: 'amplitude', kind, or, meaning: 'amplitude at the first fitted reading' },
]

export const schema: Schema = { givens, columns, measures, cardFields: [bandField] }
