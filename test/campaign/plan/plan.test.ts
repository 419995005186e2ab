/** Planning of the demonstration cards: each plan, carried out to the letter, would reach what the method asks. */
import { describe, expect, it } from 'vitest'
import { inputsOf } from '../../../src/campaign/inputs.ts'
import { modelOfDemand } from '../../../src/campaign/instruments.ts'
import { plannedSchema } from '../../../src/campaign/schema.ts'
import type { CardState } from '../../../src/campaign/types.ts'
import { measureRun } from '../../../src/methods/measure.ts'
import type { Columns } from '../../../src/methods/method.ts'
import { KINDS } from '../../../src/quantity/kinds.ts'
import { exact } from '../../../src/quantity/quantity.ts'
import { campaign } from '../../demo/harness.ts'
import { campaignOf, card } from '../small.ts'

const stateOf = (id: string, article?: string): CardState => {
  const state = campaign.cards.find((each) => each.id === id && (!article || each.article === article))
  if (!state) throw new Error(id)
  return state
}

const column = (state: CardState, title: string): (number | string | null)[] => {
  const readings = state.plan?.readings
  const at = readings?.columns.findIndex((each) => each.title === title) ?? -1
  return (readings?.rows ?? []).map((row) => row[at] ?? null)
}

describe('every plan', () => {
  it('has as many cells as columns, in finite numbers, and never goes beyond stop-at', () => {
    for (const { card, plan } of campaign.cards) {
      for (const table of [plan?.steps, plan?.readings]) {
        for (const row of table?.rows ?? []) {
          expect(row).toHaveLength(table?.columns.length ?? 0)
          row.forEach((cell, at) => {
            if (typeof cell !== 'number') return
            expect(Number.isFinite(cell)).toBe(true)
            const stop = card.stopAt[table?.columns[at]?.of ?? '']
            if (stop && table?.columns[at]?.title === 'load to reach')
              expect(Math.abs(cell)).toBeLessThanOrEqual(Math.abs(stop.value))
          })
        }
      }
    }
  })
  it('names its columns after fields of the method', () => {
    for (const { card, method, plan } of campaign.cards) {
      const names = method ? plannedSchema(method, card).columns.map((field) => field.name) : []
      const of = (plan?.readings?.columns ?? []).flatMap((each) => (each.of ? [each.of] : []))
      expect(of.filter((name) => !names.includes(name))).toEqual([])
    }
  })
})

describe('the last load step', () => {
  it.each([
    ['elevator-stiffness', 'limit_load'],
    ['hoist-point-load', 'target'],
    ['elevator-gust-load', 'target'],
  ])('of %s reads so far above the goal that it is surely reached, and no more than needed', (id, target) => {
    const state = stateOf(id)
    const goal = Math.abs(state.targets[target]?.value.value ?? Number.NaN)
    const demand = state.card.instruments.load
    if (!demand) throw new Error(id)
    const { offset } = modelOfDemand('load', demand)
    const top = Math.max(...column(state, 'load to reach').map((each) => Math.abs(Number(each))))
    // Guard band of one-sided 95 % at the very least (JCGM 106, 8.3.2.4), and twice that at most, with a digit.
    const u = offset ?? Number.NaN
    const digit = demand.resolution?.value ?? 0
    expect(top).toBeGreaterThanOrEqual(goal + 1.645 * u)
    expect(top).toBeLessThanOrEqual(goal + 2 * 1.645 * u + digit)
  })
})

