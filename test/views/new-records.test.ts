/**
 * Whatever `new` writes is read back by the format: only what is marked `…` is complained about, and with that filled
 * in nothing is. Over every card and article of the demonstration, by the reader that `check` uses.
 */
import { beforeAll, describe, expect, it } from 'vitest'
import { computeCampaign } from '../../src/campaign/compute.ts'
import { type Opened, openCampaign } from '../../src/campaign/node/open.ts'
import type { Campaign, CardState } from '../../src/campaign/types.ts'
import { afterRework } from '../../src/campaign/what-if.ts'
import { readRecords } from '../../src/format/records.ts'
import { freeName, slug } from '../../src/views/new-front.ts'
import { ITEM_KINDS, newItemText } from '../../src/views/new-item.ts'
import { newReadinessText } from '../../src/views/new-readiness.ts'
import { newReworkText } from '../../src/views/new-rework.ts'
import { newRunText } from '../../src/views/new-run.ts'
import { overtakesOf } from '../../src/views/overtakes.ts'

const WHEN = '2026-04-19T10:10+02:00'

let demo: Opened
/** The demonstration after a rework of two parts. */
let after: Campaign
const changes = ['controls/elevator/bellcrank-bracket', 'wing-left/tank']
beforeAll(async () => {
  demo = await openCampaign('.', 'test', '2026-04-20', { history: false })
  after = afterRework(demo.input, changes)
}, 60_000)

/** More files among those of the demonstration. */
const readWith = (more: Readonly<Record<string, string>>) => {
  const texts = new Map([...(demo.input.texts ?? []), ...Object.entries(more)])
  const { records, problems } = readRecords(
    [...texts].map(([path, text]) => ({ path, text })),
    demo.input.methods,
  )
  return { records, problems: problems.filter(({ at }) => Object.hasOwn(more, at.file)) }
}

/** Problems of these files, with the code and what is said, each once. */
const saidOf = (more: Readonly<Record<string, string>>): string[] =>
  [...new Set(readWith(more).problems.map(({ code, message }) => `${code} ${message}`))].sort()

const lastRun = (state: CardState) =>
  demo.campaign.runs.findLast((run) => run.card.id === state.id && run.article === state.article)

const askedText = (state: CardState, name: string): string => {
  const { card, article } = state
  const given = card.articles[article]?.[name] ?? card.given[name] ?? lastRun(state)?.record.given[name]
  return given?.form === 'quantity' ? given.stated.text : given?.form === 'word' ? given.word : '1'
}

/** As a technician would, with the readings of the last run of that card. */
const filledIn = (text: string, state: CardState): string => {
  const readings = /^readings: \|\n(?: {2}.*\n)+/m.exec(lastRun(state)?.record.source.text ?? '')?.[0]
  const known = text
    .replace('witness: …', 'witness: ktamm')
    .replace('temperature: … °C', 'temperature: 12 °C')
  const asked = state.card.ask.reduce(
    (filled, name) => filled.replace(`${name}: …`, `${name}: ${askedText(state, name)}`),
    known,
  )
  // Where no gauge is in calibration it is left open: then the one that was used before it ended.
  const used = Object.entries(lastRun(state)?.record.instruments ?? {})
  const equipped = used.reduce((all, [column, id]) => all.replace(`${column}: …`, `${column}: ${id}`), asked)
  return readings ? equipped.replace(/^readings: \|\n(?: {2}.*\n)+/m, readings) : equipped
}

