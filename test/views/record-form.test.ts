/** What a form is told of its card: which results it offers as givens, and which instruments. */
import { describe, expect, it } from 'vitest'
import type { Campaign, Run } from '../../src/campaign/types.ts'
import { formOf } from '../../src/views/record-form.ts'
import { siteOf } from '../../src/views/site.ts'
import { campaign } from '../demo/harness.ts'

const users = campaign.runs.flatMap((run) =>
  Object.entries(run.record.given).flatMap(([name, given]) =>
    given.form === 'result' ? [{ run, name, given }] : [],
  ),
)

const offered = (of: Campaign, card: string, name: string) => {
  const states = of.cards.filter((state) => state.id === card)
  const [state] = states
  const form = state && formOf(state.card, states, siteOf(of))
  return form?.givens.find((given) => given.name === name)?.results ?? []
}

const changed = (id: string, more: Partial<Run>): Campaign => ({
  ...campaign,
  runs: campaign.runs.map((run) => (run.id === id ? { ...run, ...more } : run)),
})

describe('results of other runs', () => {
  const [first] = users
  if (!first) throw new Error('no run of the demo takes a result over')
  const { name, run } = first
  const [now] = offered(campaign, run.card.id, name)
  if (!now) throw new Error('nothing is offered')

  it('are each of a run that stands, and each once', () => {
    expect(users.length).toBeGreaterThan(2)
    for (const user of users) {
      const results = offered(campaign, user.run.card.id, user.name)
      for (const result of results) {
        const source = campaign.runs.find(({ id }) => id === result.run)
        expect([source?.overtakenBy, source?.gone, source?.record.stopped]).toEqual([null, null, undefined])
        expect(source?.verdict).toBeTruthy()
      }
      expect(new Set(results.map((each) => `${each.run} ${each.measure}`)).size).toBe(results.length)
    }
  })

  it('are not those of a run that was overtaken, is void or was broken off', () => {
    const source = campaign.runs.find(({ id }) => id === now.run)
    if (!source) throw new Error('the offered run is not there')
    const reasons: Partial<Run>[] = [
      { overtakenBy: { id: 'bracket', what: 'rework', when: '2026-04-10' } },
      { verdict: null },
      { record: { ...source.record, stopped: 'the line came off' } },
    ]
    for (const reason of reasons) {
      const results = offered(changed(now.run, reason), run.card.id, name)
      expect(results.map((each) => each.run)).not.toContain(now.run)
    }
  })
})
