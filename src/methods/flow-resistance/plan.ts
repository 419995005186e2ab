/** Before the test: the flows to set each way, how much must pass, and what drop goes with it. */
import type { Givens, Instruments, Measures } from '../method.ts'
import { loadSteps, type Plan, type PlanContext, type PlanText, sureReading } from '../plan.ts'
import { numbersOf, outOfRange } from '../plan-text.ts'
import { requiredFlow } from './required.ts'
import { askedOf, type Group } from './select.ts'
import { wayWords } from './words.ts'

type Way = Group['way']

/** Flows each way: a curve of two coefficients and five flows to spare. */
const STEPS = 7

const flow = numbersOf('volume-flow', 'flow')
const drop = numbersOf('pressure', 'pressure_drop')

/** Ways in which something must pass; one without a name where the direction is not read. */
const waysOf = (givens: Givens, context: PlanContext): Way[] => {
  const asked = (['in', 'out'] as const).filter((way) => requiredFlow(givens, way) !== undefined)
  if (context.gauges.direction || asked.length > 1) return asked.length > 0 ? asked : ['in', 'out']
  return asked.length > 0 ? asked : ['any']
}

const named = (stem: string, way: Way): string => (way === 'any' ? stem : `${stem}_${way}`)

/** Δp = a Q + b Q² as an earlier run had it that way. */
const curveOf = (measures: Measures, way: Way): ((flow: number) => number) | null => {
  const of = (stem: string) => (measures[named(stem, way)] ?? measures[stem])?.value
  const [a, b] = [of('laminar_coefficient'), of('turbulent_coefficient')]
  return a === undefined || b === undefined ? null : (q) => a * q + b * q * q
}

const after = (way: Way): string => (way === 'any' ? '' : ` ${wayWords(way)}`)

const wayText = (way: Way, asked: number, top: number, sure: number | null): PlanText =>
  sure === null
    ? [
        `What must pass${after(way)} is `,
        flow(asked),
        '; whether that is surely reached cannot be planned: the accuracy of the flow meter is not asked for.',
      ]
    : [
        `Raise the flow${after(way)} to `,
        flow(top),
        ': what must pass is ',
        flow(asked),
        ', and the meter may be wrong by the rest. A drop beyond the last reading is not extrapolated.',
      ]

/** What criteria mean for the gauge: the drop at the flow that must pass. */
const limitText = (way: Way, asked: number, context: PlanContext): PlanText[] =>
  context.limits
    .filter(({ measure, direction }) => measure === named('drop_at_required', way) && direction === 'below')
    .map(({ criterion, value }) => [
      `For “${criterion}” the drop may be at most `,
      drop(value),
      ' at ',
      flow(asked),
      '.',
    ])

export const plan = (givens: Givens, instruments: Instruments, context: PlanContext): Plan => {
  const { flow: meter, pressure_drop: gauge } = instruments
  const ways = waysOf(givens, context).flatMap((way) => {
    const asked = askedOf(givens, way)
    if (asked === undefined) return []
    const sure = meter ? sureReading(asked, meter, context.gauges.flow?.digit) : null
    const top = sure ?? asked
    const steps = loadSteps(top, context.gauges.flow?.unit ?? 1, STEPS)
    const curve = context.earlier.flatMap(({ run, measures }) => {
      const found = curveOf(measures, way)
      return found ? [{ run, found }] : []
    })[0]
    return [{ way, asked, sure, top, steps, curve }]
  })
  if (ways.length === 0) {
    const missing =
      'What must pass is not known: give a climb or descent rate with ullage and altitude, or a flow of liquid.'
    return { steps: null, readings: null, text: [[missing]] }
  }
  const rows = ways.flatMap(({ way, steps, curve }) =>
    steps.map((q) => [way === 'any' ? '' : way, q, curve ? curve.found(q) : null]),
  )
  const columns = [
    { title: 'direction', kind: 'text', of: 'direction', written: true },
    { title: 'flow to set', kind: 'volume-flow', of: 'flow' },
    { title: 'drop expected', kind: 'pressure', of: 'pressure_drop' },
  ] as const
  const shown = ways.some(({ way }) => way !== 'any') ? columns : columns.slice(1)
  const table = { columns: shown, rows: rows.map((row) => row.slice(columns.length - shown.length)) }
  const runs = [...new Set(ways.flatMap(({ curve }) => (curve ? [curve.run] : [])))]
  return {
    steps: table,
    readings: table,
    text: [
      ...ways.flatMap(({ way, asked, top, sure }) => [
        wayText(way, asked, top, sure),
        ...limitText(way, asked, context),
      ]),
      ...outOfRange(
        ways.map(({ top }) => top),
        meter,
        flow,
      ),
      ...outOfRange(
        rows.flatMap(([, , expected]) => (typeof expected === 'number' ? [expected] : [])),
        gauge,
        drop,
      ),
      ['Let each flow settle before the drop is read, and read the gauge without flow before and after.'],
      runs.length > 0
        ? [`Expected drops are those of the curve of ${runs.join(' and ')}.`]
        : ['No earlier run gives a curve: what drop to expect is not known.'],
    ],
  }
}
