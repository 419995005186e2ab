/** Commits as old programs, importers and damaged clocks leave them. What git prints of them is the reference. */
import { execFileSync } from 'node:child_process'
import { expect, it } from 'vitest'
import { parseLog } from '../../src/history/log.ts'
import { known, makeRepository, type Repository } from './repository.ts'

/** A commit written byte by byte, on top of what is there. */
const raw = ({ top, git }: Repository, head: readonly string[], message: string | Buffer): void => {
  const tree = git('rev-parse', 'HEAD^{tree}')
  const lines = [`tree ${tree}`, `parent ${git('rev-parse', 'HEAD')}`, ...head, '', ''].join('\n')
  const input = Buffer.concat([Buffer.from(lines), Buffer.from(message)])
  const args = ['-C', top, 'hash-object', '-t', 'commit', '-w', '--stdin', '--literally']
  git('reset', '-q', '--soft', execFileSync('git', args, { input, encoding: 'utf8' }).trim())
}

const newest = async ({ top }: Repository) => {
  const { commits, head } = await known(top)
  return commits.get(head)
}

const begun = (): Repository => {
  const repository = makeRepository()
  repository.commit('begin', { 'shared/people.yaml': 'ada' })
  return repository
}

const byAda = (time: string) => [
  `author Ada <ada@example.org> ${time}`,
  `committer Ada <ada@example.org> ${time}`,
]

for (const time of ['1772438400 +0545', '1772438400 -0930', '0 +0000', '4102444800 -0000']) {
  it(`the time ${time} as git prints it`, async () => {
    const repository = begun()
    raw(repository, byAda(time), 'odd\n')
    const printed = repository.git('log', '-1', '--format=%ad', '--date=format:%Y-%m-%dT%H:%M:%S%z')
    const commit = await newest(repository)
    expect(commit?.authored.replace(/:(\d\d)$/, '$1')).toBe(printed)
    expect(commit?.epoch).toBe(Number(time.split(' ')[0]) * 1000)
  })
}

it('no date at all, and nobody', async () => {
  const repository = begun()
  raw(repository, ['author  <> 99999999999999999999 +0000', 'committer nobody'], 'odd\n')
  expect(await newest(repository)).toMatchObject({
    subject: 'odd',
    author: { name: '', email: '' },
    authored: '1970-01-01T00:00:00+00:00',
    epoch: 0,
  })
})

it('a message in another encoding', async () => {
  const repository = begun()
  const message = Buffer.from('Flügel geprüft\n', 'latin1')
  raw(repository, [...byAda('1772438400 +0100'), 'encoding ISO-8859-1'], message)
  expect((await newest(repository))?.subject).toBe('Flügel geprüft')
})

it('a message with line ends of Windows, folded lines, and lines that look like those of git', async () => {
  const repository = begun()
  const message = [
    'one',
    'subject',
    '',
    ':100644 100644 aaaa bbbb M',
    'commit 0000',
    '',
    'Reviewed-by: Bea',
    ' <bea@example.org>',
    'Note: x',
    '',
    '',
    'Last:  y ',
  ].join('\r\n')
  raw(repository, byAda('1772438400 +0100'), message)
  expect(await newest(repository)).toMatchObject({
    subject: 'one subject',
    trailers: [
      { key: 'Reviewed-by', value: 'Bea <bea@example.org>', paragraph: 2 },
      { key: 'Note', value: 'x', paragraph: 2 },
      { key: 'Last', value: 'y', paragraph: 3 },
    ],
  })
})

it('a commit without any message', async () => {
  const repository = begun()
  raw(repository, byAda('1772438400 +0100'), '')
  repository.commit('after it', { 'shared/people.yaml': 'bea' })
  const { line, commits, files } = await known(repository.top)
  expect(line.map((hash) => commits.get(hash)?.subject)).toEqual(['begin', '', 'after it'])
  expect(files.get('shared/people.yaml')?.landed).toHaveLength(2)
})

it('nothing, or text that is not of git, is no commit', () => {
  expect(parseLog('', () => true)).toEqual([])
  expect(parseLog('fatal: something', () => true)).toEqual([])
})
