/**
 * What runs on the forge: valid by a linter for workflows, and with no more rights than it needs. The rules are those
 * of GitHub's “Secure use reference” for Actions (least rights, no untrusted text in a script, no code of a pull
 * request where there is a right to write), from memory.
 */
import { spawnSync } from 'node:child_process'
import { mkdtempSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { describe, expect, it } from 'vitest'
import { parse } from 'yaml'
import packageFile from '../../package.json' with { type: 'json' }

const home = resolve(import.meta.dirname, '../..')
const folder = join(home, '.github/workflows')
const names = readdirSync(folder)

type Rights = Record<string, string>
type Step = { uses?: string; run?: string; with?: Record<string, unknown>; env?: Record<string, string> }
type Job = { permissions?: Rights; steps: Step[] }
type Workflow = { on: Record<string, unknown>; permissions?: Rights; jobs: Record<string, Job> }

const workflows = names.map((name) => {
  const text = readFileSync(join(folder, name), 'utf8')
  return { name, text, workflow: parse(text) as Workflow }
})
const jobs = workflows.flatMap(({ name, workflow }) =>
  Object.entries(workflow.jobs).map(([id, job]) => ({
    name: `${name} ${id}`,
    workflow,
    job,
    rights: job.permissions ?? workflow.permissions ?? null,
  })),
)
const steps = jobs.flatMap(({ name, job }) => job.steps.map((step) => ({ name, step })))
const scriptOf = ({ run, with: given }: Step): string => `${run ?? ''}\n${given?.script ?? ''}`
const triggersOf = ({ on }: Workflow): string[] => Object.keys(on)
const writes = (rights: Rights | null): string[] =>
  Object.entries(rights ?? {}).flatMap(([what, right]) => (right === 'write' ? [what] : []))

const cli = join(home, 'node_modules/@action-validator/cli/cli.mjs')
const lint = (file: string) => spawnSync(process.execPath, [cli, file], { encoding: 'utf8' })

describe('workflows', () => {
  it('are there, each of them read', () => {
    expect(names.sort()).toEqual(['check.yml', 'comment.yml', 'nightly.yml', 'site.yml'])
    expect(steps.length).toBeGreaterThan(15)
  })
  it.each(names)('%s is valid by the linter', (name) => {
    expect(lint(join(folder, name))).toMatchObject({ status: 0 })
  })
  it('are looked at by a linter that finds faults', () => {
    const broken = join(mkdtempSync(join(tmpdir(), 'workflow-')), 'broken.yml')
    writeFileSync(
      broken,
      'name: broken\non: pushh\njobs:\n  one: {runs-on: ubuntu-latest, steps: [{run: x}]}\n',
    )
    expect(lint(broken)).toMatchObject({ status: 1, stderr: expect.stringContaining('/on') })
  })
  it('name their rights, and few of them', () => {
    for (const { name, workflow, rights } of jobs) {
      expect(workflow.permissions, name).toBeTypeOf('object')
      expect(rights, name).not.toBeNull()
    }
    expect(Object.fromEntries(jobs.map(({ name, rights }) => [name, rights]))).toEqual({
      'check.yml records': { contents: 'read' },
      'check.yml tests': { contents: 'read' },
      'comment.yml comment': { actions: 'read', 'pull-requests': 'write' },
      'nightly.yml every-page': { contents: 'read' },
      'site.yml build': { contents: 'read', pages: 'read', 'pull-requests': 'read' },
      'site.yml publish': { pages: 'write', 'id-token': 'write' },
    })
  })
  it('take actions of the forge itself alone, each pinned to a major version or a commit', () => {
    for (const { name, step } of steps) {
      if (step.uses) expect(step.uses, name).toMatch(/^actions\/[\w/-]+@(v\d+|[0-9a-f]{40})$/)
    }
  })
  it('never give rights to the code of a pull request', () => {
    for (const { name, workflow, rights } of jobs) {
      expect(triggersOf(workflow), name).not.toContain('pull_request_target')
      if (triggersOf(workflow).includes('pull_request')) expect(writes(rights), name).toEqual([])
    }
    for (const { text, workflow, name } of workflows) {
      if (triggersOf(workflow).includes('pull_request'))
        expect(text, name).not.toMatch(/secrets\.|github\.token/)
    }
  })
  it('run no code of the repository where there is a right to write', () => {
    for (const { name, job, rights } of jobs.filter(({ rights }) => writes(rights).length > 0)) {
      for (const step of job.steps) {
        expect(step.uses ?? '', name).not.toMatch(/checkout|setup-node/)
        expect(step.run, name).toBeUndefined()
      }
      expect(rights, name).not.toHaveProperty('contents')
    }
  })
  it('leave no token in the working folder', () => {
    for (const { name, step } of steps.filter(({ step }) => step.uses?.startsWith('actions/checkout@'))) {
      expect(step.with, name).toMatchObject({ 'persist-credentials': false, 'fetch-depth': 0 })
    }
  })
  it('put nothing from outside into a script', () => {
    for (const { name, step } of steps) expect(scriptOf(step), name).not.toContain('${{')
  })
  it('call commands that there are', () => {
    const called = steps.flatMap(({ step }) =>
      [...scriptOf(step).matchAll(/npm (?:run (?:-s )?)?(\w[\w:]*)/g)].map(([, command = '']) => command),
    )
    expect(called).toContain('check')
    const known = ['ci', ...Object.keys(packageFile.scripts)]
    expect(called.filter((command) => !known.includes(command))).toEqual([])
  })
})

describe('owners', () => {
  const lines = readFileSync(join(home, '.github/CODEOWNERS'), 'utf8')
    .split('\n')
    .filter((line) => line !== '' && !line.startsWith('#'))
    .map((line) => line.split(/\s+/))
  const people = parse(readFileSync(join(home, 'shared/people.yaml'), 'utf8')) as Record<
    string,
    { login?: string; roles: string[] }
  >
  it('are people of this campaign who may review', () => {
    const able = Object.values(people).flatMap(({ login, roles }) =>
      login && roles.includes('review') ? [`@${login}`] : [],
    )
    expect(lines.length).toBeGreaterThan(5)
    for (const [path, ...owners] of lines) {
      expect(owners.length, path).toBeGreaterThan(0)
      expect(
        owners.filter((owner) => !able.includes(owner)),
        path,
      ).toEqual([])
    }
  })
  it('own what others are judged by, and paths that there are', () => {
    const owned = lines.map(([path = '']) => path)
    for (const path of ['cards', 'instruments', 'people.yaml', 'campaign.yaml'])
      expect(
        owned.some((each) => each.startsWith(`/shared/${path}`)),
        path,
      ).toBe(true)
    expect(owned).toEqual(expect.arrayContaining(['/src/', '/.github/']))
    const missing = owned.filter((path) => {
      const parts = path.split('/').filter((part) => part !== '')
      const name = parts.pop() ?? ''
      return !readdirSync(join(home, ...parts)).includes(name)
    })
    expect(missing).toEqual([])
  })
})
