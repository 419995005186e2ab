/** What a travel run is made of; its measures are named after the positions of the card. */
import type { CardField, ColumnField, Given, MeasureField, Schema } from '../method.ts'
import { NEUTRAL, positionsOf, readPositions } from './positions.ts'

const givens: readonly Given[] = [
  {
    name: 'counted_from',
    kind: 'text',
    role: 'choice',
    required: false,
    default: 'zero',
    choices: ['zero', 'neutral'],
    meaning:
      'zero: the level was set to zero on the surface in neutral, and angles count as read; neutral: the mean of the rows at neutral is subtracted',
  },
  {
    name: 'radius',
    kind: 'length',
    symbol: 'r',
    role: 'known',
    required: false,
    range: { low: 0 },
    meaning: 'hinge line to the point at which `offset` is read, square to the hinge line',
  },
  {
    name: 'offset_as',
    kind: 'text',
    role: 'choice',
    required: false,
    default: 'chord',
    choices: ['chord', 'square'],
    meaning:
      'how `offset` was measured: chord: straight from the point in neutral to the point deflected; square: square to the chord line in neutral',
  },
  {
    name: 'stops',
    kind: 'text',
    role: 'choice',
    required: false,
    choices: ['fitted', 'not-fitted'],
    meaning:
      'whether the stops are fitted and set: without them travel is measured to see that there is enough',
  },
  {
    name: 'configuration',
    kind: 'text',
    role: 'words',
    required: false,
    meaning: 'where flaps, trim and the other axis stood: they change the travel',
  },
]

const columns: readonly ColumnField[] = [
  {
    name: 'position',
    kind: 'text',
    required: true,
    ramp: 'none',
    hold: false,
    instrument: 'none',
    meaning:
      'position of the card (up, down, left, right, flap_30 …), or neutral; repeats are rows of their own',
  },
  {
    name: 'angle',
    kind: 'angle',
    symbol: '\\delta',
    required: false,
    ramp: 'own',
    hold: false,
    instrument: 'required',
    range: { low: -Math.PI, high: Math.PI },
    meaning: 'angle of the surface, with the sign that the card uses',
  },
  {
    name: 'offset',
    kind: 'length',
    symbol: 'o',
    required: false,
    ramp: 'own',
    hold: false,
    instrument: 'required',
    meaning:
      'way of a point at `radius` from neutral, signed as the angle: for rudders, which no level reads',
  },
  {
    name: 'side',
    kind: 'text',
    required: false,
    choices: ['left', 'right'],
    ramp: 'none',
    hold: false,
    instrument: 'none',
    meaning: 'which of two surfaces that move together',
  },
  {
    name: 'force',
    kind: 'force',
    symbol: 'F',
    required: false,
    ramp: 'own',
    hold: false,
    instrument: 'required',
    meaning:
      'force at the grip that just keeps it moving slowly through this position, positive one way and negative the other',
  },
]

const angle = { kind: 'angle', symbol: '\\delta' } as const

const ofPosition = (name: string, where: string): MeasureField[] => [
  { ...angle, name, meaning: `mean angle at ${where}` },
  {
    ...angle,
    name: `${name}_error`,
    symbol: '\\epsilon',
    meaning: `how far the angle at ${where} goes beyond its nominal; negative: short of it`,
  },
  {
    ...angle,
    name: `${name}_margin`,
    meaning: `what is left at ${where} to the nearer end of the tolerance`,
  },
]

const sided = (name: string, where: string): MeasureField[] => [
  ...ofPosition(name, `${where}; of two sides the worse`),
  ...(['left', 'right'] as const).flatMap((side) => ofPosition(`${name}_${side}`, `${where}, ${side} side`)),
  {
    ...angle,
    name: `${name}_asymmetry`,
    meaning: `how much further the left side goes beyond its nominal than the right at ${where}`,
  },
]

const shared: readonly MeasureField[] = [
  {
    ...angle,
    name: 'worst_margin',
    meaning: 'the least of the margins of all positions and sides: above 0 all of them are in tolerance',
  },
  {
    ...angle,
    name: 'asymmetry',
    meaning:
      'of all positions the largest asymmetry of both sides; of one surface with the positions left and right, that of these; left further: positive',
  },
  { ...angle, name: 'neutral_offset', meaning: 'mean angle at neutral as read; of two sides the larger' },
  {
    name: 'friction_force',
    kind: 'force',
    symbol: 'F_f',
    positive: true,
    meaning: 'half the difference of the forces both ways through one position; of several the largest',
  },
]

const cardFields: readonly CardField[] = [
  {
    name: 'positions',
    meaning:
      'positions by name, each with `nominal` angle (signed as the readings) and `tolerance`, or `plus` (beyond) and `minus` (short)',
    required: true,
    read: readPositions,
  },
]

const made = (names: readonly string[], radius: boolean): Schema => ({
  givens: givens.map((given) => (given.name === 'radius' ? { ...given, required: radius } : given)),
  columns,
  measures: [...shared, ...names.flatMap((name) => sided(name, name.replaceAll('_', ' ')))],
  cardFields,
  alternatives: [
    { sets: [['angle'], ['offset']], say: 'a position is read as an `angle`, or as an `offset` at a radius' },
  ],
})

export const schema: Schema = made(['<position>'], false)

export const describe = (
  fields: Readonly<Record<string, unknown>>,
  columnNames: readonly string[],
): Schema => {
  const names = positionsOf(fields).map(({ name }) => name)
  return made(names.includes(NEUTRAL) ? names : [...names, NEUTRAL], columnNames.includes('offset'))
}
