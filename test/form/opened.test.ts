/** A run that has landed and is opened again is the same run: its file and its data keep their names. */
import { existsSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { named, runId } from '../../src/form/name.ts'
import { previewRun } from '../../src/form/preview.ts'
import { reopenRun } from '../../src/form/reopen.ts'
import { decodePieces } from '../../src/format/logger/decode.ts'
import { campaign, root } from '../demo/harness.ts'
import { methods, pack, textOf } from './demo.ts'

const takenBy = (card: string): string[] =>
  campaign.runs.filter((run) => run.card.id === card).map((run) => run.id)

const opened = (path: string) => {
  const read = reopenRun(textOf(path))
  if (!read.ok) throw new Error(read.message)
  return read.state
}

it('every run of the demo keeps its name, whoever chose it', () => {
  const names = campaign.runs.map((run) =>
    runId(opened(run.record.source.path), takenBy(run.card.id), run.id),
  )
  expect(names).toEqual(campaign.runs.map((run) => run.id))
})

const logged = campaign.runs.filter((run) =>
  existsSync(join(root, run.record.source.path.replace(/md$/, 'csv'))),
)

describe.each(logged.map((run) => [run.id, run] as const))('%s', (id, run) => {
  const state = named(opened(run.record.source.path), id, id)
  const name = `${id}.csv`
  const text = decodePieces([textOf(run.record.source.path.replace(/md$/, 'csv'))])

  it('keeps its data file, and is computed from it as it was', () => {
    expect(state.data?.file).toBe(name)
    const taken = takenBy(run.card.id).filter((each) => each !== id)
    const preview = previewRun(pack, methods, state, taken, { ...text, name })
    expect(preview.findings.filter(({ severity }) => severity === 'error')).toEqual([])
    expect(preview.path).toBe(run.record.source.path)
    expect(preview.verdict).toBe(run.wouldBe)
  })
})

it('there are such runs', () => {
  expect(logged.length).toBeGreaterThan(0)
})
