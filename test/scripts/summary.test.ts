/**
 * What a branch changes, over real repositories: what is expected follows from what the branches were made to do.
 * Numbers: the peak of 110 N against a target of 100 N is a ratio of 1.1, worked by hand.
 */
import { execFileSync } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { baseOf } from '../../scripts/summary/base.ts'
import { summaryText } from '../../scripts/summary/text.ts'
import { digestOf } from '../../src/history/node/digest.ts'
import { BASE, card, item, meeting, rework, run, scale } from '../campaign/small.ts'
import { makeRepository, type Repository, repositoryIn, temporaryFolder } from '../history/repository.ts'
import { callWarm } from './warm.ts'

const FIRST = 'records/runs/2026-03/2026-03-08-0900-pull.md'
const ID = '2026-03-08-0900-pull'
const CARD = 'shared/cards/pull.md'
const at = (day: string): number => Date.parse(`${day}T12:00:00+01:00`) / 1000
const limit = (accept: string) => card({ criteria: `{reached: {accept: ${accept}, why: invented}}` })

/** The campaign with one run that passes, on the main line; then on a branch `test`. */
const begun = (files: Readonly<Record<string, string>> = {}): Repository => {
  const repository = makeRepository()
  repository.commit('begin', BASE, { by: 'Cy', at: at('2026-03-02') })
  repository.commit('run', { ...run('2026-03-08'), ...files }, { by: 'Ann', at: at('2026-03-08') })
  repository.branch('test')
  return repository
}

const summary = async ({ top }: Pick<Repository, 'top'>, base = 'main'): Promise<string> => {
  const found = baseOf(top, base)
  if (typeof found === 'string') return found
  const made = await summaryText(top, found, 'test', '2026-04-01')
  return 'why' in made ? made.why : made.text
}

/** The lines of a section, without its head. */
const part = (text: string, title: string): string => {
  const [, rest = ''] = text.split(`### ${title}`)
  return (rest.split('\n### ')[0] ?? '').trim()
}
const looks = (text: string) => part(text, 'Look at this first')

describe('little to say', () => {
  it('is one line where nothing changed in the records', async () => {
    const repository = begun()
    repository.commit('code', { 'README.md': 'x' })
    expect(await summary(repository)).toMatch(
      /^Nothing changed in the records since `[0-9a-f]{10}` \(main\)\.\n$/,
    )
  })
  it('is short where only prose changed', async () => {
    const repository = begun()
    repository.commit('prose', { [FIRST]: `${run('2026-03-08')[FIRST]}More.\n` })
    const text = await summary(repository)
    expect(text).toContain('1 changed run (1 pass)')
    expect(looks(text)).toBe('')
    expect(text.split('\n').length).toBeLessThan(30)
  })
})

describe('a new run', () => {
  const repository = begun()
  repository.commit('again', run('2026-03-20', 112), { by: 'Ann', at: at('2026-03-20') })
  it('stands with its verdict, value, limit and probability', async () => {
    const runs = part(await summary(repository), 'Runs')
    expect(runs).toContain('`2026-03-20-0900-pull` | new | ann | nobody yet | pass | reached |')
    expect(runs).toMatch(/\| 1\.12\d* ± 0\.0\d+ \| above 1 \| &gt; 99\.9 % \| pass \|/)
    expect(runs).not.toContain(ID)
  })
  it('of a card that had none changes the card and the gate', async () => {
    const other = makeRepository()
    other.commit('begin', BASE, { by: 'Cy', at: at('2026-03-02') })
    other.branch('test')
    other.commit('run', run('2026-03-08'), { by: 'Ann', at: at('2026-03-08') })
    const text = await summary(other)
    expect(part(text, 'Cards')).toContain('| not run, round 1 | **pass, round 1** |')
    expect(part(text, 'Closed: 1')).toContain('not run: Pull on the hook has not been run on frame')
    expect(part(text, 'Opened: 1')).toContain('proposed and not reviewed')
  })
  it('that fails says why, and which gate it holds', async () => {
    const other = begun()
    other.commit('fails', run('2026-03-20', 80), { by: 'Ann', at: at('2026-03-20') })
    const text = await summary(other)
    expect(text).toContain('1 new run (1 fail)')
    expect(part(text, 'Cards')).toContain('pass, round 1 | **fail, round 1**')
    expect(part(text, 'Gates')).toContain('fails in round 1')
  })
  it('counts although it is not committed yet, and that is said', async () => {
    const other = begun()
    for (const [path, text] of Object.entries(run('2026-03-20'))) other.write(path, text)
    const text = await summary(other)
    expect(text).toContain('1 file here not committed yet and counted in')
    expect(text).toContain('1 new run (1 pass)')
  })
})

