/** Before the test: what each criterion means for one column, whether its instrument reads so far, and how many readings formulas need. */
import type { Givens, Instruments } from '../method.ts'
import type { Plan, PlanContext, PlanText } from '../plan.ts'
import { FEWEST_REPEATS, numbersOf, outOfRange } from '../plan-text.ts'
import type { Aggregate, AggregateName } from './aggregates.ts'
import { type PlannedMeasure, planOf } from './plan.ts'

/** Aggregates whose value is one of the column itself, so that a limit on it is one on the gauge. */
const SAID: Partial<Record<AggregateName, string>> = {
  max: 'the highest',
  min: 'the lowest',
  mean: 'the mean',
  first: 'the first',
  last: 'the last',
  at: '',
}
/** What a line through readings, or the area under them, needs to show how they scatter. */
const FOR_A_LINE = 5

const words = (name: string): string => name.replaceAll('_', ' ')

/** The one aggregate that a measure is, where it is nothing else. */
const alone = ({ rest, own }: PlannedMeasure): Aggregate | null => {
  const [only] = own
  return only && rest.type === 'name' && rest.name === only.key && SAID[only.name] !== undefined ? only : null
}

const whereOf = ({ name, y, x, place }: Aggregate): string => {
  const column = words(y.name)
  if (name !== 'at') return `${SAID[name]} ${column}`
  const where = place && 'word' in place ? words(place.word) : words(x?.name ?? '')
  return `the ${column} at ${where}`
}

const limitText = (
  measures: readonly PlannedMeasure[],
  instruments: Instruments,
  context: PlanContext,
): PlanText[] =>
  context.limits.flatMap(({ criterion, measure, direction, value }) => {
    const found = measures.find(({ name }) => name === measure)
    const only = found && alone(found)
    if (!only) return []
    const shown = numbersOf(only.y.kind, only.y.name)
    return [
      [
        `For “${criterion}” ${whereOf(only)} must be ${direction === 'below' ? 'below ' : 'above '}`,
        shown(value),
        '.',
      ],
      ...outOfRange([value], instruments[only.y.name], shown),
    ]
  })

/** Each word once, in the order of the card, as often as shows a scatter. */
const rowsOf = (aggregates: readonly Aggregate[]) => {
  const marked = aggregates.find(({ name, x }) => name === 'at' && x?.kind === 'text')?.x
  if (!marked) return null
  const asked = new Set(
    aggregates.flatMap(({ x, place }) =>
      x?.name === marked.name && place && 'word' in place ? [place.word] : [],
    ),
  )
  const rows = (marked.words ?? []).flatMap((word) =>
    Array.from({ length: asked.has(word) ? FEWEST_REPEATS : 1 }, () => [word]),
  )
  return {
    columns: [{ title: words(marked.name), kind: 'text', of: marked.name, written: true }],
    rows,
  } as const
}

export const plan = (givens: Givens, instruments: Instruments, context: PlanContext): Plan => {
  const { measures, aggregates } = planOf(givens.fields)
  const lines = aggregates.filter(({ name }) => name === 'slope' || name === 'integral')
  const marked = rowsOf(aggregates)
  const lined = [...new Set(lines.map(({ y }) => words(y.name)))].join(' and ')
  return {
    steps: null,
    readings: marked,
    text: [
      ...limitText(measures, instruments, context),
      ...(lines.length > 0
        ? [[`Read ${lined} at least ${FOR_A_LINE} times: fewer do not show how it scatters.`] as const]
        : []),
      ...(marked
        ? [
            [
              `Read each ${marked.columns[0].title} that a formula looks at ${FEWEST_REPEATS} times: a single reading shows no scatter.`,
            ] as const,
          ]
        : []),
    ],
  }
}
