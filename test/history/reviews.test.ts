/** Reviews in messages, signed or not, and the file of the forge. The digest ties each to content. */
import { execFileSync } from 'node:child_process'
import { writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, it } from 'vitest'
import { trailerReviews } from '../../src/history/reviews.ts'
import type { KnownHistory } from '../../src/history/types.ts'
import { known, makeRepository, type Repository, temporaryFolder } from './repository.ts'

const RUN = 'records/runs/2026-03/2026-03-02-leak.md'
const ID = '2026-03-02-leak'
const OTHER = 'records/runs/2026-03/2026-03-02-other.md'

const withRun = (): Repository => {
  const repository = makeRepository()
  repository.commit('begin', { [RUN]: 'read 4', [OTHER]: 'read 5' })
  return repository
}

const digestIn = async ({ top }: Repository, path = RUN) => (await known(top)).digests.get(path) ?? ''

/** Without hashes: who reviewed what, in which commit, and whether it is what lies there now. */
const told = (history: KnownHistory) =>
  trailerReviews(history).map(({ digest, record, email, commit, signature, signer }) => ({
    record,
    email,
    in: history.commits.get(commit)?.subject,
    now: [...history.digests.values()].includes(digest),
    signature,
    signer,
  }))

const review = {
  record: ID,
  email: 'bea@example.org',
  in: 'approve',
  now: true,
  signature: 'none',
  signer: null,
}

it('a trailer in a commit of its own, by the person it names', async () => {
  const repository = withRun()
  const body = `Reviewed-content: ${await digestIn(repository)} ${ID}\nReviewed-by: Bea <bea@example.org>`
  repository.commit('approve', {}, { body })
  expect(told(await known(repository.top))).toEqual([review])
})

it('where nobody is named, the author', async () => {
  const repository = withRun()
  repository.commit(
    'approve',
    {},
    { by: 'Bea', body: `Reviewed-content: ${await digestIn(repository)} ${ID}` },
  )
  expect(told(await known(repository.top))).toEqual([review])
})

it('content that changed since is other content', async () => {
  const repository = withRun()
  const body = `Reviewed-content: ${await digestIn(repository)} ${ID}\nReviewed-by: Bea <bea@example.org>`
  repository.commit('approve', {}, { body })
  repository.commit('edit', { [RUN]: 'read 3' })
  expect(told(await known(repository.top))).toEqual([{ ...review, now: false }])
})

it('on a branch it counts once the branch is merged; not before', async () => {
  const repository = withRun()
  repository.branch('test')
  const body = `Reviewed-content: ${await digestIn(repository)} ${ID}\nReviewed-by: Bea <bea@example.org>`
  repository.commit('approve', {}, { body })
  expect(told(await known(repository.top))).toEqual([])
  repository.go('main')
  repository.merge('test', 'merge')
  expect(told(await known(repository.top))).toEqual([review])
})

it('a squash keeps the reviews of several people apart, in the middle of its message', async () => {
  const repository = withRun()
  const body = [
    '* read again',
    '',
    `Reviewed-content: ${await digestIn(repository)} ${ID}`,
    'Reviewed-by: Bea <bea@example.org>',
    '',
    '* and the other one',
    '',
    `Reviewed-content: ${await digestIn(repository, OTHER)} 2026-03-02-other`,
    'Reviewed-by: Cleo <cleo@example.org>',
    '',
    'Co-authored-by: Ada <ada@example.org>',
  ].join('\n')
  repository.commit('approve', {}, { body })
  expect(told(await known(repository.top))).toEqual([
    review,
    { ...review, record: '2026-03-02-other', email: 'cleo@example.org' },
  ])
})

it('a review beside which nobody is named, in a message that names several, is nobody’s', async () => {
  const repository = withRun()
  const body = [
    `Reviewed-content: ${await digestIn(repository)} ${ID}`,
    '',
    'Reviewed-by: Bea <bea@example.org>',
    '',
    'Reviewed-by: Cleo <cleo@example.org>',
  ].join('\n')
  repository.commit('approve', {}, { body })
  expect(told(await known(repository.top))).toEqual([])
})

it('no digest, no review; a subject is no trailer', async () => {
  const repository = withRun()
  repository.commit(`Reviewed-content: ${await digestIn(repository)} ${ID}`)
  repository.commit('approve', {}, { body: `Reviewed-content: ${ID}\nReviewed-by: Bea <bea@example.org>` })
  repository.commit('note', {}, { body: `It says "Reviewed-content: ${await digestIn(repository)} ${ID}".` })
  expect(told(await known(repository.top))).toEqual([])
})