describe('what is suspicious comes first', () => {
  it('a reading that was changed without a word', async () => {
    const repository = begun()
    repository.commit('change', run('2026-03-08', 115), { by: 'Ann', at: at('2026-03-10') })
    const text = await summary(repository)
    expect(text.indexOf('Look at this first')).toBeLessThan(text.indexOf('### Runs'))
    expect(looks(text)).toContain(`**record changed**: ${ID} was there before: 2 of 2 without an amendment`)
    expect(looks(text)).toContain('readings row 2 column load: 110.0 → 115.0')
    expect(part(text, 'Runs')).toMatch(/\(was 1\.10\d* ± 0\.0\d+\)/)
  })
  it('a change with its amendment, as such', async () => {
    const repository = begun()
    const amendments = `[{when: 2026-03-10T09:00+01:00, by: ann, at: witness, was: bob, why: typed wrong}]`
    repository.commit('change', run('2026-03-08', 110, { witness: 'cy', amendments }), { by: 'Ann' })
    const text = looks(await summary(repository))
    expect(text).toContain('each with an amendment')
    expect(text).toContain('witness: bob → cy')
  })
  it('a limit that moved, a card off a gate, a run gone', async () => {
    const repository = begun()
    const files = {
      ...limit('peak_ratio >= 0.5'),
      'shared/cards/other.md': (card()[CARD] ?? '').replace('Pull', 'Push'),
    }
    repository.go('main')
    repository.commit('other', {
      'shared/cards/other.md': files['shared/cards/other.md'],
      'shared/gates/fly.md': '---\ntitle: Fly\norder: 1\ncards: [pull, other]\n---\n',
    })
    repository.git('checkout', '-q', '-B', 'test')
    repository.commit('weaken', {
      ...limit('peak_ratio >= 0.5'),
      'shared/gates/fly.md': '---\ntitle: Fly\norder: 1\ncards: [pull]\n---\n',
      [FIRST]: null,
    })
    const text = looks(await summary(repository))
    expect(text).toContain(`**limit moved**: ${CARD}, by which 1 run is judged`)
    expect(text).toContain('criteria reached accept: peak\\_ratio &gt;= 1 → peak\\_ratio &gt;= 0.5')
    expect(text).toContain('cards: pull, other → pull')
    expect(text).toContain(`**run gone**: ${ID} is taken away; it was pass, and its page stays`)
    expect(text).toContain('The card other was taken off the gate Fly')
  })
  it('a lapsed calibration, the same readings twice, one person in two roles', async () => {
    const repository = begun(
      scale({ calibrations: '[{on: 2026-01-10, due: 2026-03-15, by: lab, certificate: C-1}]' }),
    )
    repository.commit('run', run('2026-03-20', 110, { witness: 'ann' }), { by: 'Ann' })
    const text = looks(await summary(repository))
    expect(text).toContain('**calibration**: lc was not in calibration on 2026-03-20 (due 2026-03-15)')
    expect(text).toContain(`2026-03-20-0900-pull has the same readings as ${ID}`)
    expect(text).toContain('ann is both tester and witness')
    expect(text).not.toContain(`${ID} was`)
  })
  it('a run voided after the fact, with the verdict it would have', async () => {
    const repository = begun(run('2026-03-09', 80))
    const void_ = '{why: scale slipped, by: ann, when: 2026-03-12T09:00+01:00}'
    repository.commit('void', run('2026-03-09', 80, { void: void_ }), { by: 'Ann' })
    const text = await summary(repository)
    expect(looks(text)).toMatch(/voided after it had landed \(scale slipped\); it would be fail/)
    expect(part(text, 'Runs')).toContain('fail → **void, would be fail**')
  })
  it('a role that somebody was given', async () => {
    const repository = begun()
    const people = (BASE['shared/people.yaml'] ?? '').replace('roles: [record]', 'roles: [record, review]')
    repository.commit('roles', { 'shared/people.yaml': people })
    expect(looks(await summary(repository))).toContain('ann roles: record → record, review')
  })
  it('a review of own work; that of another person counts', async () => {
    const repository = begun()
    const path = 'records/runs/2026-03/2026-03-20-0900-pull.md'
    repository.commit('run', run('2026-03-20', 112, { by: '[ann, cy]' }), { by: 'Ann' })
    const id = '2026-03-20-0900-pull'
    const digest = digestOf(id, repository.git('rev-parse', `HEAD:${path}`), undefined)
    repository.commit('approve', {}, { by: 'Cy', body: `Reviewed-content: ${digest} ${id}` })
    const text = await summary(repository)
    expect(looks(text)).toContain(`**own review**: ${id}: the review by cy does not count: own work`)
    expect(part(text, 'Runs')).toContain('| nobody yet |')
    const other = begun()
    other.commit('run', run('2026-03-20', 112), { by: 'Ann' })
    const same = digestOf(id, other.git('rev-parse', `HEAD:${path}`), undefined)
    other.commit('approve', {}, { by: 'Cy', body: `Reviewed-content: ${same} ${id}` })
    const counted = await summary(other)
    expect(looks(counted)).toBe('')
    expect(part(counted, 'Runs')).toContain('| cy (trailer) |')
  })
  it('also where the history is not known: the files are compared all the same', async () => {
    const settings = {
      'shared/campaign.yaml': (BASE['shared/campaign.yaml'] ?? '').replace('main: main', 'main: trunk'),
    }
    const repository = begun(settings)
    repository.commit('change', run('2026-03-08', 115), { by: 'Ann' })
    const text = looks(await summary(repository))
    expect(text).toContain('readings row 2 column load: 110.0 → 115.0')
  })
  it('minutes of a meeting whose basis comes out differently now', async () => {
    const basis = `[{run: ${ID}, criterion: reached, verdict: pass, value: "1.10", U: "0.02"}]`
    const repository = begun(meeting('2026-03-10', { basis }))
    repository.commit('change', run('2026-03-08', 80), { by: 'Ann' })
    expect(looks(await summary(repository))).toContain('**differs from readiness record**')
  })
})

