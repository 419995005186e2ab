/**
 * The units that may be written: SI with the prefixes that people use, and the trade's. Everything else is
 * refused with the nearest of these. Factors are exact by definition where nothing else is said
 * (international yard and pound 1959; SI Brochure; NIST SP 811 appendix B for the conventional heads).
 */
import { DIMENSIONLESS } from './dimension.ts'
import { KINDS } from './kinds.ts'
import type { Dimension } from './types.ts'

export type UnitEntry = {
  readonly names: readonly string[]
  readonly factor: number
  readonly dim: Dimension
  readonly offset: number
  /** Prefixes that are accepted before the first name. */
  readonly prefixes: readonly string[]
  /** Something that makes an energy of a product (J, and W or V in `kW·h`): see `Unit.energy`. */
  readonly energetic: boolean
}

type Options = { readonly prefixes?: string; readonly offset?: number; readonly energetic?: boolean }

function unit(names: string, factor: number, dim: Dimension, options: Options = {}): UnitEntry {
  return {
    names: names.split(' '),
    factor,
    dim,
    offset: options.offset ?? 0,
    prefixes: options.prefixes?.split(' ') ?? [],
    energetic: options.energetic ?? false,
  }
}

const { length, volume, mass, time, angle, temperature, frequency, speed, force, moment, pressure } = KINDS
const { power, viscosity, current, voltage } = KINDS

/** Pound-force: 0.45359237 kg × 9.80665 m/s². */
const LBF = 4.4482216152605
const FULL_TURN = 2 * Math.PI

export const UNITS: readonly UnitEntry[] = [
  unit('1', 1, DIMENSIONLESS),
  unit('%', 0.01, DIMENSIONLESS),
  unit('ppm', 1e-6, DIMENSIONLESS),

  // nm is left out: it is written for nanometre, nautical mile and newton metre alike.
  unit('m', 1, length.dim, { prefixes: 'k d c m µ' }),
  unit('in inch', 0.0254, length.dim),
  unit('ft', 0.3048, length.dim),
  unit('yd', 0.9144, length.dim),
  unit('mi', 1609.344, length.dim),
  unit('nmi', 1852, length.dim),
  // thousandth of an inch
  unit('thou', 0.0000254, length.dim),

  unit('L l litre liter', 0.001, volume.dim, { prefixes: 'd c m µ' }),
  unit('cc ccm', 1e-6, volume.dim),
  // 231 and 57.75 cubic inches of 0.0254³ m³
  unit('USgal gal', 0.003785411784, volume.dim),
  unit('USqt qt', 0.000946352946, volume.dim),
  unit('UKgal', 0.00454609, volume.dim),

  unit('g', 0.001, mass.dim, { prefixes: 'k m µ' }),
  unit('t tonne', 1000, mass.dim),
  unit('lb lbm', 0.45359237, mass.dim),
  unit('oz', 0.028349523125, mass.dim),
  // the mass that 1 lbf accelerates by 1 ft/s²
  unit('slug', LBF / 0.3048, mass.dim),

  unit('s sec', 1, time.dim, { prefixes: 'm µ' }),
  unit('min', 60, time.dim),
  unit('h hr', 3600, time.dim),
  unit('d day', 86400, time.dim),

  unit('rad', 1, angle.dim, { prefixes: 'm µ' }),
  unit('deg ° degree degrees', Math.PI / 180, angle.dim),
  unit('arcmin', Math.PI / 10800, angle.dim),
  unit('arcsec', Math.PI / 648000, angle.dim),
  unit('rev', FULL_TURN, angle.dim),
  unit('rpm', FULL_TURN / 60, KINDS['angular-speed'].dim),
  unit('Hz', 1, frequency.dim, { prefixes: 'k m' }),

  unit('K', 1, temperature.dim, { prefixes: 'm' }),
  unit('°C degC ℃', 1, temperature.dim, { offset: 273.15 }),
  // 459.67 °F below zero: 459.67 · 5/9
  unit('°F degF ℉', 5 / 9, temperature.dim, { offset: (459.67 * 5) / 9 }),
  unit('delta_degC delta_°C Δ°C ΔdegC', 1, temperature.dim),
  unit('delta_degF delta_°F Δ°F ΔdegF', 5 / 9, temperature.dim),

  // kt is the knot here, as in aviation; kn is the symbol of ISO 80000-3
  unit('kt kn knot knots', 1852 / 3600, speed.dim),
  unit('mph', 1609.344 / 3600, speed.dim),
  unit('fpm', 0.00508, speed.dim),

  unit('N', 1, force.dim, { prefixes: 'M k d m' }),
  unit('lbf', LBF, force.dim),
  unit('ozf', LBF / 16, force.dim),
  unit('kip', 1000 * LBF, force.dim),
  unit('kgf kp', 9.80665, force.dim),
  unit('gf', 0.00980665, force.dim),
  unit('Nm', 1, moment.dim, { prefixes: 'k m' }),

  unit('Pa', 1, pressure.dim, { prefixes: 'G M k h d m' }),
  unit('bar', 100000, pressure.dim, { prefixes: 'm' }),
  unit('atm', 101325, pressure.dim),
  unit('Torr torr', 101325 / 760, pressure.dim),
  unit('psi', LBF / 0.0254 ** 2, pressure.dim),
  unit('ksi', (1000 * LBF) / 0.0254 ** 2, pressure.dim),
  unit('psf', LBF / 0.3048 ** 2, pressure.dim),
  // Conventional heads: water of 1000 kg/m³ and mercury of 13595.1 kg/m³ under 9.80665 m/s²
  unit('mmH2O', 9.80665, pressure.dim),
  unit('cmH2O', 98.0665, pressure.dim),
  unit('inH2O', 249.08891, pressure.dim),
  unit('ftH2O', 2989.06692, pressure.dim),
  unit('mmHg', 133.322387415, pressure.dim),
  unit('cmHg', 1333.22387415, pressure.dim),
  unit('inHg', 3386.388640341, pressure.dim),

  unit('J', 1, moment.dim, { prefixes: 'M k m', energetic: true }),
  unit('Wh', 3600, moment.dim, { prefixes: 'M k m', energetic: true }),
  unit('W', 1, power.dim, { prefixes: 'M k m', energetic: true }),
  // mechanical horsepower, 550 ft·lbf/s; metric horsepower, 75 kgf·m/s
  unit('hp', 550 * 0.3048 * LBF, power.dim, { energetic: true }),
  unit('PS', 735.49875, power.dim, { energetic: true }),

  unit('cP', 0.001, viscosity.dim),
  unit('cSt', 0.000001, [2, 0, -1, 0, 0, 0]),

  unit('A', 1, current.dim, { prefixes: 'k m µ' }),
  unit('Ah', 3600, [0, 0, 1, 1, 0, 0], { prefixes: 'm' }),
  unit('V', 1, voltage.dim, { prefixes: 'k m µ', energetic: true }),
  unit('Ω ohm', 1, [2, 1, -3, -2, 0, 0], { prefixes: 'M k m' }),
]

/** Powers of ten as numerator and denominator, so that 38.1 mm is 38.1 / 1000 and has no float's tail. */
export const PREFIXES: Readonly<Record<string, readonly [number, number]>> = {
  G: [1e9, 1],
  M: [1e6, 1],
  k: [1000, 1],
  h: [100, 1],
  d: [1, 10],
  c: [1, 100],
  m: [1, 1000],
  µ: [1, 1e6],
}
