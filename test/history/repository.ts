/** Real git repositories in temporary folders, the same each time, and histories in words that can be compared. */
import { execFileSync } from 'node:child_process'
import { mkdirSync, mkdtempSync, realpathSync, renameSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { afterAll } from 'vitest'
import { readHistory } from '../../src/history/node/read.ts'
import type { KnownHistory, Version } from '../../src/history/types.ts'

// Nothing of the person who runs the tests, neither here nor in what is tested.
process.env.GIT_CONFIG_GLOBAL = '/dev/null'
process.env.GIT_CONFIG_SYSTEM = '/dev/null'

const folders: string[] = []
afterAll(() => {
  for (const folder of folders.splice(0)) rmSync(folder, { recursive: true, force: true })
}, 60_000)

export const temporaryFolder = (): string => {
  const folder = realpathSync(mkdtempSync(join(tmpdir(), 'history-')))
  folders.push(folder)
  return folder
}

const BEGIN = Date.UTC(2026, 2, 2, 8) / 1000
const HOUR = 3600

export type CommitOptions = {
  /** Name of the author; the e-mail follows from it. */
  readonly by?: string
  /** Lines below the subject. */
  readonly body?: string
  /** Seconds; without it one hour after the last commit. */
  readonly at?: number
  readonly sign?: boolean
}

export type Repository = {
  readonly top: string
  readonly git: (...args: string[]) => string
  /** Files by path → text; null takes away. Then all is committed. */
  readonly commit: (
    subject: string,
    files?: Readonly<Record<string, string | null>>,
    options?: CommitOptions,
  ) => string
  readonly write: (path: string, text: string | null) => void
  readonly move: (from: string, to: string) => void
  readonly branch: (name: string) => void
  readonly go: (name: string) => void
  readonly merge: (branch: string, subject: string) => string
  /** Time of the last commit, in seconds. */
  readonly now: () => number
}

/** A folder that is a repository, or was cloned; `init` are further arguments of `git init`. */
export const makeRepository = (init: readonly string[] = []): Repository => {
  const top = temporaryFolder()
  execFileSync('git', ['init', '-q', '-b', 'main', ...init, top])
  return repositoryIn(top)
}

export const repositoryIn = (top: string): Repository => {
  let time = BEGIN
  const run = (args: readonly string[], by = 'Ada', at = time): string => {
    const identity = { name: by, email: `${by.toLowerCase()}@example.org` }
    const env = {
      ...process.env,
      GIT_AUTHOR_NAME: identity.name,
      GIT_AUTHOR_EMAIL: identity.email,
      GIT_COMMITTER_NAME: identity.name,
      GIT_COMMITTER_EMAIL: identity.email,
      GIT_AUTHOR_DATE: `${at} +0100`,
      GIT_COMMITTER_DATE: `${at} +0100`,
    }
    return execFileSync('git', ['-C', top, ...args], { env, encoding: 'utf8', stdio: 'pipe' }).trim()
  }
  const write = (path: string, text: string | null) => {
    const place = join(top, path)
    if (text === null) return rmSync(place)
    mkdirSync(dirname(place), { recursive: true })
    writeFileSync(place, text)
  }
  const hash = () => run(['rev-parse', 'HEAD'])
  return {
    top,
    git: (...args) => run(args),
    write,
    commit: (subject, files = {}, { by, body, at, sign } = {}) => {
      for (const [path, text] of Object.entries(files)) write(path, text)
      time = at ?? time + HOUR
      run(['add', '-A'])
      const message = body === undefined ? subject : `${subject}\n\n${body}\n`
      const signing = sign ? ['-S'] : ['--no-gpg-sign']
      run(['commit', '-q', '--allow-empty', '-m', message, ...signing], by)
      return hash()
    },
    move: (from, to) => {
      mkdirSync(dirname(join(top, to)), { recursive: true })
      renameSync(join(top, from), join(top, to))
    },
    branch: (name) => void run(['checkout', '-q', '-b', name]),
    go: (name) => void run(['checkout', '-q', name]),
    merge: (branch, subject) => {
      time += HOUR
      run(['merge', '-q', '--no-ff', '-m', subject, branch])
      return hash()
    },
    now: () => time,
  }
}

export const known = async (root: string, reviewsFile?: string): Promise<KnownHistory> => {
  const history = await readHistory(root, { main: 'main', ...(reviewsFile ? { reviewsFile } : {}) })
  if (history.state === 'unknown') throw new Error(`${history.why}: ${history.message}`)
  return history
}

/** Commits by their subjects, contents by what they say: what stays the same whatever the hashes are. */
export const inWords = (history: KnownHistory, { git }: Repository) => {
  const texts = new Map<string, string>()
  const textOf = (blob: string | null): string => {
    if (blob === null) return '(gone)'
    const text = texts.get(blob) ?? git('cat-file', 'blob', blob)
    texts.set(blob, text)
    return text
  }
  const subjectOf = (hash: string) => history.commits.get(hash)?.subject ?? `no commit ${hash}`
  const inVersion = ({ commit, path, blob }: Version) => `${subjectOf(commit)}: ${path} = ${textOf(blob)}`
  return {
    head: subjectOf(history.head),
    onMain: history.onMain,
    line: history.line.map(subjectOf),
    begins: history.begins === null ? null : subjectOf(history.begins),
    files: Object.fromEntries(
      [...history.files].map(([path, file]) => [
        path,
        {
          landed: file.landed.map(inVersion),
          touched: file.touched.map(inVersion),
          head: textOf(file.head),
        },
      ]),
    ),
    uncommitted: Object.fromEntries(history.uncommitted),
    texts: [...history.texts.values()].map((text) => text.trim()).sort(),
    notes: history.notes,
  }
}

/** What a repository says of itself, in words. */
export const historyOf = async (repository: Repository, reviewsFile?: string) =>
  inWords(await known(repository.top, reviewsFile), repository)
