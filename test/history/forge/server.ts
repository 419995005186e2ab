/**
 * A forge on this machine that answers as GitHub documents its REST API (version 2022-11-28): “List pull requests
 * associated with a commit”, “List reviews for a pull request”, “List pull requests files”, “Using pagination in the
 * REST API”, “Rate limits for the REST API”. Names and fields are those of the documentation's examples (octocat,
 * Hello-World, file1.txt), written down from memory; fields that are not read are left out but for a few.
 */
import { createServer, type IncomingHttpHeaders, type ServerResponse } from 'node:http'

export type ForgeReview = { login: string | null; state: string; commit: string | null; when?: string }

export type ForgeData = {
  /** By commit. A commit that is not here is not known: 422, as documented. */
  commits: Record<string, number[]>
  pulls: Record<
    number,
    {
      head: string
      base?: string
      merged?: boolean
      reviews: ForgeReview[]
      files: { filename: string; status?: string; sha: string | null }[]
    }
  >
}

export type Request = { path: string; headers: IncomingHttpHeaders }

/** Answers in place of the forge where it returns true. */
export type Trouble = (request: Request, response: ServerResponse, count: number) => boolean

const pullAnswer = (data: ForgeData, number: number) => {
  const pull = data.pulls[number]
  return {
    url: `https://api.github.com/repos/octocat/Hello-World/pulls/${number}`,
    id: number,
    number,
    state: pull?.merged === false ? 'open' : 'closed',
    title: 'Amazing new feature',
    merged_at: pull?.merged === false ? null : '2026-03-05T10:01:12Z',
    merge_commit_sha: 'e5bd3914e2e596debea16f433f57875b5b90bcd6',
    head: { label: 'octocat:new-topic', ref: 'new-topic', sha: pull?.head },
    base: {
      label: 'octocat:main',
      ref: pull?.base ?? 'main',
      sha: '6dcb09b5b57875f334f61aebed695e2e4193db5e',
    },
  }
}

const listOf = (data: ForgeData, path: string): unknown[] | null | undefined => {
  const commit = /^\/repos\/octocat\/Hello-World\/commits\/([0-9a-f]+)\/pulls$/.exec(path)?.[1]
  if (commit !== undefined) {
    const numbers = data.commits[commit]
    return numbers ? numbers.map((number) => pullAnswer(data, number)) : null
  }
  const [, number, what] = /^\/repos\/octocat\/Hello-World\/pulls\/(\d+)\/(reviews|files)$/.exec(path) ?? []
  const pull = data.pulls[Number(number)]
  if (!pull) return undefined
  return what === 'reviews'
    ? pull.reviews.map(({ login, state, commit, when }, index) => ({
        id: 80 + index,
        user: login === null ? null : { login, id: 1, type: 'User' },
        body: 'Here is the body for the review.',
        state,
        commit_id: commit,
        ...(state === 'PENDING'
          ? {}
          : { submitted_at: when ?? new Date(Date.UTC(2026, 2, 5, 9, index)).toISOString() }),
        author_association: 'COLLABORATOR',
      }))
    : pull.files.map(({ filename, status = 'added', sha }) => ({ sha, filename, status, changes: 124 }))
}

const answer = (data: ForgeData, url: URL, response: ServerResponse): void => {
  const list = listOf(data, url.pathname)
  if (!list) {
    response.writeHead(list === null ? 422 : 404, { 'content-type': 'application/json' })
    response.end(JSON.stringify({ message: list === null ? 'No commit found for SHA' : 'Not Found' }))
    return
  }
  const size = Math.min(100, Number(url.searchParams.get('per_page') ?? 30))
  const page = Number(url.searchParams.get('page') ?? 1)
  const last = Math.max(1, Math.ceil(list.length / size))
  const at = (number: number, relation: string) => {
    const target = new URL(url)
    target.searchParams.set('page', String(number))
    return `<${target.href}>; rel="${relation}"`
  }
  const links = [
    ...(page > 1 ? [at(page - 1, 'prev'), at(1, 'first')] : []),
    ...(page < last ? [at(page + 1, 'next'), at(last, 'last')] : []),
  ]
  response.writeHead(200, {
    'content-type': 'application/json; charset=utf-8',
    ...(links.length > 0 ? { link: links.join(', ') } : {}),
  })
  response.end(JSON.stringify(list.slice((page - 1) * size, page * size)))
}

export type Forge = {
  url: string
  requests: Request[]
  /** Set to answer in place of the forge. */
  trouble: Trouble | null
  close: () => Promise<void>
}

export const startForge = async (data: ForgeData): Promise<Forge> => {
  const forge: Forge = { url: '', requests: [], trouble: null, close: async () => {} }
  const server = createServer((incoming, response) => {
    const request = { path: incoming.url ?? '', headers: incoming.headers }
    forge.requests.push(request)
    if (forge.trouble?.(request, response, forge.requests.length)) return
    answer(data, new URL(request.path, forge.url), response)
  })
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve))
  const address = server.address()
  if (address === null || typeof address === 'string') throw new Error('no port')
  forge.url = `http://127.0.0.1:${address.port}`
  forge.close = () =>
    new Promise((resolve) => {
      server.closeAllConnections()
      server.close(() => resolve())
    })
  return forge
}
