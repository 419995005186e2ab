/** Before the test: the positions with what is drawn and allowed, and how near to an end a reading can still decide. */
import type { Givens, Instruments } from '../method.ts'
import type { Plan, PlanContext, PlanTable, PlanText } from '../plan.ts'
import { FEWEST_REPEATS, levelError, numbersOf, outOfRange, roughly } from '../plan-text.ts'
import { offsetOf } from './cells.ts'
import { NEUTRAL, type Position, positionsOf } from './positions.ts'

/** One-sided 95 % of the normal distribution. */
const SURE = 1.645

/** Ends of the tolerance as angles, the lower first; null where none is given. */
const endsOf = ({ nominal, plus, minus }: Position): readonly [number, number] | null => {
  if (plus === undefined || minus === undefined) return null
  return nominal < 0 ? [nominal - plus, nominal + minus] : [nominal - minus, nominal + plus]
}

/** What an earlier run had at a position. */
const earlierOf = (context: PlanContext, name: string): number | null => {
  const found = context.earlier.find(({ measures }) => measures[name])
  return found?.measures[name]?.value ?? null
}

/** Nearer to an end than this a mean reading cannot decide, as what is read. */
const guardOf = (instruments: Instruments, read: 'angle' | 'offset'): number => {
  const model = instruments[read]
  return SURE * Math.hypot(levelError(model, 0), (model?.resolution ?? 0) / Math.sqrt(12))
}

const guardText = (
  positions: readonly Position[],
  guard: number,
  shown: ReturnType<typeof numbersOf>,
  toRead: (angle: number) => number,
): PlanText[] => {
  if (Number.isNaN(guard))
    return [
      ['How near to an end a reading can decide is not known: the accuracy of the reading is not asked for.'],
    ]
  const narrow = positions.filter((position) => {
    const ends = endsOf(position)
    return ends !== null && toRead(ends[1]) - toRead(ends[0]) <= 2 * guard
  })
  return [
    [
      'A mean nearer than ',
      roughly(shown(guard)),
      ' to the end of its tolerance stays undetermined under a guarded rule of 95 %: the instrument may be wrong by that.',
    ],
    ...narrow.map(
      ({ name }): PlanText => [
        `No reading at ${name.replaceAll('_', ' ')} can surely be in its tolerance with such an instrument.`,
      ],
    ),
  ]
}

export const plan = (givens: Givens, instruments: Instruments, context: PlanContext): Plan => {
  const positions = positionsOf(givens.fields)
  const read = instruments.offset || (context.gauges.offset && !instruments.angle) ? 'offset' : 'angle'
  const toRead = read === 'offset' ? (angle: number) => offsetOf(angle, givens) : (angle: number) => angle
  if (positions.length === 0 || Number.isNaN(toRead(0))) return { steps: null, readings: null, text: [] }
  const shown = numbersOf(read === 'offset' ? 'length' : 'angle', read)
  const all = positions.some(({ name }) => name === NEUTRAL)
    ? positions
    : [{ name: NEUTRAL, nominal: 0 }, ...positions]
  const sides = context.gauges.side ? ['left', 'right'] : ['']
  const drawn = (position: Position): (number | null)[] => {
    const ends = endsOf(position)
    return [toRead(position.nominal), ends && toRead(ends[0]), ends && toRead(ends[1])]
  }
  const number = (title: string) => ({ title, kind: shown(0).kind, of: read }) as const
  const place = { title: 'position', kind: 'text', of: 'position', written: true } as const
  const numbers = [number('drawn'), number('from'), number('to')]
  const side = { title: 'side', kind: 'text', of: 'side', written: true } as const
  const beside = sides.length > 1 ? [side] : []
  const readings: PlanTable = {
    columns: [place, ...beside, ...numbers],
    rows: Array.from({ length: FEWEST_REPEATS }, () =>
      sides.flatMap((each) =>
        all.map((position) => [position.name, ...(sides.length > 1 ? [each] : []), ...drawn(position)]),
      ),
    ).flat(),
  }
  return {
    steps: {
      columns: [place, ...numbers, number('last time')],
      rows: all.map((position) => {
        const before = earlierOf(context, position.name)
        return [
          position.name,
          ...drawn(position).map((value) => value ?? '–'),
          before === null ? null : toRead(before),
        ]
      }),
    },
    readings,
    text: [
      [
        `Read each position ${FEWEST_REPEATS} times, and move away in between: fewer do not show how well it comes back.`,
      ],
      givens.words.counted_from === 'neutral'
        ? ['Angles count from the mean of the readings in neutral: come to neutral from both ways in turn.']
        : ['Set the instrument to zero on the surface in neutral; what neutral reads later is its offset.'],
      ...guardText(positions, guardOf(instruments, read), shown, toRead),
      ...outOfRange(
        all.flatMap((position) => drawn(position).filter((value) => value !== null)),
        instruments[read],
        shown,
      ),
      ...(context.gauges.force
        ? [
            [
              'Pull slowly through neutral one way and the other, and sign the forces by their way: half their difference is friction.',
            ] as const,
          ]
        : []),
    ],
  }
}
