/** Before the test: how often to read, what the limit is on the scale, and whether it is pressed at all. */
import type { Givens, Instruments } from '../method.ts'
import type { Plan, PlanContext, PlanText } from '../plan.ts'
import { FEWEST_REPEATS, levelError, numbersOf, outOfRange, repeatsNeeded, roughly } from '../plan-text.ts'

/** One-sided 95 % of the normal distribution. */
const SURE = 1.645
/** From above and from below in turn, so that hinge friction shows: two of each and one to spare. */
const USUAL = 5

const mass = numbersOf('mass', 'reading')
const arm = numbersOf('length', 'arm')
const moment = numbersOf('mass-moment', 'unbalance')

/** Half a power of ten: test weights come so. */
const roundUp = (value: number): number => {
  const step = 10 ** Math.floor(Math.log10(value)) / 2
  return Math.ceil(value / step - 1e-9) * step
}

/** Expanded uncertainty (k = 2) of the unbalance by scale and tape: S = r x. */
const expectedU = (instruments: Instruments, lever: number, load: number): number => {
  const { reading: scale, arm: tape } = instruments
  const [r, x] = [scale, tape].map((model) =>
    Math.hypot(levelError(model, 0), (model?.resolution ?? 0) / Math.sqrt(12)),
  )
  return 2 * Math.hypot((r ?? Number.NaN) * lever, (x ?? 0) * load)
}

const limitText = (context: PlanContext, lever: number, U: number): PlanText[] => {
  const limits = context.limits
    .filter(({ measure }) => measure === 'unbalance')
    .map(
      ({ criterion, value, direction }): PlanText => [
        `For “${criterion}” the scale at that arm may show at ${direction === 'below' ? 'most ' : 'least '}`,
        mass(value / lever),
        value < 0 ? ', less than nothing: it must be pressed by a test weight.' : '.',
      ],
    )
  return limits.length > 0 && Number.isFinite(U)
    ? [...limits, ['Scale and tape alone make U about ', roughly(moment(U)), ' there.']]
    : limits
}

/** The scale must be pressed for its reading to count, at the lowest unbalance that is allowed. */
const weightText = (context: PlanContext, instruments: Instruments, lever: number): PlanText[] => {
  const allowed = context.limits.filter(
    ({ measure, direction }) => measure === 'unbalance' && direction === 'above',
  )
  const lowest = Math.min(0, ...allowed.map(({ value }) => value)) / lever
  const guard = SURE * levelError(instruments.reading, 0)
  if (!Number.isFinite(guard)) return []
  const weight = roundUp(Math.max(2 * guard - lowest, Number.MIN_VALUE))
  return [
    [
      'Lay a test weight of ',
      mass(weight),
      ' or more right over the scale and enter it as tare, unless the scale is surely pressed without: a surface in balance rests on nothing.',
    ],
    ...outOfRange([weight], instruments.reading, mass),
  ]
}

/** Scatter may put on the unbalance what the instruments do, or a quarter of the nearest limit. */
const repeatsOf = (context: PlanContext, lever: number, U: number): { count: number; text: PlanText } => {
  const found = context.earlier.find(({ measures }) => measures.repeatability)
  const s = found?.measures.repeatability?.value
  const how = 'come to it from above and from below in turn, and tap the stand'
  const limits = context.limits
    .filter(({ measure }) => measure === 'unbalance')
    .map(({ value }) => Math.abs(value))
  const most = Math.max(U, Math.min(...limits) / 4)
  const needed = s === undefined || !Number.isFinite(most) ? undefined : repeatsNeeded(s, 1, lever, most)
  if (needed === undefined || s === undefined)
    return {
      count: USUAL,
      text: [
        `Read ${USUAL} times: ${how}. Fewer than ${FEWEST_REPEATS} do not show the friction of the hinges.`,
      ],
    }
  const begin = [`Readings of ${found?.run} scattered by `, roughly(mass(s))] as const
  return needed === null
    ? {
        count: USUAL,
        text: [...begin, ': no number of readings makes that small. Free the hinges first.'],
      }
    : {
        count: Math.max(USUAL, needed),
        text: [...begin, `: ${Math.max(USUAL, needed)} readings make that small enough; ${how}.`],
      }
}

export const plan = (givens: Givens, instruments: Instruments, context: PlanContext): Plan => {
  const { chord } = givens.numbers
  const known = chord !== undefined && chord > 0
  const lever = known ? chord : Number.NaN
  const largest = Math.max(
    0,
    ...context.limits.filter(({ measure }) => measure === 'unbalance').map(({ value }) => Math.abs(value)),
  )
  const U = expectedU(instruments, lever, largest / lever)
  const repeats = repeatsOf(context, lever, U)
  return {
    steps: null,
    readings: {
      columns: [{ title: 'come from', kind: 'text' }],
      rows: Array.from({ length: repeats.count }, (_, row) => [row % 2 === 0 ? 'above' : 'below']),
    },
    text: [
      repeats.text,
      ...(known
        ? [
            [
              'Planned for a scale at the trailing edge, ',
              arm(lever),
              ' (one chord) aft of the hinge line; measure the arm where it stands, level from the hinge line.',
            ] as const,
            ...limitText(context, lever, U),
            ...weightText(context, instruments, lever),
          ]
        : [
            [
              'What the limit is on the scale is not known: the card gives no `chord`. Measure the arm where the scale stands.',
            ] as const,
          ]),
    ],
  }
}
