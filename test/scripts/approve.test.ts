/** A review as lines of a commit message: for whom, of what, and who is refused. */
import { createHash } from 'node:crypto'
import { appendFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { trailers } from '../../scripts/approve/message.ts'
import { reviewFor } from '../../scripts/approve/review.ts'
import { parseIdentity, reviewerOf } from '../../scripts/approve/reviewer.ts'
import type { Person } from '../../src/format/types.ts'
import {
  card,
  idOf,
  MAJA,
  otherRun,
  runFile,
  type SmallRepository,
  smallRepository,
} from './small-repository.ts'

const PAUL = 'paul.ferrand@type7.example'
const CHIDI = 'chidi.okafor@type7.example'

let small: SmallRepository
const withRepository = () => {
  beforeEach(() => {
    small = smallRepository()
  })
  afterEach(() => small.remove())
}

const approve = (email: string, ...args: string[]) =>
  small.command('approve', args, { GIT_AUTHOR_NAME: 'whoever', GIT_AUTHOR_EMAIL: email })

/** The same without a process of its own: what would be printed. */
const outcome = async (email: string, ...texts: string[]) => {
  const identity = { name: 'whoever', email }
  const done = await reviewFor({
    root: small.root,
    here: small.root,
    texts,
    by: undefined,
    identity,
    tool: 'test',
  })
  return done.kind === 'reviewed' ? trailers(done.reviewed, done.reviewer) : `${done.kind}: ${done.text}`
}

/** As DEVELOPERS and the format of trailers say it, worked out here by hand: id, blob, blob of the data file. */
const digestOf = (path: string, data = '') => {
  const blob = small.git('rev-parse', `HEAD:${path}`).trim()
  return `sha256:${createHash('sha256')
    .update(`${idOf(path)}\0${blob}\0${data}`)
    .digest('hex')}`
}

describe('a review', () => {
  withRepository()
  it('is printed: one line a record, and who', () => {
    const { status, stdout, stderr } = approve(PAUL, idOf(runFile), otherRun, 'campaign', runFile)
    expect(stderr).toBe('')
    expect(status).toBe(0)
    const campaign = small.git('rev-parse', 'HEAD:shared/campaign.yaml').trim()
    const ofCampaign = createHash('sha256').update(`campaign\0${campaign}\0`).digest('hex')
    expect(stdout).toBe(
      `Reviewed-content: ${digestOf(runFile)} ${idOf(runFile)}\n` +
        `Reviewed-content: ${digestOf(otherRun)} ${idOf(otherRun)}\n` +
        `Reviewed-content: sha256:${ofCampaign} campaign\n` +
        `Reviewed-by: Paul Ferrand <${PAUL}>\n`,
    )
  })
  it('is a commit of its own, that git reads as trailers and that takes nothing along', () => {
    appendFileSync(join(small.root, otherRun), '\nStaged, and still staged afterwards.\n')
    small.git('add', '.')
    writeFileSync(join(small.root, 'loose.txt'), 'x')
    const before = small.git('status', '--porcelain')
    const { status, stdout, stderr } = approve(PAUL, idOf(runFile), '--commit')
    expect({ status, stderr }).toEqual({ status: 0, stderr: '' })
    expect(stdout).toMatch(/Committed as [0-9a-f]+\.\n$/)
    expect(small.git('status', '--porcelain')).toBe(before)
    expect(small.git('diff', 'HEAD~1', 'HEAD')).toBe('')
    expect(small.git('log', '-1', '--format=%s|%ae|%(trailers:unfold)')).toBe(
      `Review ${idOf(runFile)}|${PAUL}|Reviewed-content: ${digestOf(runFile)} ${idOf(runFile)}\nReviewed-by: Paul Ferrand <${PAUL}>\n\n`,
    )
    const again = approve(PAUL, idOf(runFile), '--commit')
    expect(again.status).toBe(0)
    expect(again.stderr).toContain('already')
    expect(small.git('rev-list', '--count', 'HEAD').trim()).toBe('2')
  })
  it('is refused of content that is not committed, and of a record with errors', async () => {
    appendFileSync(join(small.root, runFile), '\nOne more line.\n')
    expect(await outcome(PAUL, idOf(runFile))).toMatch(`refused: ${runFile}: not committed as it lies there`)
    small.edit(runFile, /^by: .*$/m, 'by: [nobody-known]')
    small.git('commit', '-qam', 'Wrong')
    expect(await outcome(PAUL, idOf(runFile))).toMatch(/^refused: .* has errors/)
    small.edit(card, /accept: .*$/m, 'accept: leak_rate < 6 kg')
    small.git('commit', '-qam', 'A limit in the wrong unit')
    expect(await outcome(PAUL, idOf(card))).toMatch(/^refused: hull-bay-leak has errors/)
  })
  it('is refused of a data file that is not committed', async () => {
    writeFileSync(join(small.root, runFile.replace(/md$/, 'csv')), 't;P\n')
    expect(await outcome(PAUL, idOf(runFile))).toContain('.csv: not committed as it lies there')
  })
  it('is refused to whoever made the run, was its witness, or wrote the card', async () => {
    small.edit(runFile, /^by: .*$/m, 'by: [pferrand]')
    small.edit(card, /^title: .*$/m, 'title: Hull bay, another title')
    small.as(PAUL, 'commit', '-qam', 'By Paul')
    expect(await outcome(PAUL, idOf(runFile), idOf(card))).toBe(
      `refused: ${idOf(runFile)}: Paul Ferrand made the run; a second person must review it.\n` +
        'hull-bay-leak: Paul Ferrand wrote it as it is now; a second person must review it.',
    )
    expect(await outcome(CHIDI, idOf(runFile))).toContain('was its witness')
    expect(await outcome(CHIDI, idOf(card))).toMatch(/^Reviewed-content: sha256:\w+ hull-bay-leak\n/)
  })
  it('is refused for want of the role, and to whom nobody knows', async () => {
    expect(await outcome(MAJA, idOf(runFile))).toMatch(
      /^refused: .*has not the role review.*yaoki, pferrand, cokafor, ktamm/,
    )
    expect(await outcome('stranger@type7.example', idOf(runFile))).toContain("nobody's in shared/people.yaml")
  })
  it('says what is close where there is no such record', async () => {
    expect(await outcome(PAUL, 'hull-bay-leek')).toMatch(/^wrong-call: .*hull-bay-leak/)
    expect(await outcome(PAUL, '../other.md')).toMatch(/^wrong-call: There is no record/)
  })
  it('is not possible without the history', async () => {
    small.call('rm', ['-rf', '.git'])
    expect(await outcome(PAUL, idOf(runFile))).toMatch(/^refused: .+\.\n.+/)
  })
  it('complains of a wrong call with status 2', () => {
    for (const args of [[], ['--list', idOf(runFile)], ['hull-bay-leek']]) {
      const { status, stdout, stderr } = approve(PAUL, ...args)
      expect({ status, stdout }).toEqual({ status: 2, stdout: '' })
      expect(stderr).not.toMatch(/^\s+at /m)
    }
  })
})

describe('what awaits a review', () => {
  withRepository()
  it('is listed until it is reviewed', () => {
    const before = approve(PAUL, '--list')
    expect(before.status).toBe(0)
    expect(before.stdout).toContain('Runs that await a review: 2')
    expect(before.stdout).toMatch(new RegExp(`${idOf(runFile)} +pass +recorded by mlindqvist`))
    expect(before.stdout).toMatch(
      / {2}The limit of .*, and 1 more of this kind\n {4}closed by a review of hull-bay-leak/,
    )
    approve(PAUL, idOf(runFile), '--commit')
    const after = approve(PAUL, '--list').stdout
    expect(after).toContain('Runs that await a review: 1')
    expect(after).not.toMatch(new RegExp(`^  ${idOf(runFile)}`, 'm'))
  })
})

describe('who reviews', () => {
  const person = (id: string, roles: Person['roles'], ...emails: string[]): Person => ({
    id,
    name: id.toUpperCase(),
    emails,
    roles,
  })
  const people = {
    ann: person('ann', ['review'], 'Ann@x.example', 'ann@home.example'),
    ben: person('ben', ['review'], 'ben@x.example'),
    eve: person('eve', ['record'], 'eve@x.example'),
    nil: person('nil', ['review']),
  }
  const git = (email: string) => ({ name: 'whoever', email })
  it('is whom git knows, whatever the case of letters', () => {
    expect(reviewerOf(people, git('ANN@home.example'), undefined)).toMatchObject({
      person: { id: 'ann' },
      email: 'ANN@home.example',
      remark: null,
    })
    expect(reviewerOf(people, git('ann@x.example'), 'ann')).toMatchObject({
      person: { id: 'ann' },
      remark: null,
    })
  })
  it('may be named where git knows nobody, and that is said', () => {
    expect(reviewerOf(people, git('hangar@x.example'), 'ben')).toMatchObject({
      email: 'ben@x.example',
      remark: expect.stringContaining('the word in the commit alone'),
    })
    expect(reviewerOf(people, null, 'ben')).toMatchObject({ email: 'ben@x.example' })
  })
  it('is never somebody else', () => {
    expect(reviewerOf(people, git('eve@x.example'), 'ben')).toMatch(/nobody reviews for somebody else/)
    expect(reviewerOf(people, git('ben@x.example'), 'ann')).toMatch(/nobody reviews for somebody else/)
  })
  it('is refused in words', () => {
    expect(reviewerOf(people, null, undefined)).toContain('git config user.email')
    expect(reviewerOf(people, git('eve@x.example'), undefined)).toContain('These have: ann, ben, nil')
    expect(reviewerOf({}, null, 'ann')).toContain('There is no ann')
    expect(reviewerOf(people, null, 'nil')).toContain('no e-mail')
    expect(reviewerOf({ eve: people.eve }, git('eve@x.example'), undefined)).toContain('Nobody has it')
  })
  it('stands in what git prints of an identity', () => {
    // Form of `git var GIT_AUTHOR_IDENT`, git-var(1).
    expect(parseIdentity('Eric W. Biederman <ebiederm@lnxi.com> 1121223278 -0600')).toEqual({
      name: 'Eric W. Biederman',
      email: 'ebiederm@lnxi.com',
    })
    expect(parseIdentity(' <> 1 +0000')).toBeNull()
    expect(parseIdentity(null)).toBeNull()
  })
})
