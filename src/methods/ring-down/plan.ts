/** Before the test: how fast to sample, how long to record, how large the swing must be for the damping to be told. */
import type { Givens, Instruments } from '../method.ts'
import type { Plan, PlanContext, PlanLimit, PlanText } from '../plan.ts'
import { numbersOf, outOfRange, roughly } from '../plan-text.ts'
import { rangeOf } from './band.ts'
import { MOST_RESIDUAL } from './conditions.ts'
import { LEAST_TURNS, TIME_CONSTANTS } from './window.ts'
import { percent, plain } from './words.ts'

/** Readings a turn that show its shape; four are the least that is not refused. */
const READINGS_A_TURN = 10
const RECORDS = 3
/** Damping of a light structure where nobody says better; common practice, no source. */
const LIGHT = 0.01

const time = numbersOf('time')
const frequency = numbersOf('frequency', 'frequency')

/**
 * Relative standard uncertainty of the damping ratio from noise alone, of a decay recorded until it has died down:
 * 4 (σ/A) √(2πζ/m), with m readings a turn. From the Fisher information of A e^(−αt) cos ωt over all t,
 * u(α)² = 16 σ² α³/(A² f_s), and ζ = α/ω, small: the least that any unbiased estimate can have (Cramér and Rao).
 */
export const dampingNoise = (noiseOverAmplitude: number, damping: number, readingsATurn: number): number =>
  4 * noiseOverAmplitude * Math.sqrt((2 * Math.PI * damping) / readingsATurn)

type Mode = {
  readonly low: number
  readonly high: number
  readonly damping: number
  /** Run that says so; null where it is the card's band and limits. */
  readonly run: string | null
  readonly noise: number | null
}

const limitOn = (context: PlanContext, names: readonly string[]): PlanLimit | undefined =>
  context.limits.find(({ measure }) => names.includes(measure))

/** Where the mode is looked for, and how fast it dies down: as in an earlier run, else what the card says. */
const modeOf = (givens: Givens, context: PlanContext): Mode | null => {
  const found = context.earlier.find(({ measures }) => measures.frequency && measures.damping_ratio)
  const band = rangeOf(givens)
  const at = found?.measures.frequency?.value
  const limit = limitOn(context, ['frequency', 'natural_frequency'])?.value
  const [low, high] = band ? [band.low, band.high] : [at ?? limit, at ?? limit]
  if (!low || !high) return null
  const asked = limitOn(context, ['damping_ratio'])?.value
  return {
    low: at ?? low,
    high,
    damping: found?.measures.damping_ratio?.value ?? asked ?? LIGHT,
    run: found?.run ?? null,
    noise: found?.measures.fit_residual?.value ?? null,
  }
}

const recordText = (mode: Mode, settle: number): PlanText[] => {
  const { low, high, damping, run } = mode
  const rate = READINGS_A_TURN * high
  const turns = Math.max(LEAST_TURNS, TIME_CONSTANTS / (2 * Math.PI * damping))
  const lasts = settle + turns / low
  const from = run ? `as in ${run}` : 'as the card has it'
  return [
    [
      'Sample at ',
      frequency(rate),
      ` or faster: ${READINGS_A_TURN} readings a turn up to `,
      frequency(high),
      '.',
    ],
    [
      `Record from before the release for `,
      roughly(time(lasts)),
      ` or more: ${Math.ceil(turns)} turns at `,
      frequency(low),
      `, after which a damping of ${percent(damping)} (${from}) has left 2 % of the swing; ${Math.ceil(lasts * rate)} samples.`,
    ],
  ]
}

/** How large the swing must be, by the noise that digits alone make. */
const swingText = (instruments: Instruments, context: PlanContext): PlanText[] => {
  const sensor = instruments.signal
  const digit = context.gauges.signal?.digit ?? sensor?.resolution ?? 0
  const swing = numbersOf('number', 'signal')
  if (!(digit > 0)) return []
  const least = digit / Math.sqrt(12) / MOST_RESIDUAL
  return [
    [
      'The swing must be ',
      roughly(swing(least)),
      ` or more where the fit begins: scatter of more than ${percent(MOST_RESIDUAL)} of it bars a pass, and digits alone make that below it. Ten times as much leaves the second half of the decay clear of them.`,
    ],
    ...outOfRange([least], sensor, swing),
  ]
}

/** What a record like the last one can decide about the damping, and how much finer it must be sampled where it cannot. */
const dampingText = (mode: Mode, context: PlanContext): PlanText[] => {
  const limit = limitOn(context, ['damping_ratio'])
  if (!limit || mode.noise === null) return []
  const U = 2 * mode.damping * dampingNoise(mode.noise, mode.damping, READINGS_A_TURN)
  const room = Math.abs(mode.damping - limit.value)
  const finer = (U / room) ** 2
  const ratio = numbersOf('number', 'damping_ratio')
  return [
    [
      `For “${limit.criterion}”: with the noise of ${mode.run}, U of the damping is about `,
      roughly(ratio(U)),
      ' at that rate; the room to the limit was ',
      roughly(ratio(room)),
      finer <= 1 ? '.' : `: sample ${plain(Math.ceil(finer))} times as fast, or swing further.`,
    ],
  ]
}

export const plan = (givens: Givens, instruments: Instruments, context: PlanContext): Plan => {
  const mode = modeOf(givens, context)
  return {
    steps: null,
    readings: {
      columns: [
        { title: 'record', kind: 'text' },
        { title: 'logger file', kind: 'text', of: 'time', written: true },
        { title: 'largest swing', kind: 'text', of: 'signal', written: true },
      ],
      rows: Array.from({ length: RECORDS }, (_, record) => [String(record + 1), null, null]),
    },
    text: [
      ...(mode
        ? recordText(mode, givens.numbers.settle ?? 0)
        : [
            [
              'How fast to sample and how long is not known: the card has no `band`, and no earlier run a frequency.',
            ] as const,
          ]),
      ...swingText(instruments, context),
      ...(mode ? dampingText(mode, context) : []),
      [
        `Release ${RECORDS} times, each a record and a run of its own: what differs between them is in none of them.`,
      ],
    ],
  }
}
