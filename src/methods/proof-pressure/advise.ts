/** What to look at, once judged: the station that softened, with what it gave, and between which pressures; what stayed where. */

import { tQuantile } from '../../quantity/distribution.ts'
import { effectiveDof, expanded, standardUncertainty } from '../../quantity/quantity.ts'
import { byStation, inMillimetres, inPercent, missedOn, rounded, roundedUp } from '../advice-text.ts'
import type { Advice, Columns, Givens, JudgedTerm, Measures } from '../method.ts'
import type { Channel, Choice } from './choice.ts'
import { movementOf, over, targetOf } from './readings.ts'
import { select } from './select.ts'
import { isSofter } from './softening.ts'
import { estimateStation } from './station.ts'
import { pascals } from './words.ts'

const stationWords = (suffix: string): string => `\`station_${suffix}\``

/** Where the steps of the second loading grew most surely, and by how much the skin went further. */
const softened = (columns: Columns, givens: Givens, choice: Choice, channel: Channel): Advice[] => {
  const { softening } = estimateStation(columns, givens, choice, channel)
  const { pairs, suffix } = channel
  if (!softening || !isSofter(softening, pairs.length, choice.channels.length)) return []
  const [low, high] = [pairs[softening.low], pairs[softening.high]]
  if (!low || !high) return []
  const pressure = columns.pressure?.values ?? new Float64Array()
  const movement = movementOf(columns, channel.name)
  const step = (rows: 'first' | 'second') => over(movement, high[rows]) - over(movement, low[rows])
  const [from, to] = [low, high].map(({ first }) => pascals(over(pressure, first)))
  const U = expanded({
    value: softening.ratio,
    dim: [0, 0, 0, 0, 0, 0],
    parts: {
      softening: { u: softening.u, dof: softening.dof, pool: 'softening', shape: 't' },
    },
    why: [],
  })?.U
  const more = `${inPercent(softening.ratio - 1)}${U === undefined ? '' : ` ± ${inPercent(U)}`}`
  return [
    {
      text: `${stationWords(suffix)} let go: from ${from} to ${to} it moved ${inMillimetres(Math.abs(step('second')))} in the second loading where it had moved ${inMillimetres(Math.abs(step('first')))} in the first, ${more} more. Look at what holds the skin there and around it (bonds, ribs, rivets, cracks; tap test), and at the foot of the dial. Do not load it again before that is settled.`,
      measures: [`softening_${suffix}`],
    },
  ]
}

const WHAT = {
  set: [
    'stays after the pressure is off',
    'a set that comes once may be seating, one that grows with each loading is yield',
  ],
  bulge: ['moves at the target', 'look at the panel and what it is held by'],
  second_bulge: ['moves at the target in the second loading', 'look at the panel and what it is held by'],
  creep: ['moves in the hold', 'a bond that creeps gives more the longer it is held'],
} as const

/** Which station a missed criterion speaks of, and whether the others are like it. */
const worst = (measures: Measures, judged: readonly JudgedTerm[], suffixes: readonly string[]): Advice[] =>
  (Object.keys(WHAT) as (keyof typeof WHAT)[]).flatMap((stem): Advice[] => {
    const [first, second] = byStation(measures, stem, suffixes)
    if (missedOn(judged, stem).length === 0 || !first || !second) return []
    const [what, then] = WHAT[stem]
    const alike =
      first.U !== null && first.value - second.value <= Math.hypot(first.U, second.U ?? 0)
        ? `${stationWords(second.station)} is like it within the uncertainty`
        : `the next is ${stationWords(second.station)} with ${inMillimetres(second.value)}`
    return [
      {
        text: `Of ${suffixes.length} stations ${stationWords(first.station)} ${what} most, ${inMillimetres(first.value)}; ${alike}: ${then}.`,
        measures: [`${stem}_${first.station}`],
      },
    ]
  })

/** What the gauge would have to show, where the target was not surely reached. */
const notReached = (measures: Measures, judged: readonly JudgedTerm[], givens: Givens): Advice[] => {
  const ratio = measures.peak_ratio
  const u = ratio ? standardUncertainty(ratio) : null
  const missed = [...missedOn(judged, 'peak_ratio'), ...missedOn(judged, 'sustained_peak')]
  if (!ratio || u === null || missed.length === 0) return []
  const needed = 1 + tQuantile(0.95, effectiveDof(ratio)) * u
  if (ratio.value >= needed) return []
  return [
    {
      text: `For the target to be surely reached with this gauge, every reading of the hold must be at ${roundedUp(needed * targetOf(givens))} Pa or beyond; the lowest was ${rounded(ratio.value * targetOf(givens), 4)} Pa.`,
      measures: ['peak_ratio'],
    },
  ]
}

export const advise = (
  measures: Measures,
  judged: readonly JudgedTerm[],
  givens: Givens,
  columns?: Columns,
): readonly Advice[] => {
  if (judged.every((term) => term.verdict === 'pass') && !columns) return []
  const choice = columns ? select(columns, givens) : null
  const channels = choice?.channels ?? []
  return [
    ...(columns && choice ? channels.flatMap((channel) => softened(columns, givens, choice, channel)) : []),
    ...worst(
      measures,
      judged,
      channels.map(({ suffix }) => suffix),
    ),
    ...notReached(measures, judged, givens),
  ]
}
