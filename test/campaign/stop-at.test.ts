/** What must never be passed, where the run has no column of that name. */
import { expect, test } from 'vitest'
import { campaignOf, card, kinds, run } from './small.ts'

test('a run without the column of the stop value holds the gate: nobody knows how far it went', () => {
  const campaign = campaignOf(card({ 'stop-at': '{load: 150 N, deflection: 5 mm}' }), run('2026-03-01'))
  expect(campaign.problems.filter(({ severity }) => severity === 'error')).toEqual([])
  const [item] = campaign.items.filter(({ kind }) => kind === 'beyond-stop')
  expect(item?.title).toContain('has no readings of deflection')
  expect(campaign.gates[0]?.state).toBe('held')
})

test('of columns that stand for each other, the one that was read and has a stop of its own will do', () => {
  const stops = '{load: 150 N, time: 1 h, step: 50}'
  const campaign = campaignOf(card({ 'stop-at': stops }), run('2026-03-01'))
  expect(campaign.problems.filter(({ severity }) => severity === 'error')).toEqual([])
  expect(kinds(campaign)).not.toContain('beyond-stop')
  const step = campaignOf(card({ 'stop-at': '{load: 150 N, step: 50}' }), run('2026-03-01'))
  expect(kinds(step)).toContain('beyond-stop')
})

test('with the column, and below the value, there is no item', () => {
  expect(kinds(campaignOf(run('2026-03-01')))).not.toContain('beyond-stop')
})
