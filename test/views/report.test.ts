/** The reports for a binder: complete, true to the Campaign, and with room to sign. */
import { beforeAll, describe, expect, it } from 'vitest'
import type { Campaign } from '../../src/campaign/types.ts'
import { allViews } from '../../src/views/all.ts'
import type { Block, Table, View } from '../../src/views/view.ts'
import { demo } from './campaign.ts'

let campaign: Campaign
let views: View[]
beforeAll(async () => {
  ;({ campaign, views } = await demo())
}, 60_000)

const pageOf = (path: string): View => {
  const view = views.find((each) => each.path === path)
  if (!view) throw new Error(`no page ${path}`)
  return view
}

const textsOf = (value: unknown): string[] => {
  if (typeof value === 'string') return [value]
  return typeof value === 'object' && value !== null ? Object.values(value).flatMap(textsOf) : []
}
const wordsOf = (value: unknown): string => textsOf(value).join(' ')

const flat = (blocks: readonly Block[]): Block[] =>
  blocks.flatMap((block) => (block.is === 'section' ? [block, ...flat(block.blocks)] : [block]))

const sectionOf = (view: View, id: string): readonly Block[] => {
  const found = view.data.blocks.find((block) => block.is === 'section' && block.id === id)
  return found?.is === 'section' ? found.blocks : []
}

const tablesIn = (blocks: readonly Block[]): Table[] =>
  flat(blocks).flatMap((block) => (block.is === 'table' ? [block.table] : []))

describe('reports', () => {
  it('are there for every run and gate, void and stopped runs too, and linked from their pages', () => {
    const wanted = [
      ...campaign.runs.map((run) => `runs/${run.id}/`),
      ...campaign.gates.map((gate) => `gates/${gate.id}/`),
    ]
    for (const path of wanted) {
      expect(pageOf(`${path}report/`).kind).toBe('report')
      expect(textsOf(pageOf(path).data.blocks), path).toContain(`${path}report/`)
    }
    expect(views.filter((view) => view.kind === 'report')).toHaveLength(wanted.length)
  })

  it('end with signatures and with what they are not', () => {
    for (const view of views.filter((each) => each.kind === 'report')) {
      expect(view.data.blocks.slice(-2).map((block) => (block.is === 'section' ? block.id : ''))).toEqual([
        'signatures',
        'standing',
      ])
      expect(wordsOf(sectionOf(view, 'standing'))).toMatch(
        /version test .*no approval.*licensed persons prevail/,
      )
    }
  })

  it('change with the version that computed them', () => {
    const later = new Map(
      allViews({ ...campaign, tool: 'another' }).map((view) => [view.path, view.key] as const),
    )
    for (const view of views.filter((each) => each.kind === 'report'))
      expect(later.get(view.path)).not.toBe(view.key)
  })
})

describe('the report of a run', () => {
  it('names each instrument with serial, certificate and due date, as the files have them', () => {
    for (const run of campaign.runs) {
      const [table] = tablesIn(sectionOf(pageOf(`runs/${run.id}/report/`), 'instruments'))
      expect(table?.rows.length ?? 0, run.id).toBe(run.instruments.length)
      run.instruments.forEach((use, at) => {
        const row = table?.rows[at]?.cells.map(wordsOf) ?? []
        const { certificate } = use.instrument.calibrations.find(({ on }) => on === use.calibration) ?? {}
        expect(row[2]).toBe(use.instrument.serial)
        expect(row[5]).toBe(certificate ?? '')
        expect(row.at(-1) === 'in force').toBe(use.inForce)
      })
    }
  })

  it('holds the card, every criterion with its reason, and every reading as it was written', () => {
    for (const run of campaign.runs) {
      const report = pageOf(`runs/${run.id}/report/`)
      expect(wordsOf(sectionOf(report, 'card'))).toContain(run.card.title)
      const rows = flat(report.data.blocks).flatMap((block) => (block.is === 'criteria' ? block.rows : []))
      expect(rows.map((row) => [row.id, row.why])).toEqual(
        run.judgements.map((judgement) => [judgement.criterion, judgement.why.trim()]),
      )
      const readings = tablesIn(sectionOf(report, 'readings'))[0]
      expect(readings?.rows).toHaveLength(Math.min(240, run.record.readings.rows))
      run.record.readings.columns.forEach((column, at) => {
        expect(wordsOf(readings?.rows.at(-1)?.cells[at + 1])).toBe(
          column.cells[(readings?.rows.length ?? 0) - 1] ?? '',
        )
      })
    }
  })

  it('lets everybody sign whom the record names', () => {
    for (const run of campaign.runs) {
      const names = [...run.record.by, ...(run.record.witness ? [run.record.witness] : [])].map(
        (id) => campaign.records.people[id]?.name ?? id,
      )
      const signed = wordsOf(sectionOf(pageOf(`runs/${run.id}/report/`), 'signatures'))
      for (const name of names) expect(signed).toContain(name)
    }
  })

  it('tells deviations, amendments and withdrawal', () => {
    const deviating = campaign.runs.filter((run) => run.record.deviations.length > 0)
    expect(deviating.length).toBeGreaterThan(0)
    for (const run of deviating) {
      const said = wordsOf(sectionOf(pageOf(`runs/${run.id}/report/`), 'deviations'))
      for (const { what, why } of run.record.deviations) expect(said).toContain(`${what} ${why}`)
    }
    const withdrawn = campaign.runs.filter((run) => run.record.void)
    expect(withdrawn.length).toBeGreaterThan(0)
    for (const run of withdrawn)
      expect(wordsOf(pageOf(`runs/${run.id}/report/`).data)).toContain(run.record.void?.why)
  })
})

