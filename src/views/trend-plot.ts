/** A measure over the rounds of one card and article, as a plot and its sentences. */
import type { Trend } from '../campaign/types.ts'
import { toUnit, toUnitDifference } from '../quantity/convert.ts'
import { expanded } from '../quantity/quantity.ts'
import { differenceUnit, resultText, unitText } from './show.ts'
import type { Site } from './site.ts'
import { asRunSteps, limitLabel } from './trend-limits.ts'
import type { Plot, Rich, StampStyle } from './view.ts'
import { dateWords, historyMarks, listWords, nameWords } from './words.ts'

const gainSentence = (gain: Trend['gains'][number], trend: Trend): string => {
  const by = resultText(gain.gain, differenceUnit(trend.unit))
  const sign = gain.gain.value > 0 ? '+' : ''
  const weight =
    gain.significant === null
      ? 'its uncertainty is not known'
      : gain.significant
        ? 'more than the uncertainty'
        : 'not more than the uncertainty'
  return `Round ${gain.from} to ${gain.to}: ${sign}${by}, ${weight}.`
}

export const gainWords = (trend: Trend): Rich[] => trend.gains.map((gain) => [gainSentence(gain, trend)])

/** Void runs are not in a trend; the style of each point is its run's verdict. */
const styleOf = (verdict: Trend['points'][number]['verdict']): StampStyle => verdict ?? 'plain'

const marksOfRun = (id: string, site: Site): string[] => {
  const run = site.run(id)
  return run ? historyMarks(run).map(({ word }) => word) : []
}

const verdictWords = (point: Trend['points'][number], site: Site): Rich => [
  [point.verdict ?? 'void', ...marksOfRun(point.run, site)].join(', '),
]

/** `Hollow: the run of 4 March 2026 (proposed).` */
const apartWords = (apart: Trend['points'], site: Site): string[] => {
  const said = apart.map((point) => `${dateWords(point.when)} (${marksOfRun(point.run, site).join(', ')})`)
  return said.length > 0
    ? [`Hollow: ${said.length === 1 ? 'the run' : 'the runs'} of ${listWords(said)}.`]
    : []
}

/** A place for each point, and one more for a round that a rework has begun and that has no run yet. */
const placesOf = (trend: Trend, rounds: readonly number[]): Plot['places'] => {
  const run = rounds.map((round, index) => ({
    at: index + 1,
    label: rounds[index - 1] === round ? '' : `round ${round}`,
  }))
  const newest = Math.max(...trend.reworks.map((rework) => rework.beforeRound), 0)
  const empty =
    newest > Math.max(...rounds) ? [{ at: rounds.length + 1, label: `round ${newest}: not run` }] : []
  return [...run, ...empty]
}

/** `rework 23 March`; where several lie between the same two points, how many. */
const marksOf = (trend: Trend, rounds: readonly number[]): Plot['marks'] => {
  const at = (rework: Trend['reworks'][number]): number =>
    rounds.filter((round) => round < rework.beforeRound).length + 0.5
  return [...new Set(trend.reworks.map(at))].map((place) => {
    const [first, ...others] = trend.reworks.filter((rework) => at(rework) === place)
    const day = dateWords(first?.when ?? '').replace(/ \d{4}$/, '')
    return { at: place, label: others.length > 0 ? `${others.length + 1} reworks` : `rework ${day}` }
  })
}

/** A rework stands half way between the last point before it and the first after. */
export const trendPlot = (trend: Trend, site: Site, titled: 'measure' | 'in full' = 'measure'): Plot => {
  const { unit } = trend
  const card = site.campaign.records.cards[trend.card]?.title ?? trend.card
  const measure = nameWords(trend.measure)
  const rounds = trend.points.map((point) => point.round)
  const places = placesOf(trend, rounds)
  const marks = marksOf(trend, rounds)
  const rows = trend.points.map((point) => ({
    cells: [
      [String(point.round)],
      [dateWords(point.when)],
      [site.link(point.run)],
      [resultText(point.value, unit)],
      verdictWords(point, site),
    ] satisfies Rich[],
  }))
  const steps = asRunSteps(trend)
  const apart = trend.points.filter((point) => marksOfRun(point.run, site).length > 0)
  const y =
    unit.text === '1' ? nameWords(trend.measure) : `${nameWords(trend.measure)}, ${unitText(unit.text)}`
  const points = trend.points.map((point, index): readonly [number, number, number | null] => {
    const wide = expanded(point.value)
    return [index + 1, toUnit(point.value.value, unit), wide && toUnitDifference(wide.U, unit)]
  })
  const said = trend.points.map(
    (point) => `round ${point.round} ${resultText(point.value, unit)} ${verdictWords(point, site).join('')}`,
  )
  return {
    kind: 'trend',
    id: `trend-${trend.card}-${trend.article.replaceAll('/', '-')}-${trend.measure}`,
    title:
      titled === 'in full'
        ? `${card} on ${trend.article}: ${measure}`
        : `${measure[0]?.toUpperCase() ?? ''}${measure.slice(1)}`,
    caption: [
      [
        trend.gains.map((gain) => gainSentence(gain, trend)).join(' ') || 'Bars are ± U, expanded for 95 %.',
        ...steps.words,
        ...apartWords(apart, site),
      ].join(' '),
    ],
    alt: [
      `${y} by round: ${said.join('; ')}.`,
      ...trend.limits.map((limit) => `Limit: ${limit.text}.`),
      ...steps.words,
    ].join(' '),
    x: '',
    y,
    series: [
      {
        name: nameWords(trend.measure),
        mark: 'points',
        muted: false,
        points,
        styles: trend.points.map((point) => styleOf(point.verdict)),
        ...(apart.length > 0 ? { hollow: trend.points.map((point) => apart.includes(point)) } : {}),
      },
      ...steps.series,
    ],
    limits: trend.limits.map((limit) => ({
      axis: 'y',
      at: toUnit(limit.value, unit),
      label: limitLabel(limit, unit, steps.series.length > 0),
      refused: limit.side,
    })),
    bands: [],
    places,
    marks,
    table: {
      caption: `Values of ${nameWords(trend.measure)} by round`,
      columns: [
        { text: 'round' },
        { text: 'date' },
        { text: 'run' },
        { text: 'result', numeric: true },
        { text: 'verdict' },
      ],
      rows,
      narrow: 'scroll',
    },
  }
}
