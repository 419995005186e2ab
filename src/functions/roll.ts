/** Rolling: the helix that a wing tip describes, and what is left of an aileron on a wing that twists. */
import type { FormulaFunction } from '../quantity/formula/types.ts'
import { ofNumbers } from './arguments.ts'

const HELIX =
  'NACA Reports 715 and 868, which compare airplanes by p·b/(2V); the 0.07 often asked for is from memory of that work'
const SPAN = { name: 'span', meaning: 'wing span', kind: 'length' } as const
const SPEED = { name: 'speed', meaning: 'true airspeed', kind: 'speed' } as const

export const helixAngle: FormulaFunction = {
  name: 'helix_angle',
  meaning:
    'Helix p·b/(2V) of the wing tips at a roll rate, a pure number (radians). With a soft circuit it falls in the same proportion as the deflection: give roll_rate the deflection times deflection_kept.',
  source: HELIX,
  parameters: [{ name: 'roll_rate', meaning: 'roll rate', kind: 'angular-speed' }, SPEED, SPAN],
  result: 'number',
  example: {
    formula: 'helix_angle(68.59259 deg/s, 120 kt, 9 m)',
    value: '0.08726646',
    source: 'by hand: 1.197167 rad/s · 9 m/(2 · 61.73333 m/s)',
  },
  evaluate: ofNumbers((rate, speed, span) => {
    if (!(span > 0)) return 'a span is greater than 0'
    return speed > 0 ? (rate * span) / (2 * speed) : 'a speed is greater than 0'
  }),
}

export const rollRateOfHelix: FormulaFunction = {
  name: 'roll_rate_of_helix',
  meaning: 'Roll rate 2V/b times the helix p·b/(2V): what a wanted helix asks for at a speed.',
  source: HELIX,
  parameters: [{ name: 'helix', meaning: 'p·b/(2V), a pure number', kind: 'number' }, SPEED, SPAN],
  result: 'angular-speed',
  example: {
    formula: 'roll_rate_of_helix(0.07, 100 mph, 33 ft)',
    value: '35.65071 deg/s',
    source: 'by hand: 0.07 · 2 · 44.704 m/s/10.0584 m',
  },
  evaluate: ofNumbers((helix, speed, span) =>
    span > 0 ? (helix * 2 * speed) / span : 'a span is greater than 0',
  ),
}

const SECTION =
  'Typical section in torsion with aileron; twist per aileron angle after a textbook of aeroelasticity, reversal speed derived from it'

export const reversalSpeed: FormulaFunction = {
  name: 'reversal_speed',
  meaning:
    'Speed √(−2·K·CL_ξ/(ρ·S·c·Cm_ξ·CL_α)) at which the twist of the wing undoes the lift of the aileron: equivalent airspeed with the sea-level density, true airspeed with the density there. One typical section for the whole wing: a first look, no clearance.',
  source: SECTION,
  parameters: [
    { name: 'K', meaning: 'torsional stiffness of the wing at the aileron', kind: 'angular-stiffness' },
    { name: 'S', meaning: 'area of wing that twists with it', kind: 'area' },
    { name: 'c', meaning: 'chord', kind: 'length' },
    { name: 'CL_xi', meaning: 'lift coefficient per aileron angle', kind: 'per-angle' },
    { name: 'Cm_xi', meaning: 'pitching-moment coefficient per aileron angle, negative', kind: 'per-angle' },
    { name: 'CL_alpha', meaning: 'lift coefficient per angle of attack', kind: 'per-angle' },
    { name: 'density', meaning: 'density of the air', kind: 'density' },
  ],
  result: 'speed',
  example: {
    formula:
      'reversal_speed(60000 N·m/rad, 1.8 m^2, 1.2 m, 2.5/(1 rad), -0.75/(1 rad), 5.73/(1 rad), 1.225 kg/m^3)',
    value: '162.4268 m/s',
    source: 'by hand from the equation',
  },
  evaluate: ofNumbers((K, S, c, lift, pitch, slope, density) => {
    if (!(K > 0 && S > 0 && c > 0 && density > 0))
      return 'stiffness, area, chord and density are greater than 0'
    if (!(lift > 0 && slope > 0)) return 'lift coefficients per angle are greater than 0'
    return pitch < 0
      ? Math.sqrt((-2 * K * lift) / (density * S * c * pitch * slope))
      : 'an aileron going down pitches the section nose down: Cm_xi is less than 0, or nothing reverses'
  }),
}

export const aileronEffectiveness: FormulaFunction = {
  name: 'aileron_effectiveness',
  meaning:
    'Share 1 − (V/V_R)² of the rolling moment that is left on a wing that twists, by its reversal speed; below 0 the aileron works the wrong way. On the safe side of the typical section, whose lift ratio is this over 1 − (V/V_D)² (V_D: divergence). The circuit gives as well: multiply by deflection_kept.',
  source: `${SECTION}; exact where the aerodynamic centre lies on the axis of twist. NACA Report 868 treats wings and circuits that give.`,
  parameters: [
    { name: 'speed', meaning: 'airspeed, equivalent or true as the other', kind: 'speed' },
    { name: 'reversal', meaning: 'reversal speed, measured or computed', kind: 'speed' },
  ],
  result: 'number',
  example: {
    formula: 'aileron_effectiveness(400 mph, 545 mph)',
    value: '0.4613248',
    source: 'by hand: 1 − (400/545)²',
  },
  evaluate: ofNumbers((speed, reversal) =>
    reversal > 0 && speed >= 0
      ? 1 - (speed / reversal) ** 2
      : 'a speed is not negative, a reversal speed is greater than 0',
  ),
}
