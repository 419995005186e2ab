/** Before the test: the steps of both loadings, what the gauge must show, how long to hold, and what the dials should do. */
import type { Givens, Instruments } from '../method.ts'
import { loadSteps, type Plan, type PlanContext, type PlanText, sureReading } from '../plan.ts'
import { beyondStop, numbersOf, outOfRange } from '../plan-text.ts'
import { gasEnergy, standoffDistance } from './energy.ts'
import { stationsOf, suffixOf, targetOf } from './readings.ts'
import { FEWEST_DIGITS } from './softening.ts'

const STEPS = 6
const HOLD_READINGS = 5
/** A hold counts from reading to reading, so it is planned longer than asked. */
const LONGER = 1.5
const ZEROS = 3
/** Readings at the top of the second loading: as many as softening looks at. */
const TOP_AGAIN = 3

const pressure = numbersOf('pressure', 'pressure')
const length = (of: string) => numbersOf('length', of)
const time = numbersOf('time')

type Row = { readonly loading: number; readonly what: string; readonly level: number }

const rowsOf = (steps: readonly number[], holding: number, waits: boolean): Row[] => {
  const top = steps[steps.length - 1] ?? 0
  const times = (count: number, row: Row): Row[] => Array.from({ length: count }, () => row)
  const loading = (number: number, held: number): Row[] => [
    ...times(ZEROS, { loading: number, what: 'no pressure', level: 0 }),
    ...steps.slice(0, -1).map((level) => ({ loading: number, what: 'raise', level })),
    ...times(held, { loading: number, what: 'hold', level: top }),
  ]
  return [
    ...loading(1, holding),
    ...loading(2, TOP_AGAIN),
    ...times(ZEROS, { loading: 2, what: waits ? 'after the wait' : 'pressure off', level: 0 }),
  ]
}

/** Movement at the target of an earlier run, by station. */
const earlierOf = (context: PlanContext, stations: readonly string[]) => {
  for (const { run, measures } of context.earlier) {
    const bulges = stations.map((name) => measures[`bulge_${suffixOf(name)}`]?.value ?? null)
    if (bulges.some((bulge) => bulge !== null)) return { run, bulges }
  }
  return null
}

const reachText = (target: number, sure: number | null): PlanText =>
  sure === null
    ? [
        'Whether ',
        pressure(target),
        ' is surely reached cannot be planned: the accuracy of the gauge is not asked for.',
      ]
    : [
        'Raise in steps until the gauge shows ',
        pressure(sure),
        ': the target of ',
        pressure(target),
        ' and what the gauge may be wrong by.',
      ]

const holdText = ({ numbers }: Givens, every: number | undefined): PlanText[] => {
  const { hold = 0, max_gap, wait = 0 } = numbers
  const tooRare = every !== undefined && max_gap !== undefined && every > max_gap
  return [
    [
      'Hold for ',
      time(LONGER * hold),
      ' rather than the bare ',
      time(hold),
      ...(every ? [', reading every ', time(every)] : []),
      ': the hold counts from the first to the last reading that is surely at the target.',
    ],
    ...(tooRare
      ? [
          [
            'Readings every ',
            time(every),
            ' break the hold: at most ',
            time(max_gap),
            ' may lie between two of them.',
          ],
        ]
      : []),
    [
      'Load twice, through the same steps: only the second loading shows whether anything let go in the first.',
      ...(wait > 0
        ? [
            ' After the last one wait for ',
            time(wait),
            ' without pressure, then read the dials again: what is left is the set.',
          ]
        : [' Read the dials again with the pressure off: what is left is the set.']),
    ],
  ]
}

