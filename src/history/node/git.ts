/** Git as a program: never a shell, no locale, no question asked, nothing of the user's taste in the output. */
import { spawn } from 'node:child_process'

export type GitAnswer =
  | { readonly ok: true; readonly out: Buffer }
  /** `why` is the first line that git said. */
  | { readonly ok: false; readonly missing: boolean; readonly why: string; readonly out: Buffer }

const PLAIN = [
  '--no-pager',
  '--no-optional-locks',
  '--no-replace-objects',
  '--literal-pathspecs',
  ...['core.quotepath=off', 'core.fsmonitor=false', 'color.ui=never', 'log.showRoot=true'].flatMap((set) => [
    '-c',
    set,
  ]),
]

/** Inside a hook git says with these which repository it means; here the folder alone decides. */
const OF_A_HOOK = [
  'GIT_DIR',
  'GIT_WORK_TREE',
  'GIT_INDEX_FILE',
  'GIT_PREFIX',
  'GIT_COMMON_DIR',
  'GIT_NAMESPACE',
  'GIT_OBJECT_DIRECTORY',
  'GIT_ALTERNATE_OBJECT_DIRECTORIES',
  'GIT_EXTERNAL_DIFF',
]

const environment = (): NodeJS.ProcessEnv => ({
  ...Object.fromEntries(Object.entries(process.env).filter(([name]) => !OF_A_HOOK.includes(name))),
  LC_ALL: 'C',
  GIT_TERMINAL_PROMPT: '0',
})

/** Output of any size, as bytes. */
export const git = (folder: string, args: readonly string[], input = ''): Promise<GitAnswer> =>
  new Promise((settle) => {
    const child = spawn('git', ['-C', folder, ...PLAIN, ...args], { env: environment(), windowsHide: true })
    const out: Buffer[] = []
    const said: Buffer[] = []
    const fail = (missing: boolean, why: string) =>
      settle({ ok: false, missing, why, out: Buffer.concat(out) })
    child.on('error', (error) => fail('code' in error && error.code === 'ENOENT', error.message))
    child.stdout.on('data', (chunk: Buffer) => out.push(chunk))
    child.stderr.on('data', (chunk: Buffer) => said.push(chunk))
    // A git that ends early no longer listens; its exit status tells the rest.
    child.stdin.on('error', () => undefined)
    child.stdin.end(input)
    child.on('close', (status) => {
      if (status === 0) settle({ ok: true, out: Buffer.concat(out) })
      else
        fail(false, firstLine(Buffer.concat(said).toString('utf8')) || `git ${args[0]} ended with ${status}`)
    })
  })

const firstLine = (text: string): string =>
  (text.split('\n').find((line) => /^(fatal|error):/.test(line)) ?? text.split('\n')[0] ?? '').trim()
