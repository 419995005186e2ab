/**
 * What the form writes passes `check` without a remark and gives the measures that were shown live, to the last
 * digit: for every card of the demo campaign, which has every method. The runs are written into a copy of the
 * campaign, and the whole of it is opened as the command does.
 */
import { cpSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import fc from 'fast-check'
import { afterAll, describe, expect, it } from 'vitest'
import { openCampaign } from '../../src/campaign/node/open.ts'
import { runId } from '../../src/form/name.ts'
import { previewRun } from '../../src/form/preview.ts'
import { reopenRun } from '../../src/form/reopen.ts'
import { runText } from '../../src/form/write.ts'
import { resultText } from '../../src/views/show.ts'
import { campaign, expected, root } from '../demo/harness.ts'
import { methods, pack } from './demo.ts'
import { choices, draw } from './generate.ts'

const EACH = 3
const two = (number: number): string => String(number).padStart(2, '0')

const drawn = campaign.cards.flatMap((card, index) =>
  fc.sample(choices, { numRuns: EACH, seed: 7 + index }).map((choice, at) => {
    const when = `2026-04-18T${two(6 + Math.floor(index / 4))}:${two((index % 4) * 15 + at)}+02:00`
    const state = draw(card, choice, when)
    return { card: card.id, method: card.card.method, state, preview: previewRun(pack, methods, state, []) }
  }),
)

const folder = mkdtempSync(join(tmpdir(), 'form-'))
for (const name of ['records', 'shared']) cpSync(join(root, name), join(folder, name), { recursive: true })
for (const { preview } of drawn) {
  mkdirSync(dirname(join(folder, preview.path)), { recursive: true })
  writeFileSync(join(folder, preview.path), preview.text)
}
const { campaign: checked } = await openCampaign(folder, 'test', expected.asOf)
afterAll(() => rmSync(folder, { recursive: true, force: true }))

it('meets every method', () => {
  expect([...new Set(drawn.map(({ method }) => method))].sort()).toEqual(Object.keys(methods).sort())
})

describe.each(drawn.map((each) => [runId(each.state), each] as const))('%s', (id, { state, preview }) => {
  const run = checked.runs.find((each) => each.id === id)

  it('passes check without a remark', () => {
    expect(preview.findings).toEqual([])
    expect(checked.problems.filter(({ at }) => at.file === preview.path)).toEqual([])
    expect(run?.computed).toBeTruthy()
  })

  it('has the verdict and the measures that were shown', () => {
    const { computed } = run ?? {}
    const known = Object.entries({ ...computed?.measures, ...computed?.derived })
    const shown = known.flatMap(([name, quantity]) => {
      const unit = run?.units[name]
      return unit ? [resultText(quantity, unit)] : []
    })
    expect(preview.measures.map(({ result }) => result)).toEqual(shown)
    expect(preview.verdict).toBe(run?.wouldBe)
    expect(shown.length).toBeGreaterThan(0)
  })

  it('is the same when it is opened again', () => {
    const again = reopenRun(preview.text)
    expect(again.ok && again.losses).toEqual([])
    expect(again.ok && runText(again.state)).toBe(runText(state))
  })
})
