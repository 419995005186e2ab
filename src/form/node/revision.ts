/** Which state of the repository a build was made from, as far as git tells. */
import { execFileSync } from 'node:child_process'

const git = (root: string, ...args: readonly string[]): string | null => {
  try {
    return execFileSync('git', args, {
      cwd: root,
      encoding: 'utf8',
      stdio: ['ignore', 'pipe', 'ignore'],
    }).trim()
  } catch {
    return null
  }
}

/** `commit` is null where git does not know, or where something in `shared/` is not committed as it lies there. */
export const revisionOf = (root: string): { readonly commit: string | null; readonly day: string } => {
  const clean = git(root, 'status', '--porcelain', '--', 'shared') === ''
  const commit = clean ? git(root, 'rev-parse', 'HEAD') : null
  const day = commit ? (git(root, 'show', '-s', '--format=%cs', commit) ?? '') : ''
  return { commit: commit === '' ? null : commit, day }
}
