/** Functions for criteria on a control circuit: what its stiffness means in the air. */
import type { FormulaFunction } from '../../quantity/formula/types.ts'

const numbers = (args: readonly (number | string)[]): number[] => args.map(Number)

/**
 * Aerodynamic restoring moment of a surface per angle [N·m/rad]: h = −q·S·c·Ch_δ, positive where the air centres the
 * surface (Ch_δ negative). Definition of the hinge-moment coefficient, H = q·S·c·Ch.
 */
export const hingeMomentSlope = (q: number, S: number, c: number, ChDelta: number): number =>
  -q * S * c * ChDelta

/**
 * Share of the commanded deflection that is kept against the air: K/(K + h), from the balance of the circuit's
 * moment K·(δ_cmd − δ) with the air's h·δ. 0 where K + h ≤ 0: the air then drives the surface over to its stop,
 * nothing of the command is kept, and a criterion that asks for some fails.
 */
export const deflectionKept = (K: number, h: number): number => (K + h > 0 ? K / (K + h) : 0)

/** Sea-level density of the standard atmosphere, kg/m³ (ISO 2533). */
const SEA_LEVEL = 1.225

/**
 * Equivalent airspeed [m/s] at which a share of the commanded deflection is kept: K/(K + h) = share with
 * h = −½ρ₀V²·S·c·Ch_δ, so V = √(2·K·(1/share − 1)/(−ρ₀·S·c·Ch_δ)).
 */
export const speedForKept = (share: number, K: number, S: number, c: number, ChDelta: number): number =>
  Math.sqrt((2 * K * (1 / share - 1)) / (-SEA_LEVEL * S * c * ChDelta))

/** Steady roll rate of a rigid wing [rad/s]: p = −(Cl_δ/Cl_p)·(2V/b)·δ. */
export const rollRate = (
  ClDelta: number,
  ClP: number,
  speed: number,
  span: number,
  deflection: number,
): number => -(ClDelta / ClP) * ((2 * speed) / span) * deflection

export const functions: Readonly<Record<string, FormulaFunction>> = {
  hinge_moment_slope: {
    name: 'hinge_moment_slope',
    meaning:
      'moment of the air about the hinge per angle of the surface; positive where the air centres the surface',
    source: 'definition of the hinge-moment coefficient, H = q·S·c·Ch; derived, checked by hand',
    parameters: [
      { name: 'q', meaning: 'dynamic pressure', kind: 'pressure' },
      { name: 'S', meaning: 'area of the surface aft of the hinge', kind: 'area' },
      { name: 'c', meaning: 'chord of the surface aft of the hinge', kind: 'length' },
      { name: 'Ch_delta', meaning: 'hinge-moment coefficient per angle of the surface', kind: 'per-angle' },
    ],
    result: 'angular-stiffness',
    example: {
      formula: 'hinge_moment_slope(2334.240 Pa, 0.55 m^2, 0.25 m, -0.6/(1 rad))',
      value: '192.5748 N·m/rad',
      source: 'by hand: 2334.240 · 0.55 · 0.25 · 0.6',
    },
    evaluate: (...args) => {
      const [q = Number.NaN, S = Number.NaN, c = Number.NaN, slope = Number.NaN] = numbers(args)
      return q < 0 || S <= 0 || c <= 0
        ? 'dynamic pressure, area and chord must be positive'
        : hingeMomentSlope(q, S, c, slope)
    },
  },
  deflection_kept: {
    name: 'deflection_kept',
    meaning:
      'share of the commanded deflection that the surface keeps against the air; 0 where the air drives it over',
    source: 'balance of moments at the hinge, K·(δ_cmd − δ) = h·δ; derived, checked by hand',
    parameters: [
      {
        name: 'surface_stiffness',
        meaning: 'circuit stiffness at the surface (not at the cockpit)',
        kind: 'angular-stiffness',
      },
      {
        name: 'hinge_moment_slope',
        meaning: 'moment of the air per angle, as hinge_moment_slope gives it',
        kind: 'angular-stiffness',
      },
    ],
    result: 'number',
    example: {
      formula: 'deflection_kept(1000 N·m/rad, 192.5748 N·m/rad)',
      value: '0.8385218',
      source: 'by hand: 1000/1192.5748',
    },
    evaluate: (...args) => {
      const [K = Number.NaN, h = Number.NaN] = numbers(args)
      return deflectionKept(K, h)
    },
  },
  speed_for_kept: {
    name: 'speed_for_kept',
    meaning:
      'equivalent airspeed up to which the surface keeps a share of the commanded deflection against the air; it keeps less beyond',
    source: 'deflection_kept and hinge_moment_slope with q = ½ρ₀V², solved for V; derived, checked by hand',
    parameters: [
      { name: 'share', meaning: 'share to be kept, between 0 and 1', kind: 'number' },
      {
        name: 'surface_stiffness',
        meaning: 'circuit stiffness at the surface (not at the cockpit)',
        kind: 'angular-stiffness',
      },
      { name: 'S', meaning: 'area of the surface aft of the hinge', kind: 'area' },
      { name: 'c', meaning: 'chord of the surface aft of the hinge', kind: 'length' },
      {
        name: 'Ch_delta',
        meaning: 'hinge-moment coefficient per angle of the surface, negative',
        kind: 'per-angle',
      },
    ],
    result: 'speed',
    example: {
      formula: 'speed_for_kept(50 %, 1000 N·m/rad, 0.55 m^2, 0.25 m, -0.6/(1 rad))',
      value: '140.6760 m/s',
      source: 'by hand: half is kept where ½·1.225·V²·0.55·0.25·0.6 = 1000',
    },
    evaluate: (...args) => {
      const [share = Number.NaN, K = Number.NaN, S = Number.NaN, c = Number.NaN, slope = Number.NaN] =
        numbers(args)
      if (!(share > 0 && share < 1)) return 'the share to be kept lies between 0 and 1'
      if (!(K > 0 && S > 0 && c > 0)) return 'stiffness, area and chord must be positive'
      return slope < 0
        ? speedForKept(share, K, S, c, slope)
        : 'where the air does not centre the surface (Ch_delta not negative) no speed takes deflection away'
    },
  },
  roll_rate: {
    name: 'roll_rate',
    meaning:
      'steady roll rate of a rigid wing for a given aileron deflection; with a soft circuit give the deflection times deflection_kept',
    source: 'roll with one degree of freedom, p·b/(2V) = −(Cl_δ/Cl_p)·δ, as in NACA Reports 715 and 868',
    parameters: [
      {
        name: 'Cl_delta',
        meaning: 'rolling-moment coefficient per aileron angle, of the same convention as the deflection',
        kind: 'per-angle',
      },
      { name: 'Cl_p', meaning: 'roll damping per p·b/(2V), negative', kind: 'number' },
      { name: 'speed', meaning: 'true airspeed', kind: 'speed' },
      { name: 'span', meaning: 'wing span', kind: 'length' },
      { name: 'deflection', meaning: 'aileron deflection', kind: 'angle' },
    ],
    result: 'angular-speed',
    example: {
      formula: 'roll_rate(0.15/(1 rad), -0.45, 120 kt, 9 m, 15 deg)',
      value: '1.197167 rad/s',
      source: 'by hand: p·b/(2V) = 0.08726646',
    },
    evaluate: (...args) => {
      const [a = Number.NaN, b = Number.NaN, V = Number.NaN, span = Number.NaN, delta = Number.NaN] =
        numbers(args)
      if (!(b < 0)) return 'roll damping Cl_p must be negative'
      return span > 0 ? rollRate(a, b, V, span, delta) : 'the span must be positive'
    },
  },
}
