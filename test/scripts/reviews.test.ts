/** The step of CI that asks the forge, in a real repository and against a server that answers as the API documents. */
import { spawn } from 'node:child_process'
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterEach, beforeEach, expect, it } from 'vitest'
import { readHistory } from '../../src/history/node/read.ts'
import { type Forge, type ForgeData, startForge } from '../history/forge/server.ts'
import { home, runFile, type SmallRepository, smallRepository } from './small-repository.ts'

const TOKEN = 'a-secret-that-is-never-printed'
let small: SmallRepository
let forge: Forge
let data: ForgeData
/** Commits of the main line that touch records, oldest first. */
let line: string[]
let blob: string

const hash = (revision: string) => small.git('rev-parse', revision).trim()

beforeEach(async () => {
  small = smallRepository()
  const first = hash('HEAD')
  small.git('checkout', '-qb', 'topic')
  small.edit(runFile, /^witness: .*$/m, 'witness: [dreyes]')
  small.git('commit', '-qam', 'Change a run')
  const head = hash('HEAD')
  blob = hash(`HEAD:${runFile}`)
  small.git('checkout', '-q', 'main')
  writeFileSync(join(small.root, 'other.txt'), 'x')
  small.git('add', '.')
  small.git('commit', '-qm', 'Nothing of the records')
  small.git('merge', '-q', '--no-ff', '-m', 'Merge pull request 7', 'topic')
  line = [first, hash('HEAD')]
  data = {
    commits: { [first]: [], [hash('HEAD')]: [7] },
    pulls: {
      7: {
        head,
        reviews: [{ login: 'cokafor-t7', state: 'APPROVED', commit: head, when: '2026-03-05T09:30:00Z' }],
        files: [{ filename: runFile, status: 'modified', sha: blob }],
      },
    },
  }
  forge = await startForge(data)
})
afterEach(async () => {
  await forge.close()
  small.remove()
})

/** Not `spawnSync`: the server answers in this very process. */
const reviews = (args: string[] = [], env: Record<string, string> = {}) =>
  new Promise<{ status: number | null; stdout: string; stderr: string }>((resolve) => {
    const child = spawn(process.execPath, ['scripts/run.mjs', 'reviews', '--root', small.root, ...args], {
      cwd: home,
      env: {
        ...process.env,
        GITHUB_API_URL: forge.url,
        GITHUB_REPOSITORY: 'octocat/Hello-World',
        GITHUB_TOKEN: TOKEN,
        FORGE_TOKEN: '',
        ...env,
      },
    })
    let stdout = ''
    let stderr = ''
    child.stdout.on('data', (chunk: Buffer) => {
      stdout += chunk.toString('utf8')
    })
    child.stderr.on('data', (chunk: Buffer) => {
      stderr += chunk.toString('utf8')
    })
    child.on('close', (status) => resolve({ status, stdout, stderr }))
  })

const written = () => JSON.parse(readFileSync(join(small.root, '.reviews.json'), 'utf8')) as unknown
const pull = () => ({
  number: 7,
  commits: [line[1]],
  approvals: [{ login: 'cokafor-t7', commit: data.pulls[7]?.head, when: '2026-03-05T09:30:00Z' }],
  files: { [runFile]: blob },
})

it('asks about commits of the main line that touch records, and writes what history reads', async () => {
  const { status, stdout, stderr } = await reviews()
  expect(stderr).toBe('')
  expect(status).toBe(0)
  expect(stdout).toContain('2 commits of 2 asked about, 1 pull request, 1 approval of a last state')
  expect(forge.requests.map(({ path }) => path.replace('/repos/octocat/Hello-World/', ''))).toEqual([
    `commits/${line[1]}/pulls?per_page=100`,
    'pulls/7/reviews?per_page=100',
    'pulls/7/files?per_page=100',
    `commits/${line[0]}/pulls?per_page=100`,
  ])
  expect(written()).toEqual({ schema: 1, asked: [...line].sort(), pulls: [pull()] })
  const history = await readHistory(small.root, { main: 'main' })
  expect(history).toMatchObject({ state: 'known', pulls: [pull()] })
})

