/** Views of the demonstration campaign: complete, plain, stable, and true to the Campaign. */
import { beforeAll, describe, expect, it } from 'vitest'
import type { Campaign } from '../../src/campaign/types.ts'
import { allViews } from '../../src/views/all.ts'
import type { Handbook } from '../../src/views/handbook.ts'
import type { Block, View } from '../../src/views/view.ts'
import { demo } from './campaign.ts'

let campaign: Campaign
let handbook: Handbook
let views: View[]

beforeAll(async () => {
  ;({ campaign, handbook, views } = await demo())
}, 60_000)

/** Every text in a view, with the path of its page. */
const textsOf = (value: unknown, found: string[] = []): string[] => {
  if (typeof value === 'string') found.push(value)
  else if (typeof value === 'object' && value !== null)
    for (const each of Object.values(value)) textsOf(each, found)
  return found
}

/** Every value in a view that JSON cannot carry. */
const unfit = (value: unknown, path: string): string[] => {
  if (value === null || typeof value === 'string' || typeof value === 'boolean') return []
  if (typeof value === 'number') return Number.isFinite(value) ? [] : [`${path}: ${value}`]
  if (Array.isArray(value)) return value.flatMap((each, index) => unfit(each, `${path}[${index}]`))
  if (typeof value === 'object' && Object.getPrototypeOf(value) === Object.prototype) {
    return Object.entries(value).flatMap(([name, each]) => unfit(each, `${path}.${name}`))
  }
  return [`${path}: ${typeof value}`]
}

const blocksOf = (blocks: readonly Block[]): Block[] =>
  blocks.flatMap((block) => (block.is === 'section' ? [block, ...blocksOf(block.blocks)] : [block]))

const pageOf = (path: string): View => {
  const view = views.find((each) => each.path === path)
  if (!view) throw new Error(`no page ${path}`)
  return view
}