/** Energy and distance at the highest pressure that will be there: the one to be shown, or the stop value. */
const energyText = ({ numbers, words }: Givens, top: number, stop: number | undefined): PlanText[] => {
  const highest = Math.max(top, stop ?? 0)
  const energy = gasEnergy(highest, numbers.volume ?? Number.NaN)
  if (!(energy > 0)) return []
  const distance = Math.max(standoffDistance(words.edition ?? 'pcc2_501', energy), numbers.own_distance ?? 0)
  return [
    [
      'At ',
      pressure(highest),
      ' the gas stores ',
      { value: energy, kind: 'energy', of: 'stored_energy' },
      ': nobody nearer than ',
      { value: distance, kind: 'length', of: 'standoff' },
      ', and further from what may fly.',
    ],
  ]
}

/** What criteria mean for the dials, and from which bulge on softening can be told. */
const dialText = (
  context: PlanContext,
  instruments: Instruments,
  stations: readonly string[],
): PlanText[] => {
  const [first = 'station_1'] = stations
  const limits = context.limits.filter(
    ({ measure, direction }) => measure.startsWith('bulge') && direction === 'below',
  )
  const digit = Math.max(
    0,
    ...stations.map((name) => context.gauges[name]?.digit ?? instruments[name]?.resolution ?? 0),
  )
  return [
    ...limits.map(
      ({ criterion, value }): PlanText => [
        `For “${criterion}” no dial may have moved by more than `,
        length(first)(value),
        ' at the target: stop there, whatever the pressure.',
      ],
    ),
    ...(digit > 0
      ? [
          [
            'A station that bulges by less than ',
            length(first)(FEWEST_DIGITS * digit),
            `, ${FEWEST_DIGITS} digits of its dial, cannot show that it softened.`,
          ],
        ]
      : []),
  ]
}

export const plan = (givens: Givens, instruments: Instruments, context: PlanContext): Plan => {
  const target = targetOf(givens)
  if (!(Math.abs(target) > 0)) return { steps: null, readings: null, text: [] }
  const sign = Math.sign(target)
  const size = Math.abs(target)
  const gauge = instruments.pressure
  const sure = gauge ? sureReading(size, gauge, context.gauges.pressure?.digit) : null
  const top = sure ?? size
  const steps = loadSteps(top, context.gauges.pressure?.unit ?? 1, STEPS)
  const { hold = 0, wait = 0 } = givens.numbers
  const holding = context.every ? Math.ceil((LONGER * hold) / context.every) + 1 : HOLD_READINGS
  const named = stationsOf([...new Set([...Object.keys(instruments), ...Object.keys(context.gauges)])])
  const earlier = earlierOf(context, named)
  const moved = (level: number) =>
    named.map((_, k) => {
      const bulge = earlier?.bulges[k] ?? null
      return bulge === null ? null : (sign * bulge * level) / size
    })
  const levelColumn = { title: 'pressure to reach', kind: 'pressure', of: 'pressure' } as const
  const expected = named.map(
    (name) => ({ title: `expected at ${suffixOf(name)}`, kind: 'length', of: name }) as const,
  )
  const rows = rowsOf(steps, Math.max(2, holding), wait > 0)
  return {
    steps: {
      columns: [levelColumn, ...expected],
      rows: steps.map((level) => [sign * level, ...moved(level)]),
    },
    // Expected movements stand in the table of steps: beside every dial to be read they would not fit the sheet.
    readings: {
      columns: [
        { title: 'loading', kind: 'count', of: 'loading', written: true },
        { title: 'what', kind: 'text' },
        levelColumn,
      ],
      rows: rows.map(({ loading, what, level }) => [loading, what, sign * level + 0]),
    },
    text: [
      reachText(target, sure === null ? null : sign * top),
      ...beyondStop(top, context.stopAt.pressure, pressure),
      ...outOfRange([sign * top, 0], gauge, pressure),
      ...holdText(givens, context.every),
      ...energyText(givens, sign * top, context.stopAt.pressure),
      ...dialText(context, instruments, named),
      earlier
        ? [
            `Expected movements are those of ${earlier.run}, in proportion; a skin that stiffens moves more early.`,
          ]
        : named.length > 0
          ? ['No earlier run says how far the skin moves: what to expect is not known.']
          : ['No dial is asked for: bulge, set and softening will not be known.'],
    ],
  }
}
