/** Before the test: when to read, what must have run by then, and how long a catch these scales need. */
import type { Givens, InstrumentModel, Instruments, Measures } from '../method.ts'
import { loadSteps, type Plan, type PlanContext, type PlanText } from '../plan.ts'
import { levelError, numbersOf, outOfRange } from '../plan-text.ts'
import { catchTime, roomNeeded } from './catch-time.ts'
import { factorOf, requiredAs } from './estimate.ts'

/** Readings over the time: with five each half has a slope of its own, and with more its scatter. */
const READINGS = 9
/** Of a petrol, where the density is measured on the day only; for planning (common practice, no source). */
const PETROL = 720
/** The rule's shortest time where the card names none; common practice, no source. */
const MINUTE = 60
/** One-sided 95 % of the normal distribution. */
const SURE = 1.645
/** A flow with so much to spare is a sound one: what the catch time is worked out for where no run says better. */
const TO_SPARE = 0.05

const time = numbersOf('time')

type Collected = 'volume' | 'mass'

const collectedOf = (instruments: Instruments, context: PlanContext): Collected =>
  instruments.mass || (context.gauges.mass && !instruments.volume) ? 'mass' : 'volume'

/** Flow over required flow in an earlier run, of the half that counts. */
const earlierRatio = (context: PlanContext, name: 'late_ratio' | 'flow_ratio') => {
  const found = context.earlier.find(({ measures }: { measures: Measures }) => measures[name])
  const value = found?.measures[name]?.value
  return found && value !== undefined ? { run: found.run, value } : null
}

const degrees = (angle: number): string => `${Number(((180 * angle) / Math.PI).toPrecision(3))}°`
const percent = (share: number, figures = 2): string => `${Number((100 * share).toPrecision(figures))} %`

/** As often as the card says, else in round steps. */
const readAt = (hold: number, every: number | undefined): number[] =>
  every
    ? Array.from({ length: Math.ceil(hold / every - 1e-9) }, (_, k) => Math.min((k + 1) * every, hold))
    : loadSteps(hold, 1, READINGS)

type Setting = {
  readonly asked: number
  readonly hold: number
  readonly scale: InstrumentModel | undefined
  readonly timeError: number
  readonly context: PlanContext
}

/** What can be shown after the time asked, and how long it takes where that is not enough. */
const longText = ({ asked, hold, scale, timeError, context }: Setting): PlanText[] => {
  const late = context.limits.some(({ measure }) => measure === 'late_ratio' || measure === 'late_flow')
  const part = late ? 'late' : 'whole'
  const room = roomNeeded(asked, hold, scale, timeError, part)
  if (Number.isNaN(room))
    return [['How long a catch is needed is not known: the accuracy of the scale is not asked for.']]
  const before = earlierRatio(context, late ? 'late_ratio' : 'flow_ratio')
  const spare = before && before.value > 1 ? before.value - 1 : TO_SPARE
  const needed = catchTime(spare, asked, scale, timeError, part)
  const half = late ? ' in the second half' : ''
  const like =
    before && before.value > 1
      ? `as in ${before.run}, ${percent(before.value, 3)} of what is asked,`
      : `${percent(TO_SPARE)} above it`
  return [
    [
      `After `,
      time(hold),
      ` a flow${half} must lie ${percent(room)} above what is asked to be shown as enough, with such a scale and the hand on the watch.`,
    ],
    needed === null
      ? [`No catch is long enough for a flow ${like} with such a scale.`]
      : [
          `A flow ${like} takes a catch of `,
          time(Math.ceil(needed)),
          needed > hold * (1 + 1e-9) ? ': longer than the card asks for.' : ' to be shown.',
        ],
  ]
}

/** The state of the test: how low the tank must come, how steep it must stand. */
const stateText = (givens: Givens, instruments: Instruments, context: PlanContext): PlanText[] => {
  const { least_head: head, least_attitude: attitude } = givens.numbers
  const said: PlanText[] = []
  if (head !== undefined) {
    const model = instruments.head
    const digit = context.gauges.head?.digit ?? model?.resolution ?? 0
    const guard = SURE * Math.hypot(levelError(model, head), (model?.resolution ?? 0) / Math.sqrt(12))
    const shown = numbersOf('length', 'head')
    const lowest = digit > 0 ? Math.floor((head - guard) / digit + 1e-9) * digit : head - guard
    said.push(
      Number.isNaN(guard)
        ? ['The head must come down to ', shown(head), ', and by what its tape may be wrong.']
        : [
            'Let it run until the head reads ',
            shown(lowest),
            ' or less: the least fuel is ',
            shown(head),
            '.',
          ],
    )
  }
  if (attitude !== undefined)
    said.push([`Block it nose up beyond ${degrees(attitude)} by what the level may be wrong by.`])
  return said
}

export const plan = (givens: Givens, instruments: Instruments, context: PlanContext): Plan => {
  const collected = collectedOf(instruments, context)
  const known = requiredAs(collected, givens)
  const isPlanned = Number.isNaN(known)
  const asked = isPlanned
    ? requiredAs(collected, { ...givens, numbers: { ...givens.numbers, density: PETROL } })
    : known
  if (!(asked > 0)) return { steps: null, readings: null, text: [] }
  const { hold = MINUTE, time_error: timeError = 0 } = givens.numbers
  const times = [0, ...readAt(hold, context.every)]
  const amount = numbersOf(collected, collected)
  const scale = instruments[collected]
  const before = earlierRatio(context, 'flow_ratio')
  const most = Math.max(before?.value ?? 1, 1) * asked * hold
  const columns = [
    { title: 'time', kind: 'time', of: 'time', written: true },
    { title: 'just enough', kind: collected, of: collected },
  ] as const
  const rows = times.map((t) => [t, asked * t])
  return {
    steps: null,
    readings: { columns, rows },
    text: [
      [
        `The flow must be ${factorOf(givens)} times the consumption: `,
        amount(asked * hold),
        ' in ',
        time(hold),
        isPlanned ? ` (for ${PETROL} kg/m³; the density of the day decides).` : '.',
        ' Have a can for more than that, and enough fuel above the least.',
      ],
      ...longText({ asked, hold, scale, timeError, context }),
      ...stateText(givens, instruments, context),
      ...outOfRange([most], scale, amount),
      [
        'Read on to the end of the time or to the first sign of a failing flow, and mark that row; it makes the unusable fuel.',
      ],
    ],
  }
}