describe('a new run', () => {
  it('of every card and article: only what is open is refused, and filled in it is without a remark', () => {
    expect(demo.campaign.cards.length).toBeGreaterThan(25)
    const drafts = demo.campaign.cards.map((state, index) => {
      const clock = `${10 + Math.floor(index / 60)}:${String(index % 60).padStart(2, '0')}`
      const when = `2026-04-19T${clock}+02:00`
      const path = `records/runs/2026-04/2026-04-19-${clock.replace(':', '')}-new.md`
      const draft = { campaign: demo.campaign, state, when, by: 'mlindqvist', revision: '0123456789abcdef' }
      return { path, state, text: newRunText(draft) }
    })
    const open = readWith(Object.fromEntries(drafts.map(({ path, text }) => [path, text]))).problems
    expect(new Set(open.map(({ code }) => code))).toEqual(new Set(['field/not-filled']))
    expect(new Set(open.map(({ at }) => at.file)).size).toBe(drafts.length)
    const filled = drafts.flatMap(({ path, text, state }) =>
      lastRun(state)?.record.readings.file === undefined && lastRun(state)
        ? [[path, filledIn(text, state)] as const]
        : [],
    )
    expect(filled.length).toBeGreaterThan(25)
    expect(saidOf(Object.fromEntries(filled))).toEqual([])
    for (const [, text] of filled) expect(text).toContain('card-revision: 0123456789ab\n')
  }, 60_000)
  const stateOf = (card: string): CardState => {
    const state = demo.campaign.cards.find(({ id }) => id === card)
    if (!state) throw new Error(card)
    return state
  }
  const textOf = (card: string, when = WHEN): string =>
    newRunText({ campaign: demo.campaign, state: stateOf(card), when, by: null, revision: null })
  it('takes over the newest result that stands, where earlier runs took one', () => {
    expect(textOf('elevator-gust-load')).toContain(
      'given: {circuit_stiffness: {from: 2026-03-30-1405-elevator-stiffness, measure: surface_stiffness}}',
    )
    // The run of that card on 27 March was the newest on the morning of the 28th.
    expect(textOf('elevator-gust-load', '2026-03-28T09:00+01:00')).toContain(
      '2026-03-27-1020-elevator-stiffness',
    )
  })
  it('leaves it open, and says why, where none stands', () => {
    const state = after.cards.find(({ id }) => id === 'elevator-gust-load')
    if (!state) throw new Error('no card')
    const text = newRunText({ campaign: after, state, when: WHEN, by: null, revision: null })
    expect(text).toContain('given: {circuit_stiffness: …}')
    expect(text).toContain('# circuit_stiffness: no run of elevator-stiffness on controls/elevator stands')
  })
  it('offers what is in calibration and as good as the card asks, the usual one first', () => {
    const text = textOf('elevator-gust-load')
    expect(text).toContain('instruments: {load: lc-01, deflection: dg-01}')
    expect(text).toContain('# load: fg-02 would do as well')
    const late = textOf('elevator-gust-load', '2031-01-01T09:00+01:00')
    expect(late).toContain('instruments: {load: …, deflection: …}')
    expect(late).toMatch(
      /# load: none is in calibration and as good as the card asks: .*fg-03 \(calibration ended on 2026-/,
    )
  })
  it('leaves open who, where nobody knows', () => {
    expect(textOf('elevator-gust-load')).toContain('by: […]')
    expect(textOf('elevator-gust-load')).not.toContain('card-revision')
  })
})

