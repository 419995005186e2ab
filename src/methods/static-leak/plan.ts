/** Before the test: what to draw up or blow up to, when to read, what a line at its limit shows, and how long to hold. */
import type { Givens, Instruments } from '../method.ts'
import { type Plan, type PlanContext, type PlanText, sureReading } from '../plan.ts'
import { beyondStop, numbersOf, outOfRange, roughly } from '../plan-text.ts'
import { expectedU, holdFor, KELVIN, type Line, rateAt, type Setting, settingOf } from './hold-time.ts'
import { LINE } from './readings.ts'

const EVERY = 10
const HOLD = 60
/** More rows than these are a logger's. */
const MOST_BY_HAND = 60

const time = numbersOf('time')
const KINDS_OF_LINE = { altitude: 'length', airspeed: 'speed', pressure: 'pressure' } as const

const lineOf = (givens: Givens, instruments: Instruments, context: PlanContext): Line =>
  LINE.find((name) => instruments[name]) ??
  LINE.find((name) => context.gauges[name]) ??
  (givens.words.side === 'pitot' ? 'airspeed' : 'altitude')

/** What must show at the beginning of the hold to be surely at the stated pressure; null where the accuracy is not asked for. */
const sureStart = (
  { line, test, toReading }: Setting,
  instruments: Instruments,
  digit?: number,
): number | null => {
  const asked = toReading(test)
  const gauge = instruments[line]
  const size = gauge ? sureReading(Math.abs(asked), gauge, digit) : null
  return size === null ? null : Math.sign(asked) * size
}

type Shown = ReturnType<typeof numbersOf>

const limitText = (
  setting: Setting,
  givens: Givens,
  instruments: Instruments,
  limit: { readonly criterion: string; readonly measure: string; readonly value: number },
): PlanText[] => {
  const { hold = HOLD } = givens.numbers
  const loss = numbersOf(setting.pitot ? 'speed' : 'length', limit.measure)
  const U = expectedU(setting, givens, instruments, hold)
  const begin = [`For “${limit.criterion}”, `, loss(limit.value), ' in a minute: '] as const
  if (Number.isNaN(U))
    return [
      [...begin, 'what a hold can tell is not known: the indicator must state its digits and its drift.'],
    ]
  const needed = holdFor(setting, givens, instruments, limit.value)
  if (needed === null)
    return [[...begin, 'no hold brings U down to a quarter of that with such instruments.']]
  const rounded = Math.ceil(needed / EVERY) * EVERY
  return [
    [
      ...begin,
      'after a hold of ',
      time(hold),
      ' U is about ',
      roughly(loss(U)),
      '; a quarter of the limit takes ',
      time(rounded),
      needed > hold * (1 + 1e-9) ? ', so that a result near the limit will stay undetermined.' : '.',
    ],
  ]
}

/** Where the altitude of the field is known on the day only, altitudes count from it. */
const aboveWords = (setting: Setting, givens: Givens): string =>
  setting.line === 'altitude' && givens.numbers.field_altitude === undefined
    ? ' above what it shows with the line open'
    : ''

const startText = (
  setting: Setting,
  givens: Givens,
  { start, sure }: { readonly start: number; readonly sure: number | null },
  shown: Shown,
): PlanText => {
  const { settle = 0, hold = HOLD } = givens.numbers
  const asked = setting.toReading(setting.test)
  return [
    setting.pitot ? 'Blow up slowly to ' : 'Draw down slowly until it shows ',
    shown(start),
    `${aboveWords(setting, givens)}, shut off, settle for `,
    time(settle),
    ', then hold for ',
    time(hold),
    sure === null ? '. Whether ' : `. When the hold begins `,
    ...(sure === null
      ? [shown(asked), ' is then surely there is not known: the accuracy of the indicator is not asked for.']
      : [
          shown(sure),
          ' must still be there: the stated ',
          shown(asked),
          ' and what the indicator may be wrong by.',
        ]),
  ]
}

export const plan = (givens: Givens, instruments: Instruments, context: PlanContext): Plan => {
  const line = lineOf(givens, instruments, context)
  const setting = settingOf(givens, line)
  if (!(Math.abs(setting.test) > 0)) return { steps: null, readings: null, text: [] }
  const shown = numbersOf(KINDS_OF_LINE[line], line)
  const { settle = 0, hold = HOLD } = givens.numbers
  const every = context.every ?? EVERY
  const limit = context.limits.find(
    ({ measure, direction }) =>
      direction === 'below' && measure === (setting.pitot ? 'airspeed_loss' : 'altitude_loss'),
  )
  const rate = limit ? rateAt(setting, limit.value) : Number.NaN
  const digit = context.gauges[line]?.digit ?? instruments[line]?.resolution ?? 0
  const sure = sureStart(setting, instruments, digit)
  // So much more that a line just at its limit still shows it when the hold begins; on a whole digit.
  const atStart = setting.toGauge(sure ?? setting.toReading(setting.test)) * Math.exp((rate || 0) * settle)
  const reading = setting.toReading(atStart)
  const start = digit > 0 ? Math.sign(reading) * Math.ceil(Math.abs(reading) / digit - 1e-6) * digit : reading
  const count = Math.ceil((settle + hold) / every - 1e-9) + 1
  const begins = Math.ceil(settle / every - 1e-9)
  const what = (row: number): string => {
    if (row === begins) return 'hold begins'
    if (row === 0) return 'shut off'
    return row === count - 1 ? 'end' : ''
  }
  const left = (t: number) => setting.toReading(setting.toGauge(start) * Math.exp(-rate * t))
  const rows = Array.from({ length: count }, (_, row) => [
    what(row),
    row * every,
    ...(limit ? [left(row * every)] : []),
  ])
  const above = aboveWords(setting, givens) === '' ? '' : ', above the field'
  const stop = context.stopAt[line]
  // A stop value is one of the altimeter; what is planned from the field does not compare with it.
  const room = above === '' ? beyondStop(start, stop, shown) : []
  return {
    steps: null,
    readings:
      count > MOST_BY_HAND
        ? null
        : {
            columns: [
              { title: 'when', kind: 'text' },
              { title: 'time', kind: 'time', of: 'time', written: true },
              ...(limit ? [{ title: `at the limit${above}`, kind: shown(0).kind, of: line } as const] : []),
            ],
            rows,
          },
    text: [
      startText(setting, givens, { start, sure }, shown),
      ...room,
      ...outOfRange([start], instruments[line], shown),
      ...(limit ? limitText(setting, givens, instruments, limit) : []),
      ...(limit
        ? [['A tight line stays where it was; one just at its limit shows what the table says.'] as const]
        : []),
      [
        '1 K of the gas makes ',
        roughly(
          numbersOf(
            'pressure',
            line === 'pressure' ? line : undefined,
          )((setting.ambient + setting.test) / KELVIN),
        ),
        ' by itself: no hands on the tubes.',
      ],
    ],
  }
}
