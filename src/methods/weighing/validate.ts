/** Names that the card does not know, points without a scale, rows without a mass, gravity left open. */
import { nearest } from '../../quantity/nearest.ts'
import type { Columns, Givens, Method } from '../method.ts'
import { actionOf, itemsOf, pointsOf, scalesOf } from './names.ts'

type Finding = ReturnType<NonNullable<Method['validate']>>[number]

const ofGravity = ({ numbers, words }: Givens): Finding[] => {
  const { latitude, scale_latitude } = numbers
  if (words.checked_on_the_spot !== undefined) return []
  if (latitude !== undefined && scale_latitude !== undefined) return []
  return [
    {
      code: 'weighing/gravity',
      given: latitude === undefined ? 'latitude' : 'scale_latitude',
      message: 'nothing says for which gravity the scales show a mass',
      why: 'a scale weighs a force; from one country to another the same mass shows up to 0.2 % more or less',
      hint: 'give `latitude` and `scale_latitude`, or `checked_on_the_spot: with 20 kg of test weights on each scale`',
    },
  ]
}

const ofRow = (columns: Columns, givens: Givens, point: string, row: number): Finding[] => {
  const [points, items] = [pointsOf(givens), itemsOf(givens)]
  const action = actionOf(columns, row)
  const known = action === 'weigh' ? points : items
  if (!known.includes(point)) {
    const [near] = nearest(point, known)
    const other = action === 'weigh' ? items : points
    const hint = other.includes(point)
      ? action === 'weigh'
        ? `\`${point}\` is an item: write remove or add under \`action\``
        : `\`${point}\` is a point of support: write weigh under \`action\``
      : near
        ? `\`${near}\` is close`
        : `the card names ${known.join(', ') || 'none'}`
    const message = `the card has no ${action === 'weigh' ? 'point' : 'item'} \`${point}\``
    return [{ code: 'weighing/unknown-point', column: 'point', row, message, hint }]
  }
  const read = scalesOf(columns).filter((name) => !Number.isNaN(columns[name]?.values[row] ?? Number.NaN))
  const [first, second] = read
  if (second !== undefined)
    return [
      {
        code: 'weighing/two-scales',
        column: second,
        row,
        message: `row ${row + 1} has a reading of \`${first}\` and one of \`${second}\``,
        why: 'a row is one point on one scale; with two under it, each carries a part',
        hint: 'write a row for each scale, or make a point of its own of each',
      },
    ]
  const { numbers } = givens
  const massGiven =
    numbers[`mass_${point}`] !== undefined ||
    (numbers[`volume_${point}`] !== undefined && numbers[`density_${point}`] !== undefined)
  if (action === 'weigh' || first !== undefined || massGiven) return []
  return [
    {
      code: 'weighing/no-mass',
      column: 'point',
      row,
      message: `nothing says how much \`${point}\` weighs`,
      hint: `weigh it in this row, or give \`mass_${point}\`, or \`volume_${point}\` and \`density_${point}\``,
    },
  ]
}

const ofPoints = (columns: Columns, givens: Givens): Finding[] => {
  const texts = columns.point?.texts ?? []
  const scales = scalesOf(columns)
  const isRead = (row: number) =>
    scales.some((name) => !Number.isNaN(columns[name]?.values[row] ?? Number.NaN))
  return pointsOf(givens)
    .filter((point) => !texts.some((text, row) => text === point && isRead(row)))
    .map((point) => ({
      code: 'weighing/point-missing',
      column: 'point',
      message: `no reading for the point \`${point}\``,
      why: 'without what stands there the weight is too small and the centre of gravity wrong',
      hint: `add a row for \`${point}\`, or take it off the \`points\` of the card`,
    }))
}

/** Weight can be had without arms, balance cannot. */
const ofArms = (columns: Columns, givens: Givens): Finding[] => {
  const texts = columns.point?.texts ?? []
  const isRead = (name: string) =>
    texts.some((text, row) => text === name && !Number.isNaN(columns.arm?.values[row] ?? Number.NaN))
  const bare = [...pointsOf(givens), ...itemsOf(givens)].filter(
    (name) => texts.includes(name) && givens.numbers[`arm_${name}`] === undefined && !isRead(name),
  )
  const [first] = bare
  if (first === undefined) return []
  return [
    {
      code: 'weighing/no-arm',
      severity: 'warning',
      given: `arm_${first}`,
      message: `no arm is known of ${bare.map((name) => `\`${name}\``).join(', ')}, so no centre of gravity is given`,
      hint: `give \`arm_${first}\`, or measure it on the day in a column \`arm\``,
    },
  ]
}

export const validate = (columns: Columns, givens: Givens): readonly Finding[] => [
  ...ofGravity(givens),
  ...(columns.point?.texts ?? []).flatMap((point, row) => ofRow(columns, givens, point, row)),
  ...ofPoints(columns, givens),
  ...ofArms(columns, givens),
]