it('asks only what it does not know, and all of it with --fresh', async () => {
  await reviews()
  const before = written()
  data.pulls[7]?.reviews.push({ login: 'cokafor-t7', state: 'DISMISSED', commit: null })
  forge.requests.length = 0
  expect((await reviews()).status).toBe(0)
  expect(forge.requests).toEqual([])
  expect(written()).toEqual(before)
  expect((await reviews(['--fresh'])).status).toBe(0)
  expect(written()).toMatchObject({ pulls: [{ number: 7, approvals: [] }] })
  writeFileSync(join(small.root, '.reviews.json'), '{')
  const { stderr, status } = await reviews()
  expect(status).toBe(0)
  expect(stderr).toContain('damaged')
})

it('takes the repository from campaign.yaml, and records that lie in a folder of it', async () => {
  const inner = join(small.root, 'type 7')
  mkdirSync(inner)
  small.git('mv', 'records', 'shared', 'type 7')
  small.edit(
    'type 7/shared/campaign.yaml',
    /^main: main$/m,
    'main: main\nforge: https://github.com/octocat/Hello-World',
  )
  small.git('commit', '-qam', 'Into a folder')
  const head = hash('HEAD')
  data.commits[head] = [8]
  const file = { filename: `type 7/${runFile}`, status: 'renamed', sha: blob }
  data.pulls[8] = { head, reviews: [{ login: 'octocat', state: 'APPROVED', commit: head }], files: [file] }
  const { status, stderr } = await reviews(['--root', inner, '--api', forge.url], {
    GITHUB_API_URL: '',
    GITHUB_REPOSITORY: '',
  })
  expect({ status, stderr }).toEqual({ status: 0, stderr: '' })
  expect(JSON.parse(readFileSync(join(inner, '.reviews.json'), 'utf8'))).toMatchObject({
    asked: [head],
    pulls: [{ number: 8, commits: [head], files: { [runFile]: blob } }],
  })
})

it('keeps what it found where the forge stops answering, says so, and never prints the token', async () => {
  forge.trouble = (request, response) => {
    if (!request.path.includes(String(line[0]))) return false
    response.writeHead(403, { 'x-ratelimit-remaining': '0', 'x-ratelimit-reset': '99999999999' })
    response.end(JSON.stringify({ message: `limit for ${TOKEN}` }))
    return true
  }
  const { status, stdout, stderr } = await reviews()
  expect(status).toBe(1)
  expect(stderr).toContain('limits how often it is asked')
  expect(written()).toEqual({ schema: 1, asked: [line[1]], pulls: [pull()] })
  expect(stdout + stderr + JSON.stringify(written())).not.toContain(TOKEN)
})

it('complains in words: no repository, no main line, a file that is in git, an API in the open', async () => {
  const wrong = async (args: string[], env: Record<string, string> = {}) => {
    const { status, stderr } = await reviews(args, env)
    expect(status).toBe(2)
    expect(stderr).not.toMatch(/^\s+at /m)
    return stderr
  }
  expect(await wrong([], { GITHUB_REPOSITORY: '' })).toContain('which repository')
  expect(await wrong(['--api', 'http://forge.example'])).toContain('in the open')
  expect(await wrong(['--out', join(small.root, 'other.txt')])).toContain('kept in git')
  expect(await wrong(['--out', join(small.root, 'nowhere/x.json')])).toContain('could not be written')
  small.git('checkout', '-q', '--detach')
  small.git('branch', '-qD', 'main')
  expect(await wrong([])).toContain('There is no branch main')
  small.call('rm', ['-rf', '.git'])
  expect(await wrong([])).toContain('no git repository')
  expect(existsSync(join(small.root, '.reviews.json'))).toBe(false)
})

it('says that a shallow clone is cut off', async () => {
  const clone = join(small.root, 'clone')
  small.git('clone', '-q', '--depth', '1', `file://${small.root}`, clone)
  const { status, stderr } = await reviews(['--root', clone])
  expect(status).toBe(2)
  expect(stderr).toContain('git fetch --unshallow')
})