describe('expected deflections', () => {
  it('of the circuit are its stiffness: at the last step (M − f)/K + g/2, through the arm (by hand)', () => {
    const state = stateOf('elevator-stiffness')
    const last = campaign.runs.findLast((run) => run.card.id === state.id && run.computed && !run.record.void)
    const m = last?.computed?.measures
    const rows = state.plan?.steps?.rows ?? []
    const [load, moved] = rows[rows.length - 1] ?? []
    const arm = 0.3
    const angle =
      (Number(load) * arm - (m?.friction?.value ?? Number.NaN)) / (m?.stiffness?.value ?? Number.NaN) +
      (m?.free_play?.value ?? Number.NaN) / 2
    expect(Number(moved)).toBeCloseTo(arm * Math.sin(angle), 9)
  })
  it('are not known before any run', () => {
    const [state] = campaignOf(card()).cards
    expect(state?.plan?.steps?.rows.every(([, moved]) => moved === null)).toBe(true)
    expect(JSON.stringify(state?.plan?.text)).toContain('not known')
  })
})

describe('the stiffness that a criterion on the kept deflection asks for', () => {
  it('is h·s/(1 − s) with the hinge moment slope h = −q S c C_hδ (by hand)', () => {
    const text = JSON.stringify(stateOf('elevator-stiffness').plan?.text ?? [])
    const asked = Number(/"value":([\d.e+-]+),"kind":"angular-stiffness"/.exec(text)?.[1])
    // Sea level, 50 m/s: q = 0.5 · 1.225 · 50² Pa; S = 0.62 m², c = 0.28 m, C_hδ = −0.40/rad, 85 % kept.
    const h = 0.5 * 1.225 * 50 ** 2 * 0.62 * 0.28 * 0.4
    expect(asked / ((h * 0.85) / 0.15)).toBeCloseTo(1, 4)
  })
})

describe('the rehearsal honours the card', () => {
  const leak = (every: string, accept = 'leak_rate < 6 cm^3/min', targets = '') =>
    campaignOf({
      'shared/cards/pull.md': `---
title: Leak
method: pressure-decay
owner: cy
article: frame
stop-at: {pressure: -4 kPa}
instruments:
  pressure: {range: -4 kPa .. 0 kPa, uncertainty: <= 20 Pa, resolution: <= 3 Pa, drift: <= 10 Pa/h}
  temperature: {range: 0 °C .. 40 °C, uncertainty: <= 0.5 K, resolution: <= 0.1 K}
  baro: {range: 900 hPa .. 1050 hPa, uncertainty: <= 150 Pa, resolution: <= 0.5 hPa, drift: <= 10 Pa/h}
given: {test_pressure: -2.5 kPa, volume: 96.4 ± 0.6 L, volume_compliance: 0.02 ± 0.01 L/kPa, contents: dry, temperature_error: 0.3 K (u), settle: 15 min, hold: 2 h}
every: ${every}${targets}
criteria: {leak: {accept: ${accept}, why: invented, show: cm^3/min}}
---
Invented.
`,
    }).cards[0]

  it('a limit that stands under targets is the same limit', () => {
    const named = leak('5 min', 'leak_rate < most', '\ntargets: {most: 6 cm^3/min}')
    const [decided] = named?.decidable ?? []
    expect(decided?.verdict).not.toBe('not known')
    expect(named?.decidable).toEqual(leak('5 min')?.decidable)
  })
  it('fewer readings leave more uncertainty', () => {
    const [often, rarely] = [leak('2 min'), leak('30 min')].map(
      (state) => state?.decidable[0]?.U ?? Number.NaN,
    )
    expect(Number(rarely)).toBeGreaterThan(Number(often))
  })
  it('plans a row for each reading, settling and hold, the end included', () => {
    const times = leak('10 min')?.plan?.readings?.rows.map(([, time]) => time)
    expect(times).toEqual(Array.from({ length: 15 }, (_, row) => row * 600))
  })
  it('plans no rows for a logger', () => {
    expect(leak('1 s')?.plan?.readings).toBeNull()
  })
})

