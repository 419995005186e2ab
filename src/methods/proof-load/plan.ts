/** Before the test: the load steps, what the scale must show at the target, and how far it should move at each. */
import type { Givens, Instruments } from '../method.ts'
import { loadSteps, type Plan, type PlanContext, type PlanText, sureReading } from '../plan.ts'
import { channelsOf, suffixOf } from './describe.ts'
import { holdOf } from './readings.ts'

const STEPS = 5
/** Readings of a hold, and how much longer than asked: the clock and the gap between two readings count against it. */
const HOLD_READINGS = 5
const LONGER = 1.5
/** Small cycles that find the middle of the play: what part of the target, in how many steps, how often. */
const SMALL = 0.3
const SMALL_STEPS = 4
const SMALL_CYCLES = 2

type Row = { readonly phase: string; readonly load: number }

/** Both ways in steps, back by way of the half. */
const smallCycle = (phase: string, steps: readonly number[], top: number): Row[] => {
  const half = [...steps, top / 2, 0]
  const once = [...half, ...half.map((load) => -load + 0)]
  return Array.from({ length: SMALL_CYCLES }, () => once)
    .flat()
    .map((load) => ({ phase, load }))
}

/** Movement per load as an earlier run had it at its peak, by column of movement. */
const earlierOf = (context: PlanContext, channels: readonly string[]) => {
  for (const { run, measures } of context.earlier) {
    const peak = measures.sustained_peak?.value
    if (!peak) continue
    const perLoad = channels.map((channel) => {
      const moved = measures[channels.length > 1 ? `peak_deflection_${suffixOf(channel)}` : 'peak_deflection']
      return moved ? moved.value / peak : null
    })
    if (perLoad.some((each) => each !== null)) return { run, perLoad }
  }
  return null
}

const load = (value: number) => ({ value, kind: 'force', of: 'load' }) as const

const targetText = (
  target: number,
  sure: number | null,
  hold: number,
  stop: number | undefined,
): PlanText[] => {
  const time = (value: number) => ({ value, kind: 'time', of: 'hold' }) as const
  const held: PlanText = [
    'Hold for ',
    time(LONGER * hold),
    ' rather than the bare ',
    time(hold),
    ': the time counts from the first to the last reading that is surely at the target.',
  ]
  if (sure === null)
    return [
      [
        'Whether ',
        load(target),
        ' is surely reached cannot be planned: the accuracy of the scale is not asked for.',
      ],
      held,
    ]
  const beyond: PlanText[] =
    stop !== undefined && Math.abs(sure) > Math.abs(stop)
      ? [['The stop value of ', load(stop), ' leaves no room for that: the target cannot surely be reached.']]
      : []
  return [
    [
      'Raise until the scale shows ',
      load(sure),
      ': the target of ',
      load(target),
      ' and what the scale may be wrong by.',
    ],
    ...beyond,
    held,
  ]
}

const expectedText = (earlier: ReturnType<typeof earlierOf>): PlanText => {
  if (!earlier) return ['No earlier run says how far it moves: what deflection to expect is not known.']
  return [`Expected deflections are in proportion to those of ${earlier.run} at its peak.`]
}

export const plan = (givens: Givens, instruments: Instruments, context: PlanContext): Plan => {
  const { target } = givens.numbers
  if (target === undefined || target === 0) return { steps: null, readings: null, text: [] }
  const sign = Math.sign(target)
  const unit = context.gauges.load?.unit ?? 1
  const gauge = instruments.load
  const size = Math.abs(target)
  const sure = gauge
    ? sureReading(size * (1 - (givens.numbers.tolerance ?? 0)), gauge, context.gauges.load?.digit)
    : null
  const top = Math.max(sure ?? size, size)
  const steps = loadSteps(top, unit, STEPS)
  const named = channelsOf(Object.keys(instruments))
  const channels = named.length > 0 ? named : ['deflection']
  const earlier = earlierOf(context, channels)
  const hold = holdOf(givens)
  const loose = givens.words.play === 'present'
  const small = loadSteps(
    (SMALL * size) / unit > 1 ? Math.round((SMALL * size) / unit) * unit : SMALL * size,
    unit,
    SMALL_STEPS,
  )
  const smallTop = small[small.length - 1] as number
  const around = (phase: string): Row[] =>
    loose
      ? smallCycle(phase, small, smallTop)
      : [
          { phase, load: 0 },
          { phase, load: 0 },
        ]
  const rows: Row[] = [
    ...around('before'),
    ...steps.slice(0, -1).map((each) => ({ phase: 'loading', load: each })),
    ...Array.from({ length: HOLD_READINGS }, () => ({ phase: 'hold', load: top })),
    ...steps
      .slice(0, -1)
      .reverse()
      .map((each) => ({ phase: 'unloading', load: each })),
    ...around('after'),
  ]
  const expected = (each: number) =>
    channels.map((_, i) => (loose && Math.abs(each) <= smallTop ? null : scaled(earlier?.perLoad[i], each)))
  const scaled = (perLoad: number | null | undefined, each: number) =>
    perLoad === null || perLoad === undefined ? null : perLoad * sign * each
  const columns = [
    { title: 'load to reach', kind: 'force', of: 'load' },
    ...channels.map(
      (channel) =>
        ({
          title: channels.length > 1 ? `expected at ${suffixOf(channel)}` : 'deflection expected',
          kind: 'length',
          of: channel,
        }) as const,
    ),
  ] as const
  return {
    steps: {
      columns,
      rows: steps.map((each) => [sign * each, ...channels.map((_, i) => scaled(earlier?.perLoad[i], each))]),
    },
    readings: {
      columns: [{ title: 'phase', kind: 'text', of: 'phase', written: true }, ...columns],
      rows: rows.map(({ phase, load: each }) => [phase, sign * each + 0, ...expected(each)]),
    },
    text: [
      ...targetText(target, sure === null ? null : sign * top, hold, context.stopAt.load),
      ...(loose
        ? [
            [
              'Small cycles of ± ',
              load(smallTop),
              ' before and after, both ways: they find the middle of the play.',
            ] as const,
          ]
        : []),
      expectedText(earlier),
    ],
  }
}
