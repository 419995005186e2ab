/** Asking the forge: paging, limits, faults of the network, and where the token goes. */
import { createServer } from 'node:http'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { NO_REVIEWS } from '../../../src/history/forge/file.ts'
import { gather } from '../../../src/history/forge/gather.ts'
import { askForge } from '../../../src/history/forge/node/fetch.ts'
import { type Forge, type ForgeData, startForge, type Trouble } from './server.ts'

const sha = (digit: number | string) => String(digit).repeat(40).slice(0, 40)
const TOKEN = 'a-secret-that-is-never-printed'

const data: ForgeData = {
  commits: { [sha(1)]: [11], [sha(2)]: [12, 13, 14], [sha(3)]: [], [sha(4)]: [11] },
  pulls: {
    11: {
      head: sha('a'),
      reviews: [
        { login: 'octocat', state: 'APPROVED', commit: sha('9') },
        ...Array.from({ length: 130 }, () => ({ login: 'octocat', state: 'COMMENTED', commit: sha('a') })),
        { login: 'hubot', state: 'APPROVED', commit: sha('a'), when: '2026-03-05T09:30:00Z' },
      ],
      files: [
        ...Array.from({ length: 250 }, (_, index) => ({
          filename: `records/runs/2026-03/run-${index}.md`,
          sha: sha('b'),
        })),
        { filename: 'records/runs/2026-03/gone.md', status: 'removed', sha: sha('c') },
        { filename: 'src/other.ts', sha: sha('d') },
      ],
    },
    12: { head: sha('e'), reviews: [], files: [] },
    13: { head: sha('e'), base: 'another-branch', reviews: [], files: [] },
    14: { head: sha('e'), merged: false, reviews: [], files: [] },
  },
}

let forge: Forge
let pauses: number[]
let said: string[]
const commits = [sha(1), sha(2), sha(3), sha(4)]

beforeEach(async () => {
  forge = await startForge(data)
  pauses = []
  said = []
})
afterEach(() => forge.close())

const ask = (api = forge.url) =>
  askForge({
    api,
    repository: 'octocat/Hello-World',
    token: TOKEN,
    pause: async (time) => void pauses.push(time),
    now: () => Date.parse('2026-03-05T10:00:00Z'),
    say: (text) => void said.push(text),
  })

const all = (known = NO_REVIEWS, prefix = '') => gather(ask(), { commits, known, main: 'main', prefix })

/** Answers so the first `times` times, then lets the forge answer. */
const first =
  (times: number, status: number, headers: Record<string, string> = {}, body = '{}'): Trouble =>
  (_request, response, count) => {
    if (count > times) return false
    response.writeHead(status, headers)
    response.end(body)
    return true
  }

