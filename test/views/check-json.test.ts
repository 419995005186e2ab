import { describe, expect, it } from 'vitest'
import { checkJson } from '../../src/views/check-json.ts'
import { checkJsonSchema, checkSchema } from '../../src/views/check-schema.ts'
import { checkText } from '../../src/views/check-text.ts'
import { campaign } from '../demo/harness.ts'

const json = checkJson(campaign)

describe('the JSON of check', () => {
  it('is what its schema says', () => {
    expect(checkSchema.safeParse(JSON.parse(JSON.stringify(json))).error?.issues ?? []).toEqual([])
  })
  it('publishes that schema', () => {
    expect(checkJsonSchema()).toMatchObject({
      type: 'object',
      required: expect.arrayContaining(['schema', 'runs', 'gates']),
    })
  })
  it('gives the interval that u and the degrees of freedom give', () => {
    const leak = json.runs.find((run) => run.card === 'tank-leak')?.measures.leak_rate
    expect(leak?.U95).toBeGreaterThan(1.9 * (leak?.u ?? Number.NaN))
    expect(leak?.unit).toBe('cm^3/min')
  })
  it('has margins that are the distance to the nearer limit, positive inside', () => {
    for (const term of json.runs.flatMap((run) => run.criteria.flatMap((criterion) => criterion.terms))) {
      const nearest = Math.min(...term.limits.map((limit) => Math.abs(limit - term.value)))
      expect(Math.abs(term.margin)).toBeCloseTo(nearest, 6)
    }
  })
})

describe('the report on a terminal', () => {
  const text = checkText(campaign, { colour: false, textOf: () => undefined })
  it('has a line for each card, gates in order, and the counts at the end', () => {
    for (const { id } of campaign.cards) expect(text).toContain(id)
    const places = campaign.gates.map((gate) => text.indexOf(gate.title))
    expect(places).toEqual(places.toSorted((a, b) => a - b))
    expect(text).toMatch(/\d+ runs: \d+ pass, \d+ fail, \d+ undetermined/)
  })
  it('has no colour unless asked for', () => {
    expect(text).not.toContain('\u001b')
    expect(checkText(campaign, { colour: true, textOf: () => undefined })).toContain('\u001b')
  })
})
