/**
 * Sources as sums of movements against the plain way of JCGM 100, 5.1.3 note 2: for each source, half the difference
 * of two estimates with all that it moves moved together by one standard uncertainty.
 */
import { join } from 'node:path'
import { beforeAll, describe, expect, it } from 'vitest'
import { modelOf } from '../../src/campaign/instruments.ts'
import { openCampaign } from '../../src/campaign/node/open.ts'
import type { Campaign, Run } from '../../src/campaign/types.ts'
import { contributions } from '../../src/methods/derivatives.ts'
import { type Measured, type MeasureInput, measureRun, moved } from '../../src/methods/measure.ts'
import { moveGiven } from '../../src/methods/movements.ts'
import type { Action } from '../../src/methods/perturb.ts'

let campaign: Campaign
beforeAll(async () => {
  campaign = (await openCampaign(join(import.meta.dirname, '../..'), 'test', '2026-04-15')).campaign
})

const inputOf = (run: Run): MeasureInput | null => {
  const { computed, record } = run
  if (!computed) return null
  const models = Object.entries(record.instruments).flatMap(([column, id]) => {
    const instrument = campaign.records.instruments[id]
    return instrument ? [[column, modelOf(instrument, record.when.date)] as const] : []
  })
  const { method, schema, columns, inputs, givens } = computed
  const { words, fields } = givens
  return {
    runId: run.id,
    method,
    schema,
    columns,
    instruments: Object.fromEntries(models),
    inputs,
    words,
    fields,
  }
}

/** Signed contribution of each source to each measure, with everything of the source moved at once. */
const together = ({ method }: MeasureInput, measured: Measured) => {
  const { columns, givens, selection, sources } = measured
  const at = (actions: readonly Action[], z: number): Readonly<Record<string, number>> => {
    const inputs = moved({ columns, givens }, actions, z)
    const result = method.estimate(inputs.columns, inputs.givens, selection)
    return result.ok ? result.value.values : {}
  }
  return [...sources].map(([source, actions]) => {
    const [up, down] = [at(actions, 1), at(actions, -1)]
    return {
      source,
      of: (measure: string) => ((up[measure] ?? Number.NaN) - (down[measure] ?? Number.NaN)) / 2,
    }
  })
}

describe('one derivative a movement', () => {
  it('gives the budget of every run of the demo that moving each source as a whole gives', () => {
    let compared = 0
    for (const run of campaign.runs) {
      const input = inputOf(run)
      const measured = input && measureRun(input)
      if (!input || !measured?.ok) continue
      const plain = together(input, measured.value)
      for (const { name, exact } of input.schema.measures) {
        const parts = measured.value.measures[name]?.parts
        if (!parts || exact || !(name in measured.value.estimate.values)) continue
        const total = Math.hypot(...Object.values(parts).map((part) => part.u))
        const off = plain.filter(
          ({ source, of }) => !(Math.abs((parts[source]?.u ?? 0) - of(name)) <= 1e-4 * total + 1e-300),
        )
        expect(
          off.map(({ source }) => source),
          `${run.id} ${name}`,
        ).toEqual([])
        compared += plain.length
      }
    }
    expect(compared).toBeGreaterThan(1000)
  })
})

describe('superposition', () => {
  const start = { columns: {}, givens: { numbers: { a: 3, b: 5 }, words: {}, fields: {} } }
  const action = (source: string, given: string, size: number, unknown?: string): Action => ({
    source,
    pool: source,
    shape: 'normal',
    dof: Number.POSITIVE_INFINITY,
    movement: moveGiven(given),
    size,
    ...(unknown ? { unknown } : {}),
  })
  const product = (sources: ReadonlyMap<string, readonly Action[]>) => {
    let calls = 0
    const of = contributions(sources, start, { area: 15 }, ({ givens }) => {
      calls += 1
      return { area: (givens.numbers.a ?? Number.NaN) * (givens.numbers.b ?? Number.NaN) }
    })
    return { of: (source: string) => of(sources.get(source) ?? [], 'area'), calls }
  }

  it('keeps signs: for a·b, b·u(a) + a·u(b) within one source (JCGM 100, 5.2.2)', () => {
    const { of } = product(
      new Map([
        ['alike', [action('alike', 'a', 0.1), action('alike', 'b', 0.2)]],
        ['against', [action('against', 'a', 0.3), action('against', 'b', -0.5)]],
      ]),
    )
    expect(of('alike')).toBeCloseTo(5 * 0.1 + 3 * 0.2, 10)
    expect(of('against')).toBeCloseTo(0, 10)
  })

  it('estimates twice a movement, however many sources share it', () => {
    const { of, calls } = product(
      new Map(['one', 'two', 'three'].map((name, i) => [name, [action(name, 'a', 0.01 * (i + 1))]])),
    )
    expect(calls).toBe(2)
    expect([of('one'), of('two'), of('three')].map((u) => Number(u.toFixed(10)))).toEqual([0.05, 0.1, 0.15])
  })

  it('steps as far as a known source does, not as a probe does', () => {
    const sources = new Map([
      ['probe', [action('probe', 'a', 1e9, 'not stated')]],
      ['known', [action('known', 'a', 0.1)]],
    ])
    const seen: number[] = []
    contributions(sources, start, { area: 15 }, ({ givens }) => {
      seen.push(givens.numbers.a ?? Number.NaN)
      return { area: 1 }
    })
    expect(seen).toEqual([3.1, 2.9])
  })
})
