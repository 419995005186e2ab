/** Puts the commit hook in its place and takes it out again. Another's hook is never touched. */
import { chmodSync, existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { join, relative, resolve } from 'node:path'
import { gitLine } from '../git.ts'

const MARK = '# Checks the staged records. Written by: npm run hook -- --install'

export type Done = { readonly ok: boolean; readonly text: string }

/** Paths with forward slashes, in single quotes as a POSIX shell reads them. */
const quoted = (path: string): string => `'${path.replaceAll('\\', '/').replaceAll("'", "'\\''")}'`

/** Git calls a hook in the top folder of the working tree, so paths from there hold in every clone of a clone. */
const hookText = (top: string, tool: string, root: string): string => {
  const from = (path: string) => {
    const way = relative(top, path) || '.'
    return quoted(way.startsWith('..') ? path : way)
  }
  const node = from(join(tool, 'node_modules/.bin/node'))
  return `#!/bin/sh
${MARK}
if [ ! -x ${node} ]; then
  echo 'The records were not checked: run npm ci first.' >&2
  exit 0
fi
exec ${node} ${from(join(tool, 'scripts/run.mjs'))} hook --root ${from(root)}
`
}

const place = (root: string): { readonly top: string; readonly file: string } | null => {
  const top = gitLine(root, ['rev-parse', '--show-toplevel'])
  const hooks = gitLine(root, ['rev-parse', '--git-path', 'hooks'])
  return top && hooks ? { top, file: join(resolve(root, hooks), 'pre-commit') } : null
}

const isOurs = (file: string): boolean => readFileSync(file, 'utf8').includes(MARK)

const NO_REPOSITORY: Done = { ok: false, text: 'There is no git repository here.' }

/** @param tool folder of this software; @param root folder that holds `records/` and `shared/` */
export const installHook = (root: string, tool: string): Done => {
  const found = place(root)
  if (!found) return NO_REPOSITORY
  const { top, file } = found
  if (existsSync(file) && !isOurs(file)) {
    return {
      ok: false,
      text: `${file} is there already and is another hook; nothing was written. Add a line to it: npm run -s hook`,
    }
  }
  mkdirSync(join(file, '..'), { recursive: true })
  writeFileSync(file, hookText(top, tool, root))
  chmodSync(file, 0o755)
  return {
    ok: true,
    text: `${file}\nFrom now on a commit is checked first; git commit --no-verify leaves that out once.`,
  }
}

export const removeHook = (root: string): Done => {
  const found = place(root)
  if (!found) return NO_REPOSITORY
  const { file } = found
  if (!existsSync(file)) return { ok: true, text: 'There is no commit hook here.' }
  if (!isOurs(file)) return { ok: false, text: `${file} is another hook; it was left as it is.` }
  rmSync(file)
  return { ok: true, text: `${file} was taken away.` }
}
