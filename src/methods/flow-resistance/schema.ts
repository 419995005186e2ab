/** What a flow-resistance run is made of: givens, columns, measures. */
import type { ColumnField, MeasureField, Schema } from '../method.ts'
import { givens } from './givens.ts'

const columns: readonly ColumnField[] = [
  {
    name: 'flow',
    kind: 'volume-flow',
    symbol: 'Q',
    required: true,
    ramp: 'own',
    hold: false,
    instrument: 'required',
    range: { low: 0 },
    meaning: 'volume flow through the vent or line, positive both ways, at the pressure in the tube',
  },
  {
    name: 'pressure_drop',
    kind: 'pressure',
    symbol: '\\Delta p',
    required: true,
    ramp: 'own',
    hold: false,
    instrument: 'required',
    meaning: 'pressure that drives the flow, from end to end, positive both ways',
  },
  {
    name: 'direction',
    kind: 'text',
    required: false,
    choices: ['in', 'out'],
    ramp: 'none',
    hold: false,
    instrument: 'none',
    meaning: 'in: into the tank (descent, fuel drawn); out: out of it (climb, refuelling)',
  },
]

/** Once for each way that was read; the bare name is that of the worse way. */
const eachWay: readonly MeasureField[] = [
  {
    name: 'laminar_coefficient',
    kind: 'pressure-per-flow',
    symbol: 'a',
    positive: true,
    meaning: 'part of the drop that grows with the flow',
  },
  {
    name: 'turbulent_coefficient',
    kind: 'pressure-per-flow-squared',
    symbol: 'b',
    positive: true,
    meaning: 'part of the drop that grows with the square of the flow',
  },
  {
    name: 'effective_area',
    kind: 'area',
    symbol: 'C_d A',
    positive: true,
    meaning: 'area of the ideal orifice that drops as much at the highest flow that was read',
    source: 'Q = C_d A √(2Δp/ρ), incompressible orifice',
  },
  {
    name: 'required_flow',
    kind: 'volume-flow',
    symbol: 'Q_R',
    meaning: 'flow that must pass: what the ullage breathes in climb or descent, and the flow of liquid',
  },
  {
    name: 'drop_at_required',
    kind: 'pressure',
    symbol: '\\Delta p_R',
    positive: true,
    meaning: 'drop at the required flow',
  },
  {
    name: 'highest_flow',
    kind: 'volume-flow',
    symbol: 'Q_m',
    meaning: 'highest flow that was read',
  },
  {
    name: 'flow_reached',
    kind: 'number',
    symbol: 'Q_m/Q_R',
    meaning: 'highest flow that was read over the required flow: below 1 the drop would be extrapolated',
  },
  {
    name: 'drop_at_no_flow',
    kind: 'pressure',
    symbol: '\\Delta p_0',
    meaning:
      'where the readings meet zero flow: other than zero for a flap or valve that opens at a pressure',
  },
]

const both: MeasureField = {
  name: 'direction_ratio',
  kind: 'number',
  symbol: '\\Delta p_i/\\Delta p_o',
  meaning: 'drop inwards over drop outwards, at the highest flow that was read both ways',
}

const named = (way: 'in' | 'out') =>
  eachWay.map((field) => ({
    ...field,
    name: `${field.name}_${way}`,
    meaning: `${field.meaning}; ${way === 'in' ? 'inwards' : 'outwards'}`,
  }))

export const schema: Schema = {
  givens,
  columns,
  measures: [...eachWay, both, ...named('in'), ...named('out')],
  cardFields: [],
}