describe('a test done as planned', () => {
  /** The planned rows as columns, read without error; the deflection where none is expected is 0. */
  const columnsOf = (state: CardState): Columns => {
    const plan = state.plan?.readings
    const schema = state.method ? plannedSchema(state.method, state.card) : null
    const named = (title: string) => plan?.columns.findIndex((each) => each.title.startsWith(title)) ?? -1
    const numbers = (at: number) => Float64Array.from(plan?.rows ?? [], (row) => Number(row[at] ?? 0))
    const phase = (plan?.rows ?? []).map((row) => String(row[named('phase')] ?? ''))
    const dim = (name: string) =>
      KINDS[schema?.columns.find((field) => field.name === name)?.kind ?? 'number'].dim
    const holds = phase.filter((each) => each === 'hold').length
    const hold = Number(state.card.given.hold?.form === 'quantity' ? state.card.given.hold.stated.value : 0)
    let clock = 0
    const time = Float64Array.from(phase, (each, row) => {
      clock += each === 'hold' && phase[row - 1] === 'hold' ? (1.5 * hold) / (holds - 1) : 5
      return clock
    })
    return {
      ...(holds > 0 ? { time: { values: time, dim: KINDS.time.dim, resolution: 0 } } : {}),
      ...(holds > 0
        ? { phase: { values: time.map(() => Number.NaN), texts: phase, dim: KINDS.text.dim, resolution: 0 } }
        : {}),
      load: {
        values: numbers(named('load')),
        dim: dim('load'),
        resolution: state.card.instruments.load?.resolution?.value ?? 0,
      },
      deflection: {
        values: numbers(named(holds > 0 ? 'deflection' : 'expected')),
        dim: dim('deflection'),
        resolution: 2e-5,
      },
    }
  }
  const remarks = (state: CardState): string[] => {
    const { method, card } = state
    if (!method) return ['no method']
    const models = Object.fromEntries(
      Object.entries(card.instruments).map(([name, demand]) => [name, modelOfDemand(name, demand)]),
    )
    const schema = plannedSchema(method, card)
    const given = inputsOf(schema, card, state.article, null, new Map())
    const goals = Object.entries(state.targets).map(([name, { value }]) => [
      name,
      exact(value.value, value.dim),
    ])
    const inputs = { ...given.numbers, ...Object.fromEntries(goals) }
    const measured = measureRun({
      runId: 'planned',
      method,
      schema,
      columns: columnsOf(state),
      instruments: models,
      inputs,
      words: given.words,
      fields: {},
    })
    if (!measured.ok) return [measured.error]
    const { measures, columns, givens, selection } = measured.value
    return method
      .conditions(measures, columns, givens, selection, 0.95)
      .filter((each) => each.effect === 'bars-pass' && !each.measures)
      .map((each) => each.text)
  }

  it.each(['elevator-stiffness', 'aileron-stiffness', 'hoist-point-load', 'aileron-gust-load'])(
    'is not barred for want of load or hold: %s',
    (id) => {
      expect(remarks(stateOf(id))).toEqual([])
    },
  )
})

describe('what next, after a circuit that is too soft', () => {
  it('names the softest segment and what it must become: springs in series (by hand)', () => {
    const run = campaign.runs.find((each) => each.id === '2026-02-24-1330-elevator-stiffness')
    const measures = run?.computed?.measures ?? {}
    const segments = Object.keys(measures)
      .filter((name) => /^compliance_.+_/.test(name))
      .map((name) => measures[name]?.value ?? Number.NaN)
    const total = segments.reduce((sum, each) => sum + each, 0)
    const softest = Math.max(...segments)
    // K/(K + h) = 85 % with h as above.
    const wanted = (0.5 * 1.225 * 50 ** 2 * 0.62 * 0.28 * 0.4 * 0.85) / 0.15
    const whole = measures.surface_stiffness?.value ?? Number.NaN
    const must = 1 / (total * (whole / wanted) - (total - softest))
    const said = /would need (\d+) N·m\/rad where it has (\d+)/.exec(run?.advice[0]?.text ?? '')
    expect(Number(said?.[1]) / must).toBeCloseTo(1, 2)
    expect(Number(said?.[2]) * softest).toBeCloseTo(1, 2)
  })
})