const pull = {
  number: 3,
  commits: ['a'.repeat(40)],
  approvals: [{ login: 'bea', commit: 'b'.repeat(40), when: '2026-03-02T10:00:00Z' }],
  files: { [RUN]: 'c'.repeat(40) },
}
const file = JSON.stringify({ schema: 1, asked: [], pulls: [pull] })

it('the file of the forge is read where it lies untracked', async () => {
  const { top } = withRun()
  writeFileSync(join(top, '.reviews.json'), file)
  expect((await known(top)).pulls).toEqual([pull])
  writeFileSync(join(top, 'elsewhere.json'), file)
  expect((await known(top, 'elsewhere.json')).pulls).toEqual([pull])
})

for (const how of ['staged', 'committed']) {
  it(`a ${how} one is not believed: anyone could have written it`, async () => {
    const repository = withRun()
    writeFileSync(join(repository.top, '.reviews.json'), file)
    if (how === 'committed') repository.commit('approve myself')
    else repository.git('add', '-f', '.reviews.json')
    const { pulls, notes } = await known(repository.top)
    expect(pulls).toEqual([])
    expect(notes).toEqual(['.reviews.json is committed, and so is not believed: take it out of git'])
  })
}

for (const broken of [
  '{',
  '[]',
  '{"schema": 2, "pulls": []}',
  '{"schema": 1, "pulls": [{"number": 1}]}',
  '',
]) {
  it(`one that is none is a note: ${broken}`, async () => {
    const { top } = withRun()
    writeFileSync(join(top, '.reviews.json'), broken)
    const { pulls, notes } = await known(top)
    expect({ pulls, notes }).toEqual({
      pulls: [],
      notes: ['.reviews.json cannot be read as reviews of a forge: write it anew'],
    })
  })
}

const hasKeys = (() => {
  try {
    execFileSync('ssh-keygen', ['-?'], { stdio: 'pipe' })
    return true
  } catch (error) {
    return !(error instanceof Error && 'code' in error && error.code === 'ENOENT')
  }
})()

/** Keys of two people, of whom only Bea is vouched for. */
const withKeys = (): Repository & { use: (who: string) => void } => {
  const repository = withRun()
  const folder = temporaryFolder()
  for (const who of ['bea', 'mallory']) {
    execFileSync('ssh-keygen', ['-q', '-t', 'ed25519', '-N', '', '-C', who, '-f', join(folder, who)])
  }
  const key = execFileSync('ssh-keygen', ['-y', '-f', join(folder, 'bea')], { encoding: 'utf8' })
  writeFileSync(join(folder, 'allowed'), `bea@example.org ${key}`)
  repository.git('config', 'gpg.format', 'ssh')
  repository.git('config', 'gpg.ssh.allowedSignersFile', join(folder, 'allowed'))
  return { ...repository, use: (who) => void repository.git('config', 'user.signingKey', join(folder, who)) }
}

it.skipIf(!hasKeys)('a signed review is checked, and whose key it is', async () => {
  const repository = withKeys()
  const body = `Reviewed-content: ${await digestIn(repository)} ${ID}\nReviewed-by: Bea <bea@example.org>`
  repository.use('bea')
  repository.commit('approve', {}, { body, sign: true })
  repository.use('mallory')
  repository.commit('approve too', {}, { body, sign: true })
  repository.commit('signed, no review', {}, { sign: true })
  const history = await known(repository.top)
  const by = (one: { in: string | undefined }, other: { in: string | undefined }) =>
    `${one.in}` < `${other.in}` ? -1 : 1
  expect(told(history).sort(by)).toEqual([
    { ...review, signature: 'good', signer: 'bea@example.org' },
    { ...review, in: 'approve too', signature: 'not-checked' },
  ])
  const signatures = [...history.commits.values()].map(({ subject, signature }) => [subject, signature])
  expect(Object.fromEntries(signatures)).toEqual({
    approve: 'good',
    'approve too': 'not-checked',
    begin: 'none',
    'signed, no review': 'not-checked',
  })
})

it.skipIf(!hasKeys)('a message that was changed under its signature is bad', async () => {
  const repository = withKeys()
  repository.use('bea')
  const digests = [await digestIn(repository, OTHER), await digestIn(repository)] as const
  const body = `Reviewed-content: ${digests[0]} ${ID}\nReviewed-by: Bea <bea@example.org>`
  repository.commit('approve', {}, { body, sign: true })
  const forged = repository.git('cat-file', 'commit', 'HEAD').replace(digests[0], digests[1])
  const hash = execFileSync('git', ['-C', repository.top, 'hash-object', '-t', 'commit', '-w', '--stdin'], {
    input: `${forged}\n`,
    encoding: 'utf8',
  }).trim()
  repository.git('reset', '-q', '--hard', hash)
  expect(told(await known(repository.top))).toEqual([{ ...review, signature: 'bad' }])
})
