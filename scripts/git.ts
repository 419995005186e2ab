/** Git as a program, for the commands: never a shell, no locale, no question asked. */
import { spawnSync } from 'node:child_process'

export type GitAnswer =
  | { readonly ok: true; readonly out: Buffer; readonly text: string }
  | { readonly ok: false; readonly why: string }

export type GitOptions = {
  readonly input?: string | Buffer
  /** As the user set it up: for a commit, where hooks and keys may have something to say. */
  readonly loud?: boolean
}

const PLAIN = ['--no-pager', '-c', 'core.quotepath=off', '-c', 'core.fsmonitor=false', '-c', 'color.ui=never']

/** `out` of a call that went well, or what git said on its error output, on one line. */
export const git = (root: string, args: readonly string[], options: GitOptions = {}): GitAnswer => {
  const { status, stdout, stderr, error } = spawnSync('git', [...PLAIN, ...args], {
    cwd: root,
    input: options.input,
    maxBuffer: 1 << 30,
    env: { ...process.env, LC_ALL: 'C', ...(options.loud ? {} : { GIT_TERMINAL_PROMPT: '0' }) },
  })
  if (error) {
    const missing = 'code' in error && error.code === 'ENOENT'
    return { ok: false, why: missing ? 'git is not installed, or the folder is not there' : error.message }
  }
  if (status === 0) return { ok: true, out: stdout, text: stdout.toString('utf8') }
  const said = stderr
    .toString('utf8')
    .trim()
    .replace(/\s*\n\s*/g, '; ')
  return { ok: false, why: said || `git ${args[0]} ended with ${status}` }
}

/** The first line, or null where git has no answer. */
export const gitLine = (root: string, args: readonly string[]): string | null => {
  const answer = git(root, args)
  return answer.ok ? (answer.text.split('\n')[0] ?? '') : null
}