describe('what it finds', () => {
  it('is whole over all pages: pull requests that were merged into the main line', async () => {
    const { pulls, asked, notes, stopped } = await all()
    expect({ notes, stopped, asked: asked.length }).toEqual({ notes: [], stopped: null, asked: 4 })
    expect(pulls.map(({ number, commits }) => [number, commits])).toEqual([
      [11, [sha(1), sha(4)]],
      [12, [sha(2)]],
    ])
    expect(pulls[0]?.approvals).toEqual([{ login: 'hubot', commit: sha('a'), when: '2026-03-05T09:30:00Z' }])
    expect(Object.keys(pulls[0]?.files ?? {})).toHaveLength(250)
    expect(pulls[0]?.files).not.toHaveProperty(['src/other.ts'])
    const paged = forge.requests.filter(({ path }) => path.includes('/pulls/11/files'))
    expect(paged.map(({ path }) => new URL(path, forge.url).searchParams.get('page'))).toEqual([
      null,
      '2',
      '3',
    ])
    expect(forge.requests.every(({ path }) => path.includes('per_page=100'))).toBe(true)
  })
  it('says who asks and which version of the API', async () => {
    await all()
    expect(forge.requests[0]?.headers).toMatchObject({
      authorization: `Bearer ${TOKEN}`,
      accept: 'application/vnd.github+json',
      'x-github-api-version': '2022-11-28',
    })
  })
  it('asks only about commits that it does not know yet', async () => {
    const before = await gather(ask(), {
      commits: commits.slice(0, 3),
      known: NO_REVIEWS,
      main: 'main',
      prefix: '',
    })
    forge.requests.length = 0
    const now = await all(before)
    expect(forge.requests.map(({ path }) => path)).toEqual([
      `/repos/octocat/Hello-World/commits/${sha(4)}/pulls?per_page=100`,
    ])
    expect(now).toEqual(await all())
  })
  it('asks about all of them anew, and keeps what it does not reach again', async () => {
    const before = await all()
    const changed = before.pulls.map((pull) => ({ ...pull, approvals: [], files: {} }))
    const known = {
      asked: before.asked,
      pulls: [...changed, ...changed.slice(0, 1).map((pull) => ({ ...pull, number: 99, commits: [sha(3)] }))],
    }
    const again = (of = known) => gather(ask(), { commits, known: of, main: 'main', prefix: '', fresh: true })
    expect(await again()).toEqual(before)
    forge.trouble = (request, response) => {
      if (!request.path.includes(sha(2))) return false
      response.writeHead(401)
      response.end()
      return true
    }
    const { pulls, stopped } = await again()
    expect(stopped).toContain('401')
    expect(pulls.map(({ number, approvals }) => [number, approvals.length])).toEqual([
      [11, 1],
      [12, 0],
      [99, 0],
    ])
  })
  it('forgets what is no longer on the main line', async () => {
    const before = await all()
    const now = await gather(ask(), { commits: [sha(2)], known: before, main: 'main', prefix: '' })
    expect(now.asked).toEqual([sha(2)])
    expect(now.pulls.map(({ number }) => number)).toEqual([12])
  })
  it('takes paths from the folder of the records', async () => {
    const { pulls } = await gather(
      {
        pulls: async () => ({
          kind: 'list',
          value: [{ number: 1, head: sha('a'), base: 'main', merged: true }],
        }),
        reviews: async () => ({ kind: 'list', value: [] }),
        files: async () => ({
          kind: 'list',
          value: [
            { path: 'type-7/records/runs/2026-03/ä b.md', blob: sha('b') },
            { path: 'records/runs/2026-03/a.md', blob: sha('b') },
          ],
        }),
      },
      { commits: [sha(1)], known: NO_REVIEWS, main: 'main', prefix: 'type-7/' },
    )
    expect(pulls[0]?.files).toEqual({ 'records/runs/2026-03/ä b.md': sha('b') })
  })
  it('says where the forge lists not all files', async () => {
    const files = Array.from({ length: 3000 }, (_, index) => ({ path: `records/${index}`, blob: sha('b') }))
    const { notes } = await gather(
      {
        pulls: async () => ({
          kind: 'list',
          value: [{ number: 1, head: sha('a'), base: 'main', merged: true }],
        }),
        reviews: async () => ({ kind: 'list', value: [] }),
        files: async () => ({ kind: 'list', value: files }),
      },
      { commits: [sha(1)], known: NO_REVIEWS, main: 'main', prefix: '' },
    )
    expect(notes).toEqual([expect.stringContaining('pull request 1 changes 3000 files or more')])
  })
  it('a commit that the forge does not know is asked about again the next time', async () => {
    const unknown = sha(7)
    const { asked, notes, stopped } = await gather(ask(), {
      commits: [unknown, sha(3)],
      known: NO_REVIEWS,
      main: 'main',
      prefix: '',
    })
    expect({ asked, stopped }).toEqual({ asked: [sha(3)], stopped: null })
    expect(notes).toEqual([expect.stringContaining('7777777777')])
  })
})

