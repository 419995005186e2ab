/** Before the test: when to read, what to expect at the limit, and how long to hold. */
import type { Givens, Instruments } from '../method.ts'
import type { Plan, PlanContext, PlanTable, PlanText } from '../plan.ts'
import { referencePressure, referenceTemperature } from './constants.ts'
import { gaugeOf, planHold } from './hold-time.ts'
import { nominalAmbient } from './readings.ts'
import { volumeOf } from './volume.ts'

/** More rows than these are a logger's. */
const MOST_BY_HAND = 60

const timetable = (settle: number, hold: number, every: number | undefined): PlanTable | null => {
  if (every === undefined || !(every > 0)) return null
  const count = Math.ceil((settle + hold) / every - 1e-9) + 1
  if (count > MOST_BY_HAND) return null
  const begins = Math.ceil(settle / every - 1e-9)
  const what = (row: number) => {
    if (row === begins) return 'hold begins'
    if (row === 0) return 'valve shut'
    return row === count - 1 ? 'end' : ''
  }
  return {
    columns: [
      { title: 'when', kind: 'text' },
      { title: 'time', kind: 'time', of: 'time', written: true },
    ],
    rows: Array.from({ length: count }, (_, row) => [what(row), row * every]),
  }
}

const time = (value: number) => ({ value, kind: 'time', of: 'hold' }) as const

/** How long, for one criterion on the leak. */
const holdText = (
  givens: Givens,
  instruments: Instruments,
  every: number | undefined,
  criterion: string,
  limit: number,
): PlanText => {
  const asked = givens.numbers.hold ?? Number.NaN
  const flow = { value: limit, kind: 'volume-flow', of: 'leak_rate' } as const
  const plan = planHold(givens, instruments, limit, every)
  if (!plan.decidable) return [`For “${criterion}”, `, flow, `: ${plan.why}`]
  const enough = asked >= plan.hold - 1
  return [
    `For “${criterion}”, `,
    flow,
    ': with instruments just as good as asked for, U comes down to a quarter of the limit after a hold of ',
    time(Math.ceil(plan.hold / 60) * 60),
    '; the card asks for ',
    time(asked),
    enough ? '.' : ', so that a result near the limit will stay undetermined.',
  ]
}

/** Change of P* over the hold where the leak stands on its limit: n R T = P V, so dP/dt = q p_R T/(T_R V). */
const changeAt = (limit: number, givens: Givens): number => {
  const test = givens.numbers.test_pressure ?? Number.NaN
  const absolute = nominalAmbient(givens) + test
  const { zero, compliance } = volumeOf(givens, test, absolute)
  // Walls that give take part of the gas: P V(p) changes by (V + P dV/dp) dP.
  const effective = zero + (test + absolute) * compliance
  return (limit * (givens.numbers.hold ?? Number.NaN) * referencePressure(givens)) / effective
}

const expectText = (givens: Givens, instruments: Instruments, limit: number): PlanText[] => {
  const change = changeAt(limit, givens)
  if (!Number.isFinite(change)) return []
  const digit = gaugeOf(instruments)?.resolution ?? 0
  const digits =
    digit > 0 && !instruments.leg_article ? `, ${Math.round(change / digit)} digits of the gauge` : ''
  return [
    [
      'A leak just at that limit changes the pressure by ',
      { value: change, kind: 'pressure', of: 'pressure' },
      ` over the hold${digits}.`,
    ],
  ]
}

export const plan = (givens: Givens, instruments: Instruments, context: PlanContext): Plan => {
  const { test_pressure: test, settle = 0, hold } = givens.numbers
  if (test === undefined || hold === undefined) return { steps: null, readings: null, text: [] }
  const pressure = (value: number) => ({ value, kind: 'pressure', of: 'pressure' }) as const
  const start = context.targets.start_pressure
  const leaks = context.limits.filter(
    ({ measure, direction }) => measure === 'leak_rate' && direction === 'below',
  )
  const kelvin = (nominalAmbient(givens) + test) / referenceTemperature(givens)
  return {
    steps: null,
    readings: timetable(settle, hold, context.every),
    text: [
      [
        `${test < 0 ? 'Draw down to ' : 'Raise to '}`,
        pressure(start ?? 1.06 * test),
        ', shut off, settle for ',
        time(settle),
        ', then hold for ',
        time(hold),
        ...(context.every ? [', reading every ', time(context.every)] : []),
        '. ',
        pressure(test),
        ' must still be there when the hold begins.',
      ],
      ...leaks.flatMap(({ criterion, value }) => [
        holdText(givens, instruments, context.every, criterion, value),
        ...expectText(givens, instruments, value),
      ]),
      ['1 K of the gas makes ', pressure(kelvin), ' by itself.'],
    ],
  }
}
