/** A small campaign in a git repository of its own: two runs of the demo and all that is shared. */
import { spawnSync } from 'node:child_process'
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { type Called, callWarm } from './warm.ts'

export const home = resolve(import.meta.dirname, '../..')

export const folder = 'records/runs/2026-02'
/** Made by mlindqvist, witnessed by cokafor. */
export const runFile = `${folder}/2026-02-05-0935-hull-bay-leak-bay-1.md`
export const otherRun = `${folder}/2026-02-05-1410-hull-bay-leak-bay-2.md`
export const card = 'shared/cards/hull-bay-leak.md'

export const idOf = (path: string): string => path.replace(/^.*\/|\.md$/g, '')

const settings = {
  GIT_CONFIG_GLOBAL: '/dev/null',
  GIT_CONFIG_SYSTEM: '/dev/null',
  GIT_COMMITTER_NAME: 'Maja Lindqvist',
  GIT_COMMITTER_EMAIL: 'maja.lindqvist@type7.example',
  GITHUB_ACTIONS: '',
  GITHUB_REPOSITORY: '',
  GITHUB_API_URL: '',
  GITHUB_TOKEN: '',
  FORGE_TOKEN: '',
  NO_COLOR: '1',
}

const authorOf = (email: string) => ({ GIT_AUTHOR_NAME: email.replace(/@.*/, ''), GIT_AUTHOR_EMAIL: email })

export const MAJA = 'maja.lindqvist@type7.example'

export type SmallRepository = {
  root: string
  /** Throws what git says where it fails. */
  git: (...args: string[]) => string
  /** The same as another author. */
  as: (email: string, ...args: string[]) => string
  call: (program: string, args: readonly string[], env?: Record<string, string>, cwd?: string) => Called
  /** A command of ours on this campaign, in the thread that stays. */
  command: (name: string, args: readonly string[], env?: Record<string, string>) => Called
  /** The same as people call it: a process of its own. */
  program: (name: string, args: readonly string[], env?: Record<string, string>) => Called
  edit: (path: string, from: RegExp, to: string) => void
  remove: () => void
}

export const smallRepository = (): SmallRepository => {
  const root = mkdtempSync(join(tmpdir(), 'small ä '))
  for (const path of ['shared', runFile, otherRun])
    cpSync(join(home, path), join(root, path), { recursive: true })
  const environment = (env: Record<string, string> = {}): NodeJS.ProcessEnv => ({
    ...process.env,
    ...settings,
    ...authorOf(MAJA),
    ...env,
  })
  const call: SmallRepository['call'] = (program, args, env, cwd = root) => {
    const options = { cwd, encoding: 'utf8', env: environment(env) } as const
    const { status, stdout, stderr } = spawnSync(program, args, options)
    return { status, stdout, stderr }
  }
  const as: SmallRepository['as'] = (email, ...args) => {
    const done = call('git', args, authorOf(email))
    if (done.status !== 0) throw new Error(done.stderr)
    return done.stdout
  }
  const git: SmallRepository['git'] = (...args) => as(MAJA, ...args)
  git('init', '-q', '-b', 'main')
  git('add', '.')
  git('commit', '-qm', 'The campaign')
  return {
    root,
    git,
    as,
    call,
    command: (name, args, env) => callWarm(name, ['--root', root, ...args], environment(env)),
    program: (name, args, env) =>
      call(process.execPath, ['scripts/run.mjs', name, '--root', root, ...args], env, home),
    edit: (path, from, to) => {
      const text = readFileSync(join(root, path), 'utf8')
      if (!from.test(text)) throw new Error(`${path} holds nothing like ${from}`)
      writeFileSync(join(root, path), text.replace(from, to))
    },
    remove: () => rmSync(root, { recursive: true, force: true }),
  }
}
