/** Frequency at which a control surface swings on the spring of its circuit. */
import type { FormulaFunction } from '../quantity/formula/types.ts'
import { ofNumbers } from './arguments.ts'

/**
 * Natural frequency in Hz of a rigid surface with moment of inertia I (kg·m², about its hinge line) on a circuit of
 * stiffness K (N·m/rad, at the surface): f = √(K/I)/(2π), from I·δ̈ + K·δ = 0.
 */
export const surfaceFrequencyOf = (stiffness: number, inertia: number): number =>
  Math.sqrt(stiffness / inertia) / (2 * Math.PI)

export const surfaceFrequency: FormulaFunction = {
  name: 'surface_frequency',
  meaning:
    'Natural frequency √(K/I)/(2π) of a surface on its circuit, to set beside the frequency at which it rings when let go. Controls fixed: the cockpit end is held, as in the stiffness test. With the stick free the circuit rings higher, by √(1 + I/I_c), where I_c is the inertia of the cockpit end times the gearing (cockpit angle per surface angle) squared. A mass balance adds its own m·r² to I and so lowers the frequency; what it takes away is the coupling with wing or tail, which this does not see. In flight the air adds its moment per angle to K. Play and friction are left out: small swings inside them ring lower or not at all.',
  source: 'One degree of freedom about the hinge, I·δ̈ + K·δ = 0; derived, as in any textbook of vibration',
  parameters: [
    {
      name: 'surface_stiffness',
      meaning: 'circuit stiffness at the surface (not at the cockpit)',
      kind: 'angular-stiffness',
    },
    {
      name: 'inertia',
      meaning: 'moment of inertia about the hinge line, balance weights included',
      kind: 'moment-of-inertia',
    },
  ],
  result: 'frequency',
  example: {
    formula: 'surface_frequency(5400 N·m/rad, 8 kg·m^2)',
    value: '4.134967 Hz',
    source: 'the textbook oscillator of 5,400 N/m and 8 kg, turned into a rotation: √675/(2π)',
  },
  evaluate: ofNumbers((stiffness, inertia) => {
    if (!(inertia > 0)) return 'a moment of inertia is greater than 0'
    return stiffness >= 0
      ? surfaceFrequencyOf(stiffness, inertia)
      : 'a circuit with negative stiffness drives the surface away and has no frequency'
  }),
}