describe('all views', () => {
  it('are plain JSON: nothing undefined, no NaN, no infinity, no function', () => {
    expect(views.flatMap((view) => unfit(view, view.path))).toEqual([])
  })

  it('hold no unfinished text', () => {
    const bad = views.flatMap((view) =>
      textsOf(view.data)
        .filter((text) => !(view.kind === 'units' && text.endsWith('A²)')))
        .filter((text) =>
          /undefined|\bNaN\b|\[object |\bInfinity\b|m²·kg|m^2·kg|kg·m²\/s|not a number/.test(text),
        )
        .map((text) => `${view.path}: ${text.slice(0, 80)}`),
    )
    expect(bad).toEqual([])
  })

  it('have addresses of their own', () => {
    const paths = views.map((view) => view.path)
    expect(new Set(paths).size).toBe(paths.length)
    expect(paths.filter((path) => path !== '' && !path.endsWith('/'))).toEqual([])
  })

  it('give every record exactly one page, void and stopped runs too', () => {
    const { records } = campaign
    const wanted = [
      ...Object.keys(records.runs).map((id) => `runs/${id}/`),
      ...Object.keys(records.cards).map((id) => `cards/${id}/`),
      ...Object.keys(records.articles).map((id) => `articles/${id}/`),
      ...Object.keys(records.instruments).map((id) => `instruments/${id}/`),
      ...Object.keys(records.reworks).map((id) => `rework/${id}/`),
      ...Object.keys(records.readiness).map((id) => `readiness/${id}/`),
      ...Object.keys(records.items).map((id) => `items/${id}/`),
      ...Object.keys(records.gates).map((id) => `gates/${id}/`),
    ]
    const paths = new Set(views.map((view) => view.path))
    expect(wanted.filter((path) => !paths.has(path))).toEqual([])
    expect(Object.values(records.runs).some((run) => run.void)).toBe(true)
    expect(Object.values(records.runs).some((run) => run.stopped)).toBe(true)
  })

  it('lead only to pages and places that exist', () => {
    const paths = new Set(views.map((view) => view.path))
    const links = (value: unknown): string[] => {
      if (typeof value !== 'object' || value === null) return []
      const own =
        'is' in value && value.is === 'link' && 'to' in value && typeof value.to === 'string'
          ? [value.to]
          : []
      return [...own, ...Object.values(value).flatMap(links)]
    }
    const broken = views.flatMap((view) =>
      links(view.data.blocks)
        .filter((to) => !to.startsWith('#') && !to.startsWith('files/') && !/^https?:/.test(to))
        .filter((to) => !paths.has(to.replace(/#.*$/, '')))
        .map((to) => `${view.path} → ${to}`),
    )
    expect(broken).toEqual([])
  })

  it('have the same keys whenever they are made from the same Campaign', () => {
    expect(allViews(campaign, handbook).map((view) => view.key)).toEqual(views.map((view) => view.key))
  })

  it('of a run do not hang on the day or the version of the build', () => {
    const later = allViews({ ...campaign, asOf: '2027-01-01', tool: 'another' }, handbook)
    const keys = new Map(later.map((view) => [view.path, view.key]))
    const moved = views
      .filter((view) => view.kind === 'run' && keys.get(view.path) !== view.key)
      .map((view) => view.path)
    expect(moved).toEqual([])
    expect(keys.get('')).not.toBe(pageOf('').key)
  })
})

describe('the page of a run', () => {
  it('begins with the title block and the strip of changes, there even when nothing changed', () => {
    for (const view of views.filter((each) => each.kind === 'run')) {
      expect(view.data.blocks.slice(0, 2).map((block) => block.is)).toEqual(['title-block', 'strip'])
    }
  })

  it('shows each criterion of the run, in order, with the verdict of the Campaign', () => {
    for (const run of campaign.runs) {
      const shown = blocksOf(pageOf(`runs/${run.id}/`).data.blocks).flatMap((block) =>
        block.is === 'criteria' ? block.rows : [],
      )
      expect(shown.map((row) => row.id)).toEqual(run.judgements.map((judgement) => judgement.criterion))
      expect(
        shown.map((row) => (typeof row.stamp === 'object' && row.stamp.is === 'stamp' ? row.stamp.word : '')),
      ).toEqual(run.judgements.map((judgement) => judgement.verdict))
    }
  })

  it('draws a result inside its limits exactly where the value conforms', () => {
    for (const run of campaign.runs) {
      for (const row of blocksOf(pageOf(`runs/${run.id}/`).data.blocks).flatMap((block) =>
        block.is === 'criteria' ? block.rows : [],
      )) {
        const terms = run.judgements.find((judgement) => judgement.criterion === row.id)?.terms ?? []
        row.terms.forEach((term, index) => {
          const { against } = term
          if (!against) return
          const [first = 0, second = first] = against.limits
          const inside = {
            below: against.value <= first,
            above: against.value >= first,
            between: against.value >= first && against.value <= second,
          }
          const margin = terms[index]?.margin.value ?? 0
          // The margin of the judge and the drawing must agree on the side; on the limit itself both may say either.
          if (Math.abs(margin) > 1e-12) expect(inside[against.direction]).toBe(margin > 0)
        })
      }
    }
  })

  it('keeps the digits of the readings as they were written', () => {
    for (const run of campaign.runs) {
      const tables = blocksOf(pageOf(`runs/${run.id}/`).data.blocks).flatMap((block) =>
        block.is === 'table' ? [block.table] : [],
      )
      const readings = tables.find((table) => table.caption === 'Readings')
      const first = readings?.rows[0]?.cells.slice(1).map((cell) => cell.join(''))
      expect(first).toEqual(run.record.readings.columns.map((column) => column.cells[0] ?? ''))
    }
  })

  it('has budgets whose shares make up the whole', () => {
    for (const view of views.filter((each) => each.kind === 'run')) {
      for (const block of blocksOf(view.data.blocks)) {
        if (block.is !== 'budgets') continue
        for (const budget of block.budgets.filter((each) => each.rows.length > 0)) {
          expect(budget.rows.reduce((sum, row) => sum + row.share, 0)).toBeCloseTo(1, 6)
        }
      }
    }
  })
})

describe('the front page', () => {
  it('answers with the first gate that is not settled', () => {
    const [answer] = pageOf('').data.blocks
    const next = campaign.gates.find((gate) => gate.state === 'held' || gate.overtaken)
    expect(answer?.is).toBe('answer')
    if (next) expect(textsOf(answer).join('')).toContain(next.title)
  })

  it('has a row for every card and article, with the word of its status', () => {
    const tables = blocksOf(pageOf('').data.blocks).flatMap((block) =>
      block.is === 'table' ? [block.table] : [],
    )
    const sheet = tables.find((table) => table.caption === 'Cards by round')
    expect(sheet?.rows).toHaveLength(campaign.cards.length)
    campaign.cards.forEach((state, index) => {
      const words = textsOf(sheet?.rows[index]?.cells ?? [])
      expect(words).toContain(state.card.title)
      if (state.rounds.length > 0) expect(words).toContain(state.status.replace('-', ' '))
    })
  })
})
