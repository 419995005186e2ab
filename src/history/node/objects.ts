/** Contents out of git's store, and ids of contents that lie in the working folder. */
import { accessSync, constants, lstatSync } from 'node:fs'
import { type GitAnswer, git } from './git.ts'

/** Contents by their ids, in one process. What is not here (a partial clone without network) is missing in the answer. */
export async function readContents(root: string, blobs: readonly string[]): Promise<Map<string, Buffer>> {
  const wanted = [...new Set(blobs)]
  if (wanted.length === 0) return new Map()
  const { out } = await git(root, ['cat-file', '--batch'], `${wanted.join('\n')}\n`)
  const contents = new Map<string, Buffer>()
  for (let at = 0; at < out.length; ) {
    const end = out.indexOf('\n', at)
    if (end < 0) break
    const [blob = '', kind = '', size = ''] = out.toString('utf8', at, end).split(' ')
    at = end + 1
    if (kind !== 'blob' || at + Number(size) > out.length) continue
    contents.set(blob, out.subarray(at, at + Number(size)))
    at += Number(size) + 1
  }
  return contents
}

/** Texts of states, in one process. */
export async function readTexts(
  root: string,
  states: readonly { readonly blob: string | null }[],
): Promise<Map<string, string>> {
  const contents = await readContents(
    root,
    states.flatMap(({ blob }) => (blob === null ? [] : [blob])),
  )
  return new Map([...contents].map(([blob, bytes]) => [blob, bytes.toString('utf8')]))
}

/** How a path lies in the working folder; null: nothing is there. */
export const kindOnDisk = (path: string): 'file' | 'folder' | 'other' | null => {
  try {
    const stats = lstatSync(path)
    if (stats.isDirectory()) return 'folder'
    return stats.isFile() && isReadable(path) ? 'file' : 'other'
  } catch {
    return null
  }
}

const isReadable = (path: string): boolean => {
  try {
    accessSync(path, constants.R_OK)
    return true
  } catch {
    return false
  }
}

/**
 * Ids that the files would have if they were committed, line ends and other filters as git is set up; in one process.
 * Paths count from `prefix` below `top`; from the top, since git reads the list so wherever it is called.
 */
export async function hashFiles(
  { top, prefix }: { readonly top: string; readonly prefix: string },
  paths: readonly string[],
): Promise<Map<string, string> | Extract<GitAnswer, { ok: false }>> {
  if (paths.length === 0) return new Map()
  const lines = paths.map((path) => quoted(`${prefix}${path}`)).join('\n')
  const answer = await git(top, ['hash-object', '--stdin-paths'], `${lines}\n`)
  if (!answer.ok) return answer
  const blobs = answer.out.toString('utf8').split('\n')
  return new Map(paths.map((path, at) => [path, blobs[at] ?? '']))
}

/** A line of the list; a name that holds a line end is written as in C. */
const quoted = (path: string): string =>
  /^"|[\n\r]/.test(path)
    ? `"${path.replace(/["\\]/g, '\\$&').replaceAll('\n', '\\n').replaceAll('\r', '\\r')}"`
    : path