describe('a forge in trouble', () => {
  it('waits for a short limit and says so', async () => {
    forge.trouble = first(1, 429, { 'retry-after': '7' })
    const { stopped, pulls } = await all()
    expect({ stopped, pauses, pulls: pulls.length }).toEqual({ stopped: null, pauses: [7000], pulls: 2 })
    expect(said).toEqual(['the forge limits how often it is asked; waiting 7 s'])
  })
  it('stops at a long one, and keeps what it has', async () => {
    forge.trouble = (request, response) => {
      if (!request.path.includes(sha(2))) return false
      response.writeHead(403, { 'x-ratelimit-remaining': '0', 'x-ratelimit-reset': '1772708400' })
      response.end('{"message":"API rate limit exceeded"}')
      return true
    }
    const { stopped, asked, pulls } = await all()
    expect(stopped).toContain('may be asked again in 61 minutes')
    expect({ asked, pulls: pulls.length, pauses }).toEqual({ asked: [sha(3), sha(4)], pulls: 1, pauses: [] })
  })
  it('tries a broken connection and a fault of the server again', async () => {
    forge.trouble = (_request, response, count) => {
      if (count === 1) response.destroy()
      else if (count === 2) {
        response.writeHead(200, { 'content-length': '100' })
        response.write('[')
        response.destroy()
      } else return first(3, 502)(_request, response, count)
      return true
    }
    expect((await all()).stopped).toBeNull()
    expect(pauses).toEqual([1000, 2000, 4000])
  })
  it('gives up after four tries', async () => {
    forge.trouble = first(99, 503)
    expect((await all()).stopped).toBe('the forge answers with 503, 4 times')
    expect(forge.requests).toHaveLength(4)
  })
  it('says that it was not reached', async () => {
    const dead = await startForge(data)
    await dead.close()
    const found = await gather(ask(dead.url), { commits, known: NO_REVIEWS, main: 'main', prefix: '' })
    expect(found.stopped).toMatch(/^the forge was not reached \(ECONNREFUSED\), 4 times$/)
  })
  it.each([
    [first(9, 200, {}, '<html>'), 'is no JSON'],
    [first(9, 200, {}, '{"message":"moved"}'), 'has not the documented form'],
    [first(9, 401), 'does not accept the token'],
    [first(9, 403), 'refuses'],
    [first(9, 404), 'does not know the repository'],
  ])('stops at an answer that it cannot use (%#)', async (trouble, why) => {
    forge.trouble = trouble
    const { stopped } = await all()
    expect(stopped).toContain(why)
    expect(stopped).not.toContain(TOKEN)
    expect(forge.requests).toHaveLength(1)
  })
})

describe('the token stays with the forge', () => {
  const elsewhere = async () => {
    const heard: string[] = []
    const server = createServer((request, response) => {
      heard.push(`${request.url} ${request.headers.authorization}`)
      response.end('[]')
    })
    await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve))
    const address = server.address()
    const port = address !== null && typeof address !== 'string' ? address.port : 0
    return { heard, url: `http://127.0.0.1:${port}/x`, close: () => server.close() }
  }
  it('a redirect to another host is not followed', async () => {
    const other = await elsewhere()
    forge.trouble = first(9, 302, { location: other.url })
    expect((await all()).stopped).toMatch(
      /^the forge leads to another host, 127\.0\.0\.1:\d+; nothing was sent/,
    )
    other.close()
    expect(other.heard).toEqual([])
  })
  it('a next page at another host is not asked for', async () => {
    const other = await elsewhere()
    forge.trouble = first(9, 200, { link: `<${other.url}>; rel="next"` }, '[]')
    expect((await all()).stopped).toMatch(
      /^the next page lies at another host, 127\.0\.0\.1:\d+; nothing was sent/,
    )
    other.close()
    expect(other.heard).toEqual([])
  })
  it('a redirect at the same host is followed, a circle is not', async () => {
    forge.trouble = (request, response, count) => {
      if (count > 1) return false
      response.writeHead(301, { location: request.path })
      response.end()
      return true
    }
    expect((await all()).stopped).toBeNull()
    forge.requests.length = 0
    forge.trouble = first(99, 301, { location: '/again' })
    expect((await all()).stopped).toContain('in a circle')
    expect(forge.requests).toHaveLength(6)
  })
})
