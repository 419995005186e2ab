/** Positions that the card does not know, angles of the other sign, offsets longer than their radius. */
import { nearest } from '../../quantity/nearest.ts'
import type { Columns, Givens, Method } from '../method.ts'
import { angleOf } from './cells.ts'
import { NEUTRAL, positionNamed, positionsOf } from './positions.ts'

type Finding = ReturnType<NonNullable<Method['validate']>>[number]

const degrees = (angle: number): string => `${Number(((180 * angle) / Math.PI).toPrecision(4))}°`

const ofRow = (columns: Columns, givens: Givens, name: string, row: number): Finding[] => {
  const positions = positionsOf(givens.fields)
  const position = positionNamed(positions, name)
  if (!position) {
    const names = [...positions.map((one) => one.name), NEUTRAL]
    const [near] = nearest(name, names)
    const hint = near ? `\`${near}\` is close` : `the card names ${names.join(', ')}`
    const message = `the card has no position \`${name}\``
    return [{ code: 'travel/unknown-position', column: 'position', row, message, hint }]
  }
  const read = (column: string) => columns[column]?.values[row] ?? Number.NaN
  if (columns.side && !['left', 'right'].includes(columns.side.texts?.[row] ?? ''))
    return [
      {
        code: 'travel/no-side',
        column: 'side',
        row,
        message: 'this row does not say which side was read',
        hint: 'write left or right in each row, or leave the column out',
      },
    ]
  const offset = read('offset')
  const angle = Number.isNaN(read('angle')) ? angleOf(offset, givens) : read('angle')
  if (!Number.isNaN(offset) && Number.isNaN(angle) && givens.numbers.radius !== undefined)
    return [
      {
        code: 'travel/offset-too-long',
        column: 'offset',
        row,
        message: 'an offset of this length cannot be had at the radius that is given',
        hint: 'check the units of `offset` and `radius`, and whether the offset is a chord or square to neutral (`offset_as`)',
      },
    ]
  // Half the nominal on the other side is no error of rigging.
  if (angle * position.nominal < 0 && Math.abs(angle) > Math.abs(position.nominal) / 2)
    return [
      {
        code: 'travel/other-sign',
        column: Number.isNaN(read('angle')) ? 'offset' : 'angle',
        row,
        message: `${name} is read as ${degrees(angle)}, and its nominal is ${degrees(position.nominal)}`,
        why: 'one sign stands for one direction, on the card and in the readings',
        hint: 'if the surface moved the right way, write the sign of the card; if it moved the wrong way, stop: the controls are reversed',
      },
    ]
  return []
}

const ofNeutral = (columns: Columns, givens: Givens): Finding[] => {
  const texts = columns.position?.texts ?? []
  if (givens.words.counted_from !== 'neutral' || texts.includes(NEUTRAL)) return []
  return [
    {
      code: 'travel/no-neutral',
      column: 'position',
      message: 'angles are counted from neutral, and no row was read there',
      hint: 'add rows with the position `neutral`, or set the level to zero there and give `counted_from: zero`',
    },
  ]
}

const ofTwoWays = (columns: Columns): Finding[] => {
  const texts = columns.position?.texts ?? []
  const row = texts.findIndex(
    (_, k) =>
      ![columns.angle, columns.offset].some((column) => Number.isNaN(column?.values[k] ?? Number.NaN)),
  )
  if (row < 0) return []
  return [
    {
      code: 'travel/two-ways',
      column: 'offset',
      row,
      message: `row ${row + 1} has an angle and an offset, and nothing says which counts`,
      hint: 'keep one of them in each row, and one kind for each position',
    },
  ]
}

export const validate = (columns: Columns, givens: Givens): readonly Finding[] => [
  ...(columns.position?.texts ?? []).flatMap((name, row) => ofRow(columns, givens, name, row)),
  ...ofNeutral(columns, givens),
  ...ofTwoWays(columns),
]
