/** Before the test: which point stands on which scale how often, what to expect there, and what the scales can tell. */
import type { Givens, InstrumentModel, Instruments, Measures } from '../method.ts'
import type { Plan, PlanContext, PlanText } from '../plan.ts'
import { FEWEST_REPEATS, levelError, numbersOf, outOfRange, repeatsNeeded, roughly } from '../plan-text.ts'
import { isScale, itemsOf, pointsOf, words } from './names.ts'

/** Scatter of a third of all else adds 5 % to U: it no longer counts. */
const SMALL_SHARE = 1 / 3

const mass = numbersOf('mass', 'weight')
const length = numbersOf('length', 'cg_forward_margin')

const sum = (values: readonly number[]): number => values.reduce((all, value) => all + value, 0)

type Known = { readonly run: string; readonly measures: Measures; readonly loads: readonly number[] }

/** Loads of the points as an earlier run had them all. */
const earlierOf = (context: PlanContext, points: readonly string[]): Known | null => {
  for (const { run, measures } of context.earlier) {
    const loads = points.map((point) => measures[`at_${point}`]?.value ?? Number.NaN)
    if (loads.length > 0 && loads.every(Number.isFinite)) return { run, measures, loads }
  }
  return null
}

/**
 * Expanded uncertainty (k = 2) from the scales alone. One scale under all n points errs alike at each, so the sum is off
 * by n times as much and the centre of gravity by u Σ(x − x_CG)/W; where it does not state its non-linearity, the lightest
 * and the heaviest load are off by √2 u against each other besides. S scales that change round share that, each by 1/S.
 */
const fromScales = (
  model: InstrumentModel | undefined,
  scales: number,
  known: Known | null,
  arms: readonly number[],
) => {
  const loads = known?.loads ?? []
  const total = sum(loads)
  const u = levelError(model, loads.length > 0 ? total / arms.length : 0)
  const shared = (2 / Math.sqrt(scales)) * u
  if (loads.length === 0) return { mass: shared * arms.length, cg: Number.NaN }
  const cg = sum(loads.map((load, k) => load * (arms[k] ?? Number.NaN))) / total
  const [low, high] = [Math.min(...loads), Math.max(...loads)]
  const bend = (Math.SQRT2 * (model?.linearity ?? model?.offset ?? 0)) / (u || 1)
  const ramp = loads.map((load) => (high > low ? bend * ((load - low) / (high - low) - 0.5) : 0))
  const moved = (levers: readonly number[]) =>
    shared * Math.hypot(sum(levers), sum(levers.map((lever, k) => lever * (ramp[k] ?? 0))))
  return { mass: moved(arms.map(() => 1)), cg: moved(arms.map((arm) => arm - cg)) / total }
}

const scaleText = (U: ReturnType<typeof fromScales>): PlanText[] => {
  if (!Number.isFinite(U.mass))
    return [['What the scales can tell is not known: their accuracy is not asked for.']]
  return [
    [
      'With scales just as good as asked for, their errors alone put ±',
      roughly(mass(U.mass)),
      ' on the mass',
      ...(Number.isFinite(U.cg) ? [' and ±', roughly(length(U.cg)), ' on the centre of gravity'] : []),
      '; arms, level and items come on top.',
    ],
  ]
}

/** How often, by how well an earlier weighing repeated. */
const repeatsText = (
  known: Known | null,
  points: readonly string[],
  U: number,
): { readonly count: number; readonly text: PlanText } => {
  const s = known?.measures.repeatability?.value
  if (s === undefined || !Number.isFinite(U))
    return {
      count: FEWEST_REPEATS,
      text: [
        `Weigh ${FEWEST_REPEATS} times over: roll off, zero, roll on again. Fewer do not show how well it repeats.`,
      ],
    }
  const needed = repeatsNeeded(s, points.length, 1, SMALL_SHARE * U)
  const begin = [
    `Readings of ${known?.run} repeated within `,
    roughly(mass(s)),
    ' (standard deviation): ',
  ] as const
  if (needed === null)
    return {
      count: FEWEST_REPEATS,
      text: [
        ...begin,
        'no number of weighings brings that below what the scales err by. Find out what drags or moves first.',
      ],
    }
  return {
    count: needed,
    text: [...begin, `${needed} weighings over make that small beside the errors of the scales.`],
  }
}

export const plan = (givens: Givens, instruments: Instruments, context: PlanContext): Plan => {
  const points = pointsOf(givens)
  if (points.length === 0) return { steps: null, readings: null, text: [] }
  const items = itemsOf(givens)
  const scales = Object.keys(context.gauges).filter(isScale)
  const columns = scales.length > 0 ? scales : Object.keys(instruments).filter(isScale)
  const model = instruments[columns[0] ?? 'reading'] ?? instruments.reading
  const known = earlierOf(context, points)
  const arms = points.map((point) => givens.numbers[`arm_${point}`] ?? Number.NaN)
  const U = fromScales(model, Math.max(1, columns.length), known, arms)
  const repeats = repeatsText(known, points, U.mass)
  const several = columns.length > 1
  const rows = Array.from({ length: repeats.count }, (_, repeat) =>
    points.map((point, k) => [
      point,
      ...(several ? [words(columns[(k + repeat) % columns.length] ?? '')] : []),
      known?.loads[k] ?? null,
    ]),
  ).flat()
  const expected = {
    title: 'expected',
    kind: 'mass',
    of: several ? 'weight' : (columns[0] ?? 'reading'),
  } as const
  return {
    steps: {
      columns: [{ title: 'point', kind: 'text' }, expected],
      rows: points.map((point, k) => [words(point), known?.loads[k] ?? null]),
    },
    readings: {
      columns: [
        { title: 'point', kind: 'text', of: 'point', written: true },
        ...(several ? [{ title: 'on', kind: 'text' } as const] : []),
        expected,
      ],
      rows: [...rows, ...items.map((item) => [item, ...(several ? [''] : []), null])],
    },
    text: [
      repeats.text,
      ...(several
        ? [['The scales change round between the points from one weighing to the next.'] as const]
        : []),
      ...scaleText(U),
      ...outOfRange(known?.loads ?? [], model, mass),
      ...(items.length > 0
        ? [
            [
              `Say of each item whether it is added or removed by calculation: ${items.map(words).join(', ')}.`,
            ] as const,
          ]
        : []),
      known
        ? [`Expected are the loads of ${known.run}; a reading far off is a point that does not stand free.`]
        : ['No earlier run says what each scale will carry: make sure before that none is overloaded.'],
    ],
  }
}
