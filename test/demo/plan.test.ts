/** What the demo comes out as was planned before the readings were written (expected.json): nothing here is taken from the software. */
import { describe, expect, test } from 'vitest'
import { campaign, expected } from './harness.ts'

describe('the plan', () => {
  test('every run comes out with the verdict and in the round that the story plans', () => {
    const found = campaign.runs.map(({ id, verdict, round }) => [id, { verdict, round }] as const)
    expect(Object.fromEntries(found)).toEqual(expected.runs)
  })

  test('every card has the planned status', () => {
    const found = campaign.cards.map(({ id, article, status }) => [`${id} ${article}`, status] as const)
    expect(Object.fromEntries(found)).toEqual(expected.cards)
  })

  test('every gate has the planned state', () => {
    const found = campaign.gates.map(({ id, state, overtaken }) => [id, { state, overtaken }] as const)
    expect(Object.fromEntries(found)).toEqual(expected.gates)
  })

  test('no file has a problem', () => {
    expect(campaign.problems.map(({ at, message }) => `${at.file}:${at.line} ${message}`)).toEqual([])
  })

  test('it is as large as a first campaign', () => {
    const { runs, reworks, cards, instruments, readiness, gates } = campaign.records
    expect(Object.keys(runs).length).toBeGreaterThanOrEqual(40)
    expect(Object.keys(reworks).length).toBeGreaterThanOrEqual(5)
    expect(Object.keys(cards).length).toBeGreaterThanOrEqual(10)
    expect(Object.keys(instruments).length).toBeGreaterThanOrEqual(6)
    expect(Object.keys(readiness).length).toBeGreaterThanOrEqual(3)
    expect(Object.keys(gates)).toHaveLength(4)
  })

  test('nothing is open that the story does not plan', () => {
    // What is reviewed, changed or voided after the fact is read from git, not from these files.
    const fromHistory = ['not-reviewed', 'voided']
    const kinds = campaign.items
      .filter((item) => !fromHistory.includes(item.kind))
      .map((item) => `${item.kind} ${item.about[0]}`)
    expect(kinds.sort()).toEqual([...expected.items].sort())
  })
})
