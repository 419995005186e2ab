/** Which records the next commit changes. Nothing but git is loaded: most commits of a branch of code change none. */
import { git } from '../git.ts'

export type Staged = {
  /** Paths below the root that the commit adds or changes. */
  readonly changed: readonly string[]
  /** Paths that it takes away, also those that move. */
  readonly removed: readonly string[]
}

export const FOLDERS = ['records', 'shared']

/** Paths are relative to the root; or why git does not say. */
export const stagedPaths = (root: string): Staged | string => {
  const call = ['diff', '--cached', '--relative', '--no-renames', '--name-status', '-z', '--', ...FOLDERS]
  const answer = git(root, call)
  if (!answer.ok) return answer.why
  const fields = answer.text.split('\0')
  const changed: string[] = []
  const removed: string[] = []
  for (let at = 0; at + 1 < fields.length; at += 2) {
    const path = fields[at + 1] ?? ''
    if (fields[at] === 'D') removed.push(path)
    else changed.push(path)
  }
  return { changed, removed }
}