describe('a new rework', () => {
  const text = (title: string): string => {
    const overtakes = changes.map((part) => overtakesOf(part, demo.campaign, after))
    return newReworkText({
      campaign: demo.campaign,
      title,
      when: WHEN,
      by: 'dreyes',
      changes,
      because: [],
      overtakes,
    })
  }
  it('is refused only for who inspected it, whatever its title', () => {
    const titles = ['Plain', 'Colon: in it', '"quoted" # and more', '- dash', '@at & <b>', "it's [1]"]
    const paths = titles.map((_, index) => `records/rework/2026-04-19-101${index}-x.md`)
    const written = Object.fromEntries(titles.map((title, index) => [paths[index] ?? '', text(title)]))
    expect(saidOf(written)).toEqual(['field/not-filled `inspected-by` is not filled in yet'])
    const filled = Object.fromEntries(
      Object.entries(written).map(([path, said]) => [
        path,
        said.replace('inspected-by: …', 'inspected-by: ktamm'),
      ]),
    )
    const { records, problems } = readWith(filled)
    expect(problems).toEqual([])
    for (const [index, title] of titles.entries())
      expect(records.reworks[`2026-04-19-101${index}-x`]).toMatchObject({
        title,
        changes,
        inspectedBy: 'ktamm',
      })
  })
  it('says what it overtakes and offers the statement against it', () => {
    expect(text('x')).toMatch(/# It overtakes: .*elevator-stiffness on controls\/elevator \(pass\)/)
    expect(text('x')).toContain('# unaffected: [{card: elevator-gust-load, why: …, agreed: …}]')
    expect(text('x')).toContain('# serials: {wing-left/tank: {out: T7-TK-01, in: …}}')
  })
})

describe('a new item', () => {
  const path = 'records/items/new-item.md'
  const failing = '2026-02-09-1020-hull-bay-leak-bay-2'
  it.each(ITEM_KINDS)('%s is refused only for what is open', (kind) => {
    const draft = { campaign: demo.campaign, title: 'Seam: weeps', kind, when: WHEN, by: 'cokafor' }
    const open = saidOf({ [path]: newItemText({ ...draft, about: [] }) })
    expect(open.length).toBeGreaterThan(0)
    for (const said of open) expect(said).toMatch(/^field\/not-filled/)
    const text = newItemText({ ...draft, about: [failing] })
    expect(saidOf({ [path]: text.replace('agreed: …', 'agreed: yaoki') })).toEqual([])
    expect(text).toContain('gates: [first-water]')
    if (kind === 'concession')
      expect(text).toContain(`criterion: leak\nrun: ${failing}\n# may concede: yaoki`)
  })
})

describe('new minutes of a readiness meeting', () => {
  const textOf = (gate: string): string => {
    const record = demo.campaign.records.gates[gate]
    if (!record) throw new Error(gate)
    const commit = '0123456789abcdef'
    return newReadinessText({
      campaign: demo.campaign,
      gate: record,
      when: WHEN,
      by: 'yaoki',
      commit,
      why: null,
    })
  }
  const filled = (gate: string): string =>
    textOf(gate).replace(', …]', ', ktamm]').replace('decision: …', 'decision: no-go')
  const pathOf = (gate: string): string => `records/readiness/2026-04-19-1010-${gate}.md`
  const idOf = (gate: string): string => `2026-04-19-1010-${gate}`
  it('hold for every gate a basis that is the same when it is computed again', () => {
    const gates = Object.keys(demo.campaign.records.gates)
    const open = saidOf(Object.fromEntries(gates.map((gate) => [pathOf(gate), textOf(gate)])))
    expect(open).toEqual([
      'field/not-filled `decision` is not filled in yet',
      'field/not-filled `present` is not filled in yet',
    ])
    const { records, problems } = readWith(
      Object.fromEntries(gates.map((gate) => [pathOf(gate), filled(gate)])),
    )
    expect(problems).toEqual([])
    const campaign = computeCampaign({ ...demo.input, records, problems: [] })
    for (const gate of gates) {
      const about = campaign.items.filter((item) => item.about.includes(idOf(gate)))
      expect(about.map(({ title }) => title)).toEqual([])
      const basis = records.readiness[idOf(gate)]?.basis ?? []
      expect(basis.length, gate).toBeGreaterThan(1)
      for (const { commit, tool } of basis) expect([commit, tool]).toEqual(['0123456789ab', 'test'])
    }
  }, 60_000)
  it('say of a run that differs later', () => {
    const text = filled('first-water').replace('value: 11.2 cm^3/min', 'value: 11.4 cm^3/min')
    expect(text).not.toBe(filled('first-water'))
    const { records } = readWith({ [pathOf('first-water')]: text })
    const campaign = computeCampaign({ ...demo.input, records, problems: [] })
    expect(
      campaign.items.filter(
        (item) => item.kind === 'basis-differs' && item.about.includes(idOf('first-water')),
      ),
    ).toHaveLength(1)
  })
})

describe('names', () => {
  it('follow from titles', () => {
    expect(slug('Élevator: bracket, 2nd')).toBe('elevator-bracket-2nd')
    expect(slug('Ærø – 東京')).toBe('r')
    expect(slug('東京')).toBe('')
    expect(slug('a '.repeat(100)).length).toBeLessThanOrEqual(48)
    expect(slug('x'.repeat(100))).toBe('x'.repeat(48))
  })
  it('that are taken get a number', () => {
    expect(freeName('a', new Set(['a', 'a-2']))).toBe('a-3')
    expect(freeName('b', new Set(['a']))).toBe('b')
  })
})
