/** What a weighing run is made of; points and items are named by the card, scales by the columns of the run. */
import type { ColumnField, MeasureField, Schema } from '../method.ts'
import { cardFields } from './card-fields.ts'
import { armOf, givens, itemGivens, sideOf } from './givens.ts'
import { ACTIONS, itemsOf, pointsOf, words } from './names.ts'

const mass = { kind: 'mass', hold: false, range: { low: -1000 } } as const

const scale = (name: string, required: boolean): ColumnField => ({
  ...mass,
  name,
  symbol: 'r',
  required,
  ramp: 'own',
  instrument: 'required',
  meaning:
    name === 'reading'
      ? 'what the scale shows, or the mass of an item that was weighed; - where a given says it'
      : `what ${words(name)} shows; - where it does not stand under the point of the row`,
})

const columns: readonly ColumnField[] = [
  {
    name: 'point',
    kind: 'text',
    required: true,
    ramp: 'none',
    hold: false,
    instrument: 'none',
    meaning: 'the point of support, or the item, by its name on the card; repeats are rows of their own',
  },
  {
    name: 'action',
    kind: 'text',
    required: false,
    choices: ACTIONS,
    ramp: 'none',
    hold: false,
    instrument: 'none',
    meaning: 'weigh: a point on its scale; remove or add: an item by calculation; absent: all are weighed',
  },
  {
    ...mass,
    name: 'tare',
    symbol: 't',
    required: false,
    ramp: 'none',
    instrument: 'optional',
    meaning: 'chock, ramp or stand on the scale with it, to be subtracted from the reading of its row',
  },
  {
    name: 'arm',
    kind: 'length',
    symbol: 'x',
    required: false,
    ramp: 'none',
    hold: false,
    instrument: 'required',
    meaning:
      'arm of the row from the datum as measured on the day, positive aft; takes the place of the given',
  },
]

const length = { kind: 'length' } as const

const measures: readonly MeasureField[] = [
  { name: 'weight', kind: 'mass', symbol: 'W', meaning: 'mass, after what is added and removed' },
  {
    name: 'moment',
    kind: 'mass-moment',
    symbol: 'M',
    meaning: 'mass times arm about the datum, after the same',
  },
  { ...length, name: 'cg', symbol: 'x_{CG}', meaning: 'arm of the centre of gravity, after the same' },
  {
    name: 'cg_mac',
    kind: 'number',
    symbol: 'x_{CG}/\\bar c',
    meaning: 'centre of gravity behind the leading edge of the mean aerodynamic chord, as part of the chord',
  },
  {
    ...length,
    name: 'cg_forward_margin',
    meaning:
      'centre of gravity behind the forward limit of the envelope at this weight; negative ahead of it',
  },
  {
    ...length,
    name: 'cg_aft_margin',
    meaning: 'centre of gravity ahead of the aft limit of the envelope at this weight; negative behind it',
  },
  { name: 'weight_margin', kind: 'mass', meaning: 'highest mass of the envelope less the weight' },
  {
    ...length,
    name: 'cg_lateral',
    symbol: 'y_{CG}',
    meaning: 'centre of gravity right of the plane of symmetry',
  },
  { name: 'weight_as_weighed', kind: 'mass', symbol: 'W_0', meaning: 'mass on the scales' },
  {
    ...length,
    name: 'cg_as_weighed',
    symbol: 'x_0',
    meaning: 'centre of gravity on the scales, corrected to level',
  },
  {
    name: 'repeatability',
    kind: 'mass',
    symbol: 's',
    meaning: 'standard deviation of single readings of one point on one scale',
  },
  {
    name: 'scale_difference',
    kind: 'mass',
    symbol: '\\Delta r',
    meaning: 'largest difference between the means of two scales under one point',
  },
]

const at = (point: string): MeasureField => ({
  name: `at_${point}`,
  kind: 'mass',
  symbol: 'R',
  meaning: `mass carried at ${point.replaceAll('_', ' ')}, without tare`,
})

const made = (
  points: readonly string[],
  items: readonly string[],
  scales: readonly ColumnField[],
): Schema => ({
  givens: [
    ...givens,
    ...points.flatMap((point) => [armOf(point), sideOf(point)]),
    ...items.flatMap(itemGivens),
  ],
  columns: [...columns, ...scales],
  measures: [...measures, ...points.map(at)],
  cardFields,
})

export const schema: Schema = made(
  ['<point>'],
  ['<item>'],
  [scale('reading', false), scale('reading_<scale>', false)],
)

export const describe = (fields: Readonly<Record<string, unknown>>, names: readonly string[]): Schema => {
  const scales = names.filter((name) => name.startsWith('reading_'))
  const read = scales.length > 0 ? scales.map((name) => scale(name, true)) : [scale('reading', true)]
  const either = names.length === 0 ? [scale('reading', false), scale('reading_<scale>', false)] : read
  return made(pointsOf({ fields }), itemsOf({ fields }), either)
}
