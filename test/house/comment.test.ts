/** The one script that runs with a right to write on the forge: the comment on a pull request, with a feigned API. */
import { mkdirSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { parse } from 'yaml'

const home = resolve(import.meta.dirname, '../..')
type Step = { uses?: string; with?: { script?: string } }
const workflow = parse(readFileSync(join(home, '.github/workflows/comment.yml'), 'utf8')) as {
  jobs: { comment: { steps: Step[] } }
}
const script = workflow.jobs.comment.steps.find(({ uses }) => uses?.startsWith('actions/github-script@'))
  ?.with?.script

const SHA = 'ecdd80bb57125d7ba9641ffaa4d7d2c19d3f3091'
const MARK = '<!-- ground-test-record: summary -->'
const BOT = { login: 'github-actions[bot]' }

type Comment = { id: number; user: { login: string } | null; body: string }
let folder: string
let pulls: { number: number; head: { sha: string } }[]
let comments: Comment[]
let asked: unknown[]
let said: string[]

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'comment-'))
  pulls = [{ number: 7, head: { sha: SHA } }]
  comments = []
  asked = []
  said = []
})
afterEach(() => rmSync(folder, { recursive: true, force: true }))

const summary = (text: string) => {
  mkdirSync(join(folder, 'summary'), { recursive: true })
  writeFileSync(join(folder, 'summary/summary.md'), text)
}

const listPulls = () => pulls
const listComments = () => comments
const github = {
  paginate: async (list: () => unknown[], options: unknown) => {
    asked.push(options)
    return list()
  },
  rest: {
    pulls: { list: listPulls },
    issues: {
      listComments,
      updateComment: async ({ comment_id, body }: { comment_id: number; body: string }) => {
        comments = comments.map((each) => (each.id === comment_id ? { ...each, body } : each))
      },
      createComment: async ({ issue_number, body }: { issue_number: number; body: string }) => {
        comments.push({ id: issue_number * 100, user: BOT, body })
      },
    },
  },
}

/** As the action calls it: an asynchronous function of these names, in the folder of the job. */
const comment = async (run: object = {}) => {
  const context = {
    repo: { owner: 'octocat', repo: 'Hello-World' },
    payload: {
      workflow_run: {
        head_sha: SHA,
        head_branch: 'topic',
        head_repository: { owner: { login: 'fork' } },
        pull_requests: [],
        ...run,
      },
    },
  }
  const inFolder = (file: string) => file.replace(/^summary\//, `${folder}/summary/`)
  const plain = createRequire(import.meta.url)
  const files: typeof import('node:fs') = plain('node:fs')
  const fs = {
    existsSync: (file: string) => files.existsSync(inFolder(file)),
    lstatSync: (file: string) => files.lstatSync(inFolder(file)),
    readFileSync: (file: string) => files.readFileSync(inFolder(file)),
  }
  const core = { info: (text: string) => said.push(text) }
  const AsyncFunction = Object.getPrototypeOf(async () => {}).constructor
  await new AsyncFunction('github', 'context', 'core', 'require', script)(github, context, core, () => fs)
}

describe('the comment', () => {
  it('is written once, and then anew in place', async () => {
    summary('# One run, pass')
    await comment()
    summary('# Two runs, pass')
    comments.unshift({ id: 1, user: { login: 'someone' }, body: `${MARK}\nnot ours` })
    comments.unshift({ id: 2, user: null, body: 'gone' })
    await comment()
    expect(comments).toHaveLength(3)
    expect(comments[1]?.body).toBe(`${MARK}\nnot ours`)
    expect(comments[2]).toMatchObject({ id: 700, user: BOT })
    expect(comments[2]?.body).toBe(
      `${MARK}\n# Two runs, pass\n\n_From the files of this pull request at ecdd80bb57, by its own check._\n`,
    )
  })
  it('goes to the open pull request that has this state, by what the API says of branch and commit', async () => {
    summary('7 of 8')
    pulls = [
      { number: 8, head: { sha: '0'.repeat(40) } },
      { number: 9, head: { sha: SHA } },
    ]
    await comment({ pull_requests: [{ number: 8 }] })
    expect(asked[0]).toMatchObject({ owner: 'octocat', state: 'open', head: 'fork:topic' })
    expect(comments.map(({ id }) => id)).toEqual([900])
  })
  it('is left out where the state is an older one, or there is nothing to say', async () => {
    await comment()
    summary(' \n')
    await comment()
    summary('text')
    await comment({ head_sha: '1'.repeat(40) })
    await comment({ head_repository: null })
    expect(comments).toEqual([])
    expect(said).toHaveLength(4)
  })
  it('is left out where the file is a link', async () => {
    summary('text')
    rmSync(join(folder, 'summary/summary.md'))
    symlinkSync(join(home, 'package.json'), join(folder, 'summary/summary.md'))
    await comment()
    expect(comments).toEqual([])
  })
  it('takes the text as untrusted: nobody is called, nothing hidden or turned round, and it has an end', async () => {
    summary(`@everyone ${MARK} \u202eevil\u2066\u0007\u200b mail@x.example`)
    await comment()
    expect(comments[0]?.body.split('\n')[1]).toBe(
      '@\u200beveryone &lt;!-- ground-test-record: summary --> evil mail@\u200bx.example',
    )
    summary('ä'.repeat(300_000))
    await comment()
    expect(comments).toHaveLength(1)
    expect(comments[0]?.body.length).toBeLessThan(65_536)
    expect(comments[0]?.body).toContain('cut off here')
    expect(comments[0]?.body).not.toContain('\ufffd')
  })
})
