/**
 * The whole way of a run, with the commands as people call them and a real repository: a new file, filled in, on a
 * branch, checked, summed up, reviewed by a second person in the message of the merge, and shown as reviewed.
 */
import { readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { z } from 'zod'
import { openCampaign } from '../../src/campaign/node/open.ts'
import { allViews } from '../../src/views/all.ts'
import { checkSchema } from '../../src/views/check-schema.ts'
import type { View } from '../../src/views/view.ts'
import { home, runFile, type SmallRepository, smallRepository } from './small-repository.ts'

const PAUL = 'paul.ferrand@type7.example'
const ID = '2026-03-19-0935-hull-bay-leak-hull-bay-1'
const PATH = `records/runs/2026-03/${ID}.md`

let small: SmallRepository
/** Committed at a time, so that the order of card and run is as it would be. */
const commit = (day: string, message: string, ...more: string[]) => {
  const done = small.call('git', ['commit', '-qm', message, ...more], {
    GIT_AUTHOR_DATE: `${day}T12:00:00+01:00`,
    GIT_COMMITTER_DATE: `${day}T12:00:00+01:00`,
  })
  expect([done.status, done.stderr]).toEqual([0, ''])
}
beforeAll(() => {
  small = smallRepository()
  commit('2026-02-01', 'The campaign', '--amend', '--date=2026-02-01T12:00:00+01:00')
})
afterAll(() => small.remove())

const check = () => {
  const { status, stdout } = small.program('check', ['--json', '--as-of', '2026-03-20'])
  const parsed = z.parse(checkSchema, JSON.parse(stdout))
  return { status, parsed, run: parsed.runs.find(({ id }) => id === ID) }
}

/** Every text of a page, in order. */
const textsOf = (view: View | undefined): string => JSON.stringify(view?.data ?? view ?? null)

const pageOf = async (): Promise<string> => {
  const { campaign } = await openCampaign(small.root, 'test', '2026-03-20')
  return textsOf(allViews(campaign).find((view) => view.kind === 'run' && view.path.includes(ID)))
}

it('from the new file to the page that shows it as reviewed', async () => {
  const made = small.program('new', [
    'hull-bay-leak',
    '--article',
    'hull/bay-1',
    '--at',
    '2026-03-19T09:35+01:00',
  ])
  expect([made.status, made.stderr]).toEqual([0, ''])
  const file = join(small.root, PATH)
  const written = readFileSync(file, 'utf8')
  const tip = small.git('rev-parse', 'main').trim()
  expect(written).toContain('by: [mlindqvist]')
  expect(written).toContain(`card-revision: ${tip.slice(0, 12)}`)
  expect(check()).toMatchObject({ status: 1, run: undefined })

  // Readings of an invented morning: those of another run, with one digit that is not the same.
  const readings = /^readings: \|\n(?: {2}.*\n)+/m.exec(readFileSync(join(home, runFile), 'utf8'))?.[0] ?? ''
  writeFileSync(
    file,
    written
      .replace(/^readings: \|\n(?: {2}.*\n)+/m, readings.replace('-2264', '-2262'))
      .replace('witness: …', 'witness: cokafor')
      .replace('… °C', '12 °C'),
  )
  small.git('checkout', '-qb', 'bay-1')
  small.git('add', '.')
  commit('2026-03-19', 'Hull bay 1 again')

  const proposed = check()
  expect(proposed.status).toBe(0)
  expect(proposed.parsed.problems).toEqual([])
  expect(proposed.run).toMatchObject({ verdict: 'pass', provenance: { state: 'proposed', reviewed: [] } })
  expect(proposed.parsed.items.map(({ id }) => id)).toContain(`not-reviewed.${ID}`)

  const summed = small.program('summary', ['main', '--as-of', '2026-03-20'])
  expect(summed.status).toBe(0)
  expect(summed.stdout).toContain('1 new run (1 pass)')
  expect(summed.stdout).toContain(`| \`${ID}\` | new | mlindqvist | nobody yet | pass | leak |`)
  expect(summed.stdout).not.toContain('Look at this first')

  expect(await pageOf()).not.toContain('Paul Ferrand')

  // Nobody reviews an own run, nor what that person has witnessed.
  expect(small.program('approve', [ID]).status).toBe(1)
  const approved = small.program('approve', [ID], { GIT_AUTHOR_NAME: 'Paul', GIT_AUTHOR_EMAIL: PAUL })
  expect([approved.status, approved.stderr]).toEqual([0, ''])
  small.git('checkout', '-q', 'main')
  small.as(PAUL, 'merge', '-q', '--no-ff', '-m', `Hull bay 1 again\n\n${approved.stdout}`, 'bay-1')

  const landed = check()
  expect(landed.run).toMatchObject({
    verdict: 'pass',
    provenance: { state: 'landed', reviewed: [{ by: 'pferrand', how: 'trailer' }] },
  })
  expect(landed.parsed.items.map(({ id }) => id)).not.toContain(`not-reviewed.${ID}`)
  const page = await pageOf()
  expect(page).toMatch(/Reviewed/)
  expect(page).toContain('Paul Ferrand')
  expect(page).not.toMatch(/not reviewed|[Nn]obody has reviewed/)

  // Of other content it is no review.
  small.edit(PATH, /-2262/, '-2261')
  const edited = check()
  expect(edited.run?.provenance.reviewed).toEqual([])
  expect(edited.parsed.items.map(({ kind }) => kind)).toContain('changed')
}, 120_000)
