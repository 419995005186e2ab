/** What a rework would overtake: expected from what the cards say that they cover, by hand. */
import { describe, expect, it } from 'vitest'
import { type CampaignInput, computeCampaign } from '../../src/campaign/compute.ts'
import { afterRework } from '../../src/campaign/what-if.ts'
import { readRecords } from '../../src/format/records.ts'
import { loadMethods } from '../../src/methods/registry.ts'
import { prepareFormulas } from '../../src/quantity/formula/index.ts'
import { overtakesOf } from '../../src/views/overtakes.ts'
import { overtakesText } from '../../src/views/overtakes-text.ts'
import { closeNames, partNames, unknownName } from '../../src/views/part-names.ts'
import { BASE, card, meeting, rework, run } from '../campaign/small.ts'

const methods = await loadMethods()
await prepareFormulas()

type Files = Readonly<Record<string, string>>

const inputOf = (...parts: readonly Files[]): CampaignInput => {
  const files = Object.entries(Object.assign({}, BASE, ...parts) as Files)
  const { records, problems } = readRecords(
    files.map(([path, text]) => ({ path, text })),
    methods,
  )
  expect(problems).toEqual([])
  return { records, problems, methods, functions: {}, asOf: '2026-04-01', tool: 'test' }
}

const found = (part: string, ...parts: readonly Files[]) => {
  const input = inputOf(...parts)
  return overtakesOf(part, computeCampaign(input), afterRework(input, [part]))
}

const PULL = 'shared/cards/pull.md'
/** A second card, which covers the lug only and which a run of the first one overtakes. */
const lug = (more: Readonly<Record<string, string | undefined>> = {}): Files => ({
  'shared/cards/lug.md':
    card({ covers: '[lug]', 'overtaken-by': '[pull]', title: 'Look at the lug', ...more })[PULL] ?? '',
})
const lugRun = (day: string): Files => ({
  [`records/runs/${day.slice(0, 7)}/${day}-1000-lug.md`]:
    Object.values(run(day, 110, { card: 'lug', when: `${day}T10:00+01:00` }))[0] ?? '',
})
const ids = (all: readonly { readonly card: string }[]) => all.map((each) => each.card)

describe('a rework', () => {
  it('of a covered part overtakes the pass, and holds the gate again', () => {
    const { passes, others, without, gates } = found(
      'frame/hook',
      card({ covers: '[hook]' }),
      run('2026-03-08'),
    )
    expect(passes).toEqual([
      {
        card: 'pull',
        title: 'Pull on the hook',
        article: 'frame',
        status: 'pass',
        round: 1,
        runs: ['2026-03-08-0900-pull'],
        covers: ['frame/hook'],
        gates: ['fly'],
      },
    ])
    expect([others, without]).toEqual([[], []])
    expect(gates).toEqual([
      { gate: 'fly', title: 'Fly', before: 'clear', after: 'held', change: 'held again' },
    ])
  })
  it('of the whole article does so too; of another part it does not', () => {
    const files = [card({ covers: '[hook]' }), run('2026-03-08')]
    expect(ids(found('frame', ...files).passes)).toEqual(['pull'])
    const other = found('frame/lug', ...files)
    expect(other).toMatchObject({ passes: [], others: [], without: [], later: [], gates: [] })
    expect(overtakesText(other)).toContain('would overtake no pass.\nNo card covers frame/lug')
  })
  it('overtakes a released gate', () => {
    const { gates } = found('frame/hook', run('2026-03-08'), meeting('2026-03-10'))
    expect(gates).toEqual([
      { gate: 'fly', title: 'Fly', before: 'released', after: 'released, overtaken', change: 'overtaken' },
    ])
  })
  it('makes a fail worthless as well, which is no pass', () => {
    const { passes, others } = found('frame/hook', run('2026-03-08', 80))
    expect([ids(passes), ids(others)]).toEqual([[], ['pull']])
  })
  it('finds nothing to overtake where the card is not run, or due again already', () => {
    expect(ids(found('frame/hook').without)).toEqual(['pull'])
    const due = found('frame/hook', run('2026-03-08'), rework('2026-03-10'))
    expect([ids(due.passes), ids(due.without)]).toEqual([[], ['pull']])
  })
  it('takes only what stands: an older round is overtaken already', () => {
    const { passes } = found('frame/hook', run('2026-03-08'), rework('2026-03-10'), run('2026-03-12', 112))
    expect(passes.map(({ round, runs }) => [round, runs])).toEqual([[2, ['2026-03-12-0900-pull']]])
  })
  it('names what the next run of an overtaken card ends', () => {
    const files = [card({ covers: '[hook]' }), lug(), run('2026-03-08'), lugRun('2026-03-09')]
    const { passes, later } = found('frame/hook', ...files)
    expect(ids(passes)).toEqual(['pull'])
    expect(later.map((each) => [each.card, each.by])).toEqual([['lug', ['pull']]])
  })
  it('dated before a run that lies in the future still comes after it', () => {
    expect(ids(found('frame/hook', run('2027-03-08')).passes)).toEqual(['pull'])
  })
})

describe('names of parts', () => {
  const { records } = inputOf()
  it('are those of articles and of their parts', () => {
    expect(partNames(records)).toEqual(['frame', 'frame/hook', 'frame/lug'])
  })
  it('that are close are found, also by their last step', () => {
    expect(closeNames('frame/hok', partNames(records))).toContain('frame/hook')
    expect(closeNames('hok', partNames(records))).toEqual(['frame/hook'])
    expect(unknownName('part', 'wing', partNames(records))).toBe(
      'There is no part wing; there are: frame, frame/hook, frame/lug.',
    )
  })
})
