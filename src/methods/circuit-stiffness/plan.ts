/** Before the test: the load steps, what the gauge must show at the last one, and how far the circuit should go at each. */
import type { Givens, Instruments, Measures } from '../method.ts'
import { loadSteps, type Plan, type PlanContext, type PlanText, sureReading } from '../plan.ts'
import { type Circuit, loopOf } from './loop.ts'
import { isKind } from './motion.ts'

/** Steps up to the peak and cycles: what `rehearse` takes as well. */
const STEPS = 5
const CYCLES = 2

/** How load and movement are read: factors from what the gauge shows to the working terms, and back. */
type Reading = { readonly force: boolean; readonly lever: number; readonly shown: (motion: number) => number }

const readingOf = ({ numbers }: Givens, { gauges }: PlanContext): Reading => {
  const { arm, load_angle = 0 } = numbers
  const force = !gauges.load || isKind(gauges.load.dim, 'force')
  const length = !gauges.deflection || isKind(gauges.deflection.dim, 'length')
  return {
    force,
    lever: force && arm !== undefined ? arm * Math.cos(load_angle) : 1,
    shown: length && arm !== undefined ? (angle) => arm * Math.sin(angle) : (motion) => motion,
  }
}

/** The limit load as the gauge shows it. */
const limitRead = ({ numbers, dims }: Givens, { force, lever }: Reading): number => {
  const limit = numbers.limit_load ?? Number.NaN
  const isMoment = dims?.limit_load !== undefined && isKind(dims.limit_load, 'moment')
  if (force) return isMoment ? limit / lever : limit
  return isMoment ? limit : limit * (numbers.arm ?? Number.NaN) * Math.cos(numbers.load_angle ?? 0)
}

const circuitOf = (measures: Measures, angular: boolean): Circuit | null => {
  const stiffness = (angular ? measures.stiffness : measures.linear_stiffness)?.value
  if (stiffness === undefined || !(stiffness > 0)) return null
  return {
    compliance: 1 / stiffness,
    freePlay: Math.max(0, measures.free_play?.value ?? 0),
    friction: Math.max(0, measures.friction?.value ?? 0),
  }
}

/** One cycle from zero, in both directions. */
const cycle = (steps: readonly number[]): number[] => {
  const back = [...steps.slice(0, -1).reverse(), 0]
  const half = [...steps, ...back]
  return [...half, ...half.map((load) => -load + 0)]
}

/** Which cycle a row belongs to; the first reading, that of no load, to the first. */
const cycleOf = (row: number, rows: number): number =>
  Math.floor(Math.max(0, row - 1) / ((rows - 1) / CYCLES)) + 1

const load = (value: number) => ({ value, kind: 'force', of: 'load' }) as const

const lastStep = (limit: number, sure: number | null, top: number, stop: number | undefined): PlanText[] => {
  const beyond: PlanText[] =
    stop !== undefined && top > Math.abs(stop)
      ? [['The stop value of ', load(stop), ' leaves no room for that: the load cannot surely be reached.']]
      : []
  if (sure === null)
    return [
      [
        'Whether ',
        load(limit),
        ' is surely reached cannot be planned: the accuracy of the load is not asked for.',
      ],
      ...beyond,
    ]
  return [
    [
      'The last step reads ',
      load(top),
      ' in each direction: the limit load of ',
      load(limit),
      ' and what the gauge may be wrong by.',
    ],
    ...beyond,
  ]
}

/** What a criterion means for the dial: the movement at the limit load where it is just met. */
const atTheLimit = (
  givens: Givens,
  context: PlanContext,
  reading: Reading,
  limit: number,
  whole: readonly string[],
): PlanText[] => {
  const moved = (value: number) => ({ value, kind: 'length', of: 'deflection' }) as const
  return context.limits.flatMap(({ criterion, measure, direction, value }): PlanText[] => {
    if (whole.includes(measure) && direction === 'above' && value > 0) {
      const kind = measure === 'linear_stiffness' ? 'linear-stiffness' : 'angular-stiffness'
      return [
        [
          `For “${criterion}” the circuit must have at least `,
          { value, kind, of: measure },
          ': then it gives at most ',
          moved(reading.shown((limit * reading.lever) / value)),
          ' at the limit load, without play and friction.',
        ],
      ]
    }
    const travel = givens.numbers.full_travel
    if (measure !== 'travel_lost' || direction !== 'below' || travel === undefined) return []
    const isLength = givens.dims?.full_travel !== undefined && isKind(givens.dims.full_travel, 'length')
    const allowed = isLength ? value * travel : reading.shown(value * travel)
    return [[`For “${criterion}” it may move by at most `, moved(allowed), ' at the limit load.']]
  })
}

export const plan = (givens: Givens, instruments: Instruments, context: PlanContext): Plan => {
  const reading = readingOf(givens, context)
  const limit = limitRead(givens, reading)
  if (!(limit > 0)) return { steps: null, readings: null, text: [] }
  const sure = instruments.load ? sureReading(limit, instruments.load, context.gauges.load?.digit) : null
  const top = sure ?? limit
  const steps = loadSteps(top, context.gauges.load?.unit ?? 1, STEPS)
  const angular = givens.numbers.arm !== undefined || !reading.force
  const known = context.earlier.flatMap(({ run, measures }) => {
    const circuit = circuitOf(measures, angular)
    return circuit ? [{ run, circuit }] : []
  })[0]
  const rows = [0, ...Array.from({ length: CYCLES }, () => cycle(steps)).flat()]
  const moved = known
    ? loopOf(
        known.circuit,
        rows.map((each) => each * reading.lever),
      ).map(reading.shown)
    : null
  const atSurface = givens.words.loaded_end !== 'cockpit'
  const whole = angular ? ['stiffness', ...(atSurface ? ['surface_stiffness'] : [])] : ['linear_stiffness']
  const loadColumn = { title: 'load to reach', kind: 'force', of: 'load' } as const
  const expected = { title: 'expected', kind: 'length', of: 'deflection' } as const
  return {
    steps: {
      columns: [loadColumn, { ...expected, title: 'deflection expected, load rising' }],
      rows: steps.map((step, i) => [step, moved?.[i + 1] ?? null]),
    },
    readings: {
      columns: [{ title: 'cycle', kind: 'count', of: 'cycle', written: true }, loadColumn, expected],
      rows: rows.map((each, i) => [cycleOf(i, rows.length), each, moved?.[i] ?? null]),
    },
    text: [
      ...lastStep(limit, sure, top, context.stopAt.load),
      known
        ? [
            `Expected deflections are those of ${known.run}, load rising; what the fixture gives comes on top.`,
          ]
        : ['No earlier run gives a stiffness: what deflection to expect is not known.'],
      ...atTheLimit(givens, context, reading, limit, whole),
    ],
  }
}
