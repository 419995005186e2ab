/** Every run of the demo campaign through the form: opened, written anew, read as `check` reads it. */
import { existsSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { takeRun } from '../../src/form/desk.ts'
import { reopenRun } from '../../src/form/reopen.ts'
import { runText } from '../../src/form/write.ts'
import { campaign, root } from '../demo/harness.ts'
import { methods, pack, textOf } from './demo.ts'

const beside = (path: string) => {
  const csv = path.replace(/\.md$/, '.csv')
  return existsSync(join(root, csv)) ? { data: { path: csv, text: textOf(csv) } } : {}
}

const reopened = (text: string) => {
  const read = reopenRun(text)
  if (!read.ok) throw new Error(read.message)
  return read
}

describe.each(campaign.runs.map((run) => [run.id, run] as const))('%s', (_, run) => {
  const { path, text } = run.record.source
  const { state, losses } = reopened(text)
  const written = runText(state)

  it('loses nothing and is written the same way twice', () => {
    expect(losses).toEqual([])
    expect(runText(reopened(written).state)).toBe(written)
  })

  it('gives the measures, verdicts and problems that check gives, to the last digit', () => {
    const names = run.record.files.map(({ file }) => file)
    const taken = takeRun(pack, methods, { path, text: written, beside: names, ...beside(path) })
    const own = campaign.problems.filter((problem) => problem.at.file === path)
    expect(taken.problems.map(({ code, message }) => ({ code, message }))).toEqual(
      own.map(({ code, message }) => ({ code, message })),
    )
    expect(taken.run?.computed?.measures).toEqual(run.computed?.measures)
    expect(taken.run?.computed?.derived).toEqual(run.computed?.derived)
    expect(taken.run?.judgements).toEqual(run.judgements)
    expect(taken.run?.wouldBe).toBe(run.wouldBe)
  })
})
