/** What a rework would overtake, for a terminal. */
import type { GateChange, OvertakenCard, Overtakes } from './overtakes.ts'
import { listWords, plural, statusWord } from './words.ts'

const named = ({ card, article }: OvertakenCard): string => `${card} on ${article}`

const lines = (cards: readonly OvertakenCard[]): string[] => {
  const rows = cards.map((each) => [
    named(each),
    `${statusWord(each.status)}, round ${each.round}`,
    each.runs.join(', '),
  ])
  const width = (column: number): number => Math.max(0, ...rows.map((row) => row[column]?.length ?? 0))
  const widths = [width(0), width(1), 0]
  return rows.map((row) => `  ${row.map((cell, at) => cell.padEnd(widths[at] ?? 0)).join('  ')}`.trimEnd())
}

const gateLine = ({ title, before, after, change }: GateChange): string =>
  change === 'held by more'
    ? `  ${title}: held, and then by this as well`
    : `  ${title}: ${before} → ${after}`

const section = (head: string, body: readonly string[], foot: readonly string[] = []): string[] =>
  body.length === 0 ? [] : ['', head, ...body, ...foot]

export const overtakesText = (found: Overtakes): string => {
  const { part, passes, others, without, later, gates } = found
  const first =
    passes.length > 0
      ? `A rework of ${part} would overtake ${plural(passes.length, 'pass', 'passes')}.`
      : `A rework of ${part} would overtake no pass.`
  const nothing = passes.length + others.length + without.length === 0
  return [
    first,
    ...(nothing ? [`No card covers ${part}, nor a part of it, nor what it is a part of.`] : []),
    ...section('Passes that would be due again', lines(passes), [
      '  Where one cannot be touched by the rework, its record may say so:',
      `  unaffected: [{card: ${passes[0]?.card}, why: …, agreed: …}]`,
    ]),
    ...section('Results without a pass that would no longer count', lines(others)),
    ...section('Nothing to overtake: not run, or due again already', lines(without)),
    ...section(
      'Would stand until the card behind them is run again',
      later.map((each) => `  ${named(each)}: ended by the next run of ${listWords(each.by)}`),
    ),
    ...section('Gates', gates.map(gateLine)),
    '',
  ].join('\n')
}
