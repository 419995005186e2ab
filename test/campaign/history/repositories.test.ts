/**
 * The whole way over real repositories: files and git → check. What git keeps is the reference; what is expected
 * follows from the design of the records.
 */
import { execFileSync } from 'node:child_process'
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { openCampaign } from '../../../src/campaign/node/open.ts'
import { digestOf } from '../../../src/history/node/digest.ts'
import { checkJson } from '../../../src/views/check-json.ts'
import { checkSchema } from '../../../src/views/check-schema.ts'
import { makeRepository, type Repository, temporaryFolder } from '../../history/repository.ts'
import { BASE, card, kinds, run } from '../small.ts'

const RUN = 'records/runs/2026-03/2026-03-08-0900-pull.md'
const CARD = 'shared/cards/pull.md'
const ID = '2026-03-08-0900-pull'
const limit = (accept: string) => card({ criteria: `{reached: {accept: ${accept}, why: invented}}` })
/** Seconds, for the clock of a commit. */
const at = (day: string): number => Date.parse(`${day}T12:00:00+01:00`) / 1000

const begun = (files: Readonly<Record<string, string>> = {}): Repository => {
  const repository = makeRepository()
  repository.commit('begin', { ...BASE, ...files }, { by: 'Cy', at: at('2026-03-02') })
  return repository
}

const digest = (repository: Repository, path: string, id: string): string =>
  digestOf(id, repository.git('rev-parse', `HEAD:${path}`), undefined)

const approve = (repository: Repository, path: string, id: string, by: string, day: string): void => {
  const body = `Reviewed-content: ${digest(repository, path, id)} ${id}\nReviewed-by: ${by} <${by.toLowerCase()}@example.org>`
  repository.commit('approve', {}, { by, body, at: at(day) })
}

const open = async ({ top }: Pick<Repository, 'top'>) =>
  (await openCampaign(top, 'test', '2026-04-01')).campaign

const made = run('2026-03-08', 105)

describe('a run that is merged, and reviewed by a trailer', () => {
  const arranged = (): Repository => {
    const repository = begun()
    repository.branch('test')
    repository.commit('add run', made, { by: 'Ann', at: at('2026-03-08') })
    return repository
  }
  it('is proposed on its branch', async () => {
    const campaign = await open(arranged())
    expect(campaign.problems).toEqual([])
    expect(campaign.runs[0]?.provenance.state).toBe('proposed')
    expect(kinds(campaign)).toEqual(['not-reviewed'])
  })
  it.each(['merge', 'squash'])('a %s lands it, and does not lose the review', async (how) => {
    const repository = arranged()
    approve(repository, RUN, ID, 'Cy', '2026-03-09')
    const message = repository.git('log', '-1', '--format=%B')
    repository.go('main')
    if (how === 'merge') repository.merge('test', 'merge')
    else {
      repository.git('merge', '-q', '--squash', 'test')
      repository.commit('squash', {}, { by: 'Ann', body: message.slice(message.indexOf('Reviewed')) })
    }
    const campaign = await open(repository)
    expect(campaign.runs[0]?.provenance).toMatchObject({
      recorded: { by: 'ann' },
      reviewed: [{ by: 'cy', how: 'trailer' }],
      state: 'landed',
    })
    expect(kinds(campaign)).toEqual([])
    expect(campaign.gates[0]?.state).toBe('clear')
    const json = checkJson(campaign)
    expect(checkSchema.safeParse(json).error).toBeUndefined()
    expect(json.runs[0]?.criteria[0]).toMatchObject({ verdict: 'pass', asRun: 'pass' })
    expect(json.cards[0]?.criteria[0]?.asRun).toBe('pass')
    expect(Object.keys(json.runs[0]?.provenance ?? {})).toEqual(['recorded', 'reviewed', 'amended', 'state'])
  })
  it('a review of a branch that was changed after it is lent to nothing', async () => {
    const repository = arranged()
    approve(repository, RUN, ID, 'Cy', '2026-03-09')
    repository.commit('mend', run('2026-03-08', 106), { by: 'Ann' })
    repository.go('main')
    repository.merge('test', 'merge')
    const campaign = await open(repository)
    expect(campaign.runs[0]?.provenance).toMatchObject({
      reviewed: [],
      notCounted: [{ by: 'cy', reason: 'of older content' }],
      changes: [],
    })
    expect(kinds(campaign)).toEqual(['not-reviewed'])
  })
  it('a reviewer approving an own run does not', async () => {
    const repository = begun()
    repository.commit('add run', run('2026-03-08', 105, { by: '[cy]' }), { by: 'Cy', at: at('2026-03-08') })
    approve(repository, RUN, ID, 'Cy', '2026-03-09')
    const campaign = await open(repository)
    expect(campaign.runs[0]?.provenance.notCounted).toMatchObject([{ by: 'cy', reason: 'own work' }])
    expect(kinds(campaign)).toEqual(['not-reviewed'])
  })
})

