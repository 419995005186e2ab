/** The demo campaign through the real pipeline, without what git knows of it, and short ways to what the tests ask of it. */
import { fileURLToPath } from 'node:url'
import { openCampaign } from '../../src/campaign/node/open.ts'
import type { CardState, OpenItem, Run } from '../../src/campaign/types.ts'
import { standardUncertainty } from '../../src/quantity/quantity.ts'
import expected from './expected.json' with { type: 'json' }

export { expected }
export const root = fileURLToPath(new URL('../..', import.meta.url))
export const { campaign } = await openCampaign(root, 'test', expected.asOf, { history: false })

export const runOf = (id: string): Run => {
  const run = campaign.runs.find((each) => each.id === id)
  if (!run) throw new Error(`no run ${id}`)
  return run
}

export const cardOf = (card: string, article: string): CardState => {
  const state = campaign.cards.find((each) => each.id === card && each.article === article)
  if (!state) throw new Error(`no card ${card} on ${article}`)
  return state
}

/** SI; NaN where the run has no such measure. */
export const measure = (run: string, name: string): number =>
  runOf(run).computed?.measures[name]?.value ?? Number.NaN

export const uncertainty = (run: string, name: string): number => {
  const quantity = runOf(run).computed?.measures[name]
  return (quantity && standardUncertainty(quantity)) ?? Number.NaN
}

export const criterion = (run: string, id: string) =>
  runOf(run).judgements.find((each) => each.criterion === id)

export const itemsAbout = (id: string): OpenItem[] => campaign.items.filter((item) => item.about.includes(id))

export const heldBy = (gate: string): readonly string[] =>
  campaign.gates.find((each) => each.id === gate)?.heldBy ?? []
