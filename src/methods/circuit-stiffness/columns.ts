/** What is read. */
import type { ColumnField } from '../method.ts'

const reading = (
  name: string,
  meaning: string,
  kind: ColumnField['kind'],
  or: ColumnField['or'],
): ColumnField => ({
  name,
  meaning,
  kind,
  or,
  required: name !== 'at_fixture',
  ramp: 'own',
  hold: false,
  instrument: 'required',
})

export const stationColumn = (station: string): ColumnField =>
  reading(`at_${station}`, `motion at the station ${station}, positive as the deflection`, 'length', [
    'angle',
  ])

export const columns: readonly ColumnField[] = [
  {
    ...reading('load', 'load at the loaded end; one direction positive, the other negative', 'force', [
      'moment',
    ]),
    symbol: 'F',
  },
  {
    ...reading(
      'deflection',
      'deflection at the loaded end, positive the way a positive load moves it',
      'angle',
      ['length'],
    ),
    symbol: 'x',
  },
  {
    name: 'cycle',
    meaning: 'number of the load cycle; counted from the branches where it is not there',
    kind: 'count',
    required: false,
    ramp: 'none',
    hold: false,
    instrument: 'none',
  },
  {
    name: 'branch',
    meaning:
      'loading or unloading, where the branches are not to be told apart by the load; `-` leaves a row out of the fits',
    kind: 'text',
    required: false,
    choices: ['loading', 'unloading', 'pos_loading', 'pos_unloading', 'neg_loading', 'neg_unloading'],
    ramp: 'none',
    hold: false,
    instrument: 'none',
  },
  reading('at_fixture', 'motion of what holds the locked end, as it adds to the deflection', 'length', [
    'angle',
  ]),
]
