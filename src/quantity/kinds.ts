/** What a quantity is for: a name of the trade, its dimension, and the SI unit it is computed in. */
import type { Dimension } from './types.ts'

type KindInfo = { readonly name: string; readonly unit: string; readonly dim: Dimension }

export const KINDS = {
  number: { name: 'pure number', unit: '1', dim: [0, 0, 0, 0, 0, 0] },
  count: { name: 'count', unit: '1', dim: [0, 0, 0, 0, 0, 0] },
  text: { name: 'text', unit: 'text', dim: [0, 0, 0, 0, 0, 0] },
  length: { name: 'length', unit: 'm', dim: [1, 0, 0, 0, 0, 0] },
  area: { name: 'area', unit: 'm²', dim: [2, 0, 0, 0, 0, 0] },
  volume: { name: 'volume', unit: 'm³', dim: [3, 0, 0, 0, 0, 0] },
  mass: { name: 'mass', unit: 'kg', dim: [0, 1, 0, 0, 0, 0] },
  time: { name: 'time', unit: 's', dim: [0, 0, 1, 0, 0, 0] },
  angle: { name: 'angle', unit: 'rad', dim: [0, 0, 0, 0, 0, 1] },
  temperature: { name: 'temperature', unit: 'K', dim: [0, 0, 0, 0, 1, 0] },
  'temperature-difference': { name: 'temperature difference', unit: 'K', dim: [0, 0, 0, 0, 1, 0] },
  frequency: { name: 'frequency', unit: '1/s', dim: [0, 0, -1, 0, 0, 0] },
  'angular-speed': { name: 'angular speed', unit: 'rad/s', dim: [0, 0, -1, 0, 0, 1] },
  speed: { name: 'speed', unit: 'm/s', dim: [1, 0, -1, 0, 0, 0] },
  acceleration: { name: 'acceleration', unit: 'm/s²', dim: [1, 0, -2, 0, 0, 0] },
  force: { name: 'force', unit: 'N', dim: [1, 1, -2, 0, 0, 0] },
  moment: { name: 'moment', unit: 'N·m', dim: [2, 1, -2, 0, 0, 0] },
  energy: { name: 'energy', unit: 'J', dim: [2, 1, -2, 0, 0, 0] },
  power: { name: 'power', unit: 'W', dim: [2, 1, -3, 0, 0, 0] },
  pressure: { name: 'pressure', unit: 'Pa', dim: [-1, 1, -2, 0, 0, 0] },
  'pressure-rate': { name: 'pressure rate', unit: 'Pa/s', dim: [-1, 1, -3, 0, 0, 0] },
  density: { name: 'density', unit: 'kg/m³', dim: [-3, 1, 0, 0, 0, 0] },
  viscosity: { name: 'viscosity', unit: 'Pa·s', dim: [-1, 1, -1, 0, 0, 0] },
  'volume-flow': { name: 'volume flow', unit: 'm³/s', dim: [3, 0, -1, 0, 0, 0] },
  'mass-flow': { name: 'mass flow', unit: 'kg/s', dim: [0, 1, -1, 0, 0, 0] },
  throughput: { name: 'gas throughput', unit: 'Pa·m³/s', dim: [2, 1, -3, 0, 0, 0] },
  'volume-compliance': { name: 'volume per pressure', unit: 'm³/Pa', dim: [4, -1, 2, 0, 0, 0] },
  'length-per-pressure': { name: 'length per pressure', unit: 'm/Pa', dim: [2, -1, 2, 0, 0, 0] },
  'pressure-per-flow': { name: 'pressure per flow', unit: 'Pa·s/m³', dim: [-4, 1, -1, 0, 0, 0] },
  'pressure-per-flow-squared': {
    name: 'pressure per flow squared',
    unit: 'Pa·s²/m⁶',
    dim: [-7, 1, 0, 0, 0, 0],
  },
  'thermal-expansion': { name: 'expansion per kelvin', unit: '1/K', dim: [0, 0, 0, 0, -1, 0] },
  'linear-stiffness': { name: 'force per length', unit: 'N/m', dim: [0, 1, -2, 0, 0, 0] },
  'angular-stiffness': { name: 'moment per angle', unit: 'N·m/rad', dim: [2, 1, -2, 0, 0, -1] },
  'linear-compliance': { name: 'length per force', unit: 'm/N', dim: [0, -1, 2, 0, 0, 0] },
  'angular-compliance': { name: 'angle per moment', unit: 'rad/(N·m)', dim: [-2, -1, 2, 0, 0, 1] },
  'per-angle': { name: 'number per angle', unit: '1/rad', dim: [0, 0, 0, 0, 0, -1] },
  'length-per-angle': { name: 'length per angle', unit: 'm/rad', dim: [1, 0, 0, 0, 0, -1] },
  'area-loading': { name: 'mass per area', unit: 'kg/m²', dim: [-2, 1, 0, 0, 0, 0] },
  'mass-moment': { name: 'mass moment', unit: 'kg·m', dim: [1, 1, 0, 0, 0, 0] },
  current: { name: 'electric current', unit: 'A', dim: [0, 0, 0, 1, 0, 0] },
  voltage: { name: 'voltage', unit: 'V', dim: [2, 1, -3, -1, 0, 0] },
} as const satisfies Record<string, KindInfo>

export type Kind = keyof typeof KINDS
