/** Pressure of a liquid under load factors: of a column, and anywhere in a tank. */
import type { FormulaFunction } from '../quantity/formula/types.ts'
import { GRAVITY, ofNumbers } from './arguments.ts'

export const fluidHead: FormulaFunction = {
  name: 'fluid_head',
  meaning:
    'Pressure ρ·n·g₀·h under a column of liquid; n is the total load factor normal to the surface of the liquid, 1 at rest, and h the height along the acceleration.',
  source: 'Hydrostatics; g₀ = 9.80665 m/s² by definition',
  parameters: [
    { name: 'density', meaning: 'density of the liquid', kind: 'density' },
    { name: 'load_factor', meaning: 'load factor, 1 at rest', kind: 'number' },
    { name: 'height', meaning: 'height of the column along the acceleration', kind: 'length' },
  ],
  result: 'pressure',
  example: {
    formula: 'fluid_head(720 kg/m^3, 3.8, 0.25 m)',
    value: '6707.749 Pa',
    source: 'by hand: 720 · 3.8 · 9.80665 · 0.25',
  },
  evaluate: ofNumbers((density, loadFactor, height) => {
    if (!(density > 0)) return 'a density is greater than 0'
    return height >= 0 ? density * loadFactor * GRAVITY * height : 'a height is not negative'
  }),
}

const ALONG = [
  ['forward', 'forward (negative: aft)'],
  ['outboard', 'outboard along the span (negative: inboard)'],
  ['down', 'down (negative: up)'],
] as const

export const fluidHeadAxes: FormulaFunction = {
  name: 'fluid_head_axes',
  meaning:
    'Pressure ρ·g₀·(n₁·d₁ + n₂·d₂ + n₃·d₃) at a point of a tank under load factors along all three axes, over the pressure where the vent ends. Each n says how many g press the liquid that way, each d how far that way the point lies from the free surface, or from the mouth of the vent in a full tank. A steady slip with bank φ presses sin φ toward the low wing and cos φ down: a full tank is pressed along its span. Below 0 the point is under suction. Look at every corner: the worst is not always the lowest.',
  source:
    'Hydrostatics, −∇p = ρ·a in a liquid at rest in the tank; the internal head of 46 CFR 154.407 (a full tank, along any direction of the acceleration) is the same',
  parameters: [
    { name: 'density', meaning: 'density of the liquid', kind: 'density' },
    ...ALONG.flatMap(
      ([axis, way]) =>
        [
          { name: `n_${axis}`, meaning: `load factor that presses the liquid ${way}`, kind: 'number' },
          { name: axis, meaning: `distance from vent or free surface to the point, ${way}`, kind: 'length' },
        ] as const,
    ),
  ],
  result: 'pressure',
  example: {
    formula: 'fluid_head_axes(720 kg/m^3, 0, 0 m, sin(20 deg), 1.5 m, cos(20 deg), 0.25 m)',
    value: '5281.141 Pa',
    source: 'by hand: 720 · 9.80665 · (0.3420201 · 1.5 + 0.9396926 · 0.25)',
  },
  evaluate: ofNumbers((density, n1, d1, n2, d2, n3, d3) =>
    density > 0 ? density * GRAVITY * (n1 * d1 + n2 * d2 + n3 * d3) : 'a density is greater than 0',
  ),
}