describe('other changes', () => {
  it('a rework: cards due again, and the record named', async () => {
    const repository = begun()
    repository.commit('rework', rework('2026-03-10'), { by: 'Ann' })
    const text = await summary(repository)
    expect(part(text, 'Cards')).toContain('pass, round 1 | **due again, round 2**')
    expect(part(text, 'Opened: 1')).toContain('is due again on frame after Hook changed')
    expect(part(text, 'Other changes')).toContain('`records/rework/2026-03-10-1200-change.md`: new')
  })
  it('a run that only got another name', async () => {
    const repository = begun()
    const other = 'records/runs/2026-03/2026-03-08-0900-pull-hook.md'
    repository.move(FIRST, other)
    repository.commit('rename')
    const text = await summary(repository)
    expect(looks(text)).toContain(`**run moved**: ${FIRST} is now ${other}, unchanged`)
    expect(text).not.toContain('run gone')
  })
  it('texts of records do nothing on the page', async () => {
    const repository = begun()
    const title = '"<img src=x onerror=alert(1)> @octocat | fixes #12 [x](http://evil.example)"'
    repository.commit('item', item('evil', { title, about: '[pull]' }))
    const text = await summary(repository)
    expect(text).not.toMatch(/<img|@octocat|#12|[^\\]\]\(|:\/\//)
    expect(part(text, 'Opened: 1')).toContain('&lt;img src=x onerror=alert(1)&gt;')
  })
  it('errors are counted at the head and listed with their places', async () => {
    const repository = begun()
    repository.commit('wrong', run('2026-03-20', 112, { by: '[nobody]' }))
    const text = await summary(repository)
    expect(text).toContain('**1 error in the files**')
    expect(part(text, 'Problems in the files')).toContain('2026-03-20-0900-pull.md:')
  })
})

describe('what it is compared with', () => {
  it('is where the branch began, whatever came to the main line since', async () => {
    const repository = begun()
    repository.commit('again', run('2026-03-20', 112), { by: 'Ann' })
    repository.go('main')
    repository.commit('meanwhile', run('2026-03-15', 113), { by: 'Ann' })
    repository.go('test')
    const text = await summary(repository)
    expect(text).toContain('1 new run (1 pass)')
    expect(text).not.toContain('2026-03-15')
  })
  it('in CI is the main line that the merge ref was made with', async () => {
    const repository = begun()
    repository.commit('again', run('2026-03-20', 112), { by: 'Ann' })
    repository.go('main')
    repository.commit('meanwhile', run('2026-03-15', 113), { by: 'Ann' })
    const clone = temporaryFolder()
    execFileSync('git', ['clone', '-q', repository.top, clone])
    const ci = repositoryIn(clone)
    ci.git('checkout', '-q', '--detach', 'origin/main')
    ci.git('merge', '-q', '--no-ff', '-m', 'merge ref', 'origin/test')
    ci.git('branch', '-q', '-D', 'main')
    const text = await summary({ top: clone })
    expect(text).toContain('(origin/main)')
    expect(text).toContain('1 new run (1 pass)')
    expect(text).not.toContain('2026-03-15')
    expect(part(text, 'Runs')).toContain('`2026-03-20-0900-pull` | new')
  })
  it('must be there; what to do is said where it is not', async () => {
    const repository = begun()
    expect(await summary(repository, 'mian')).toMatch(
      /^There is no branch, tag or commit mian here\. These are close: main\. .*git fetch origin mian/,
    )
    expect(await summary(repository, '--all')).toMatch(/^There is no branch/)
    expect(await summary({ top: temporaryFolder() })).toBe('There is no git repository here.')
    expect(await summary(makeRepository())).toBe('Nothing has been committed here yet.')
    repository.git('checkout', '-q', '--orphan', 'alone')
    repository.commit('alone')
    expect(await summary(repository)).toBe('This branch and main have no commit in common here.')
    const clone = temporaryFolder()
    execFileSync('git', ['clone', '-q', '--depth=1', '-b', 'test', `file://${repository.top}`, clone])
    expect(await summary({ top: clone })).toMatch(/shallow clone\. Fetch it whole: .*fetch-depth: 0/)
  })
  it('may hold the campaign in a folder below', async () => {
    const repository = begun()
    repository.git('mv', '-k', 'records', 'shared', 'README.md', '.')
    execFileSync('mkdir', [join(repository.top, 'type ä')])
    repository.git('mv', 'records', 'shared', 'type ä')
    repository.commit('below')
    repository.git('branch', '-q', '-f', 'main')
    const path = 'records/runs/2026-03/2026-03-20-0900-pull.md'
    repository.commit('again', { [`type ä/${path}`]: run('2026-03-20', 112)[path] ?? '' })
    const text = await summary({ top: join(repository.top, 'type ä') })
    expect(text).toContain('1 new run (1 pass)')
    expect(looks(text)).toBe('')
  })
})

describe('the command', () => {
  const call = (...args: string[]) => callWarm('summary', args, process.env)
  it('prints Markdown, or writes it', () => {
    const { top } = begun()
    const folder = mkdtempSync(join(tmpdir(), 'out-'))
    const out = join(folder, 'summary.md')
    const printed = call('main', '--root', top)
    expect([printed.status, printed.stderr]).toEqual([0, ''])
    expect(call('main', '--root', top, '--out', out).stdout).toBe('')
    expect(readFileSync(out, 'utf8')).toBe(printed.stdout)
    rmSync(folder, { recursive: true })
  })
  it('complains about a wrong call with status 2', () => {
    const { top } = begun()
    for (const args of [[], ['main', 'other'], ['nowhere'], ['main', '--as-of', '2026-02-30']]) {
      const { status, stdout, stderr } = call('--root', top, ...args)
      expect([status, stdout]).toEqual([2, ''])
      expect(stderr).not.toMatch(/^\s+at /m)
    }
  })
})