describe('a limit', () => {
  const landed = (accept: string): Repository => {
    const repository = begun(limit(accept))
    repository.commit('add run', made, { by: 'Ann', at: at('2026-03-08') })
    approve(repository, RUN, ID, 'Cy', '2026-03-09')
    return repository
  }
  it('relaxed before the run is the limit of the run', async () => {
    const repository = begun(limit('peak_ratio >= 1.1'))
    repository.commit('relax', limit('peak_ratio >= 1'), { at: at('2026-03-05') })
    repository.commit('add run', made, { by: 'Ann', at: at('2026-03-08') })
    approve(repository, RUN, ID, 'Cy', '2026-03-09')
    const campaign = await open(repository)
    expect(campaign.runs[0]?.verdict).toBe('pass')
    expect(kinds(campaign)).toEqual([])
  })
  it('relaxed after the run, by a file on disk or in a commit, leaves the old one in force', async () => {
    const repository = landed('peak_ratio >= 1.1')
    repository.write(CARD, limit('peak_ratio >= 1')[CARD] ?? '')
    const onDisk = await open(repository)
    repository.commit('relax', {}, { at: at('2026-03-12') })
    for (const campaign of [onDisk, await open(repository)]) {
      expect(campaign.runs[0]).toMatchObject({ presentVerdict: 'pass', verdict: 'fail' })
      expect(kinds(campaign)).toEqual(['failed-criterion', 'limit-moved'])
      const json = checkJson(campaign)
      expect(json.runs[0]).toMatchObject({
        verdict: 'fail',
        criteria: [{ verdict: 'pass', asRun: 'fail' }],
      })
    }
  })
  it('relaxed and reviewed replaces it', async () => {
    const repository = landed('peak_ratio >= 1.1')
    repository.commit('relax', limit('peak_ratio >= 1'), { at: at('2026-03-12') })
    approve(repository, CARD, 'pull', 'Cy', '2026-03-13')
    const campaign = await open(repository)
    expect(campaign.runs[0]).toMatchObject({ verdict: 'pass', asRun: { verdict: 'fail', counts: false } })
    expect(kinds(campaign)).toEqual([])
  })
})

describe('what was taken away', () => {
  it('a failing run deleted while one much like it is added stays, and fails its card', async () => {
    const repository = begun()
    repository.commit('add run', run('2026-03-08', 90), { by: 'Ann', at: at('2026-03-08') })
    repository.write(RUN, null)
    repository.commit('tidy up', run('2026-03-09', 110), { by: 'Bob', at: at('2026-03-09') })
    const campaign = await open(repository)
    expect(campaign.runs.map(({ id, verdict, gone }) => [id, verdict, gone?.by])).toEqual([
      [ID, 'fail', 'bob'],
      ['2026-03-09-0900-pull', 'pass', undefined],
    ])
    expect(kinds(campaign)).toEqual(['failed-criterion', 'not-reviewed', 'run-gone'])
    expect(campaign.gates[0]?.state).toBe('held')
  })
  it('a file that only got another name and place is still the one that was reviewed where its id is the same', async () => {
    const repository = begun()
    repository.commit('add run', made, { by: 'Ann', at: at('2026-03-08') })
    approve(repository, RUN, ID, 'Cy', '2026-03-09')
    repository.move(RUN, RUN.replace('2026-03/', '2026-04/'))
    repository.commit('move', {})
    const campaign = await open(repository)
    expect(campaign.runs).toHaveLength(1)
    expect(campaign.runs[0]?.provenance).toMatchObject({ recorded: { by: 'ann' }, changes: [] })
    expect(kinds(campaign)).toEqual([])
  })
})

describe('where the history is not known', () => {
  it('a shallow clone shows nothing as reviewed or unchanged, and says once how to get the rest', async () => {
    const repository = begun()
    repository.commit('add run', run('2026-03-08', 90), { by: 'Ann', at: at('2026-03-08') })
    approve(repository, RUN, ID, 'Cy', '2026-03-09')
    const top = join(temporaryFolder(), 'clone')
    execFileSync('git', ['clone', '-q', '--depth', '1', `file://${repository.top}`, top])
    const campaign = await open({ top })
    expect(campaign.problems).toMatchObject([{ code: 'history/unknown', severity: 'warning' }])
    expect(campaign.problems[0]?.hint).toContain('--unshallow')
    expect(campaign.runs[0]).toMatchObject({
      verdict: 'fail',
      asRun: null,
      provenance: { state: 'unknown', reviewed: [], changes: null, recorded: null },
    })
    expect(kinds(campaign)).toEqual(['failed-criterion'])
    const json = checkJson(campaign)
    expect(json.runs[0]?.criteria[0]?.asRun).toBeNull()
    expect(json.runs[0]?.provenance.state).toBe('unknown')
  })
})

describe('a checkout with other line ends', () => {
  it('is no change', async () => {
    const repository = begun()
    repository.commit('add run', made, { by: 'Ann', at: at('2026-03-08') })
    approve(repository, RUN, ID, 'Cy', '2026-03-09')
    const top = join(temporaryFolder(), 'clone')
    execFileSync('git', ['clone', '-q', '-c', 'core.autocrlf=true', repository.top, top])
    expect(readFileSync(join(top, RUN), 'utf8')).toContain('\r\n')
    const campaign = await open({ top })
    expect(campaign.runs[0]?.provenance).toMatchObject({ changes: [], reviewed: [{ by: 'cy' }] })
    expect(kinds(campaign)).toEqual([])
  })
})