describe('the report of a gate', () => {
  it('has every run of the newest round of each of its cards, void ones too, with serial and day', () => {
    for (const gate of campaign.gates) {
      const [table] = tablesIn(sectionOf(pageOf(`gates/${gate.id}/report/`), 'cards'))
      const rows = table?.rows.map((row) => row.cells.map(wordsOf)) ?? []
      const states = campaign.cards.filter((state) =>
        gate.cards.some((each) => each.card === state.id && each.article === state.article),
      )
      expect(states.length).toBe(gate.cards.length)
      const wanted = states.map((state) => Math.max(1, state.rounds.at(-1)?.runs.length ?? 0))
      expect(rows.length).toBe(wanted.reduce((sum, count) => sum + count, 0))
      for (const state of states) {
        const serial = campaign.records.articles[state.article]?.serial
        for (const id of state.rounds.at(-1)?.runs ?? []) {
          const row = rows.find((cells) => cells[2]?.includes(id) && cells[0]?.includes(state.card.title))
          expect(row?.[0], id).toContain(serial ?? '')
          expect(row?.[1]).toContain(state.status.replace('-', ' '))
          expect(row?.[3]).toMatch(/^tested \d+ [A-Z][a-z]+ 20\d\d /)
        }
      }
    }
  })

  it('has every verdict of the newest round', () => {
    for (const gate of campaign.gates) {
      const [table] = tablesIn(sectionOf(pageOf(`gates/${gate.id}/report/`), 'verdicts'))
      const shown = table?.rows.map((row) => wordsOf(row.cells.at(-1))) ?? []
      const terms = campaign.cards
        .filter((state) =>
          gate.cards.some((each) => each.card === state.id && each.article === state.article),
        )
        .flatMap((state) => state.rounds.at(-1)?.judgements ?? [])
        .flatMap((judgement) =>
          judgement.terms.length > 0 ? judgement.terms.map((term) => term.verdict) : [judgement.verdict],
        )
      expect(shown.map((words) => words.split(' ')[1])).toEqual(terms)
    }
  })

  it('has every open item that holds it, and every meeting on it', () => {
    for (const gate of campaign.gates) {
      const report = pageOf(`gates/${gate.id}/report/`)
      const items = campaign.items.filter((item) => item.gates.includes(gate.id))
      expect(tablesIn(sectionOf(report, 'items'))[0]?.rows.length ?? 0).toBe(items.length)
      const meetings = Object.values(campaign.records.readiness).filter((each) => each.gate === gate.id)
      const said = textsOf(sectionOf(report, 'meetings'))
      for (const meeting of meetings) expect(said).toContain(`readiness/${meeting.id}/`)
      expect(tablesIn(sectionOf(report, 'meetings'))).toHaveLength(
        meetings.filter((meeting) => meeting.basis.length > 0).length,
      )
    }
  })

  it('has every concession on its results', () => {
    const conceded = Object.values(campaign.records.items).filter((item) => item.concession)
    expect(conceded.length).toBeGreaterThan(0)
    for (const item of conceded) {
      const run = campaign.runs.find((each) => each.id === item.concession?.run)
      const own = campaign.gates.filter((gate) =>
        gate.cards.some((each) => each.card === run?.card.id && each.article === run?.article),
      )
      for (const gate of own)
        expect(textsOf(sectionOf(pageOf(`gates/${gate.id}/report/`), 'concessions'))).toContain(item.title)
    }
  })
})
