/** The files as they lie there now, against those of HEAD. */
import { join } from 'node:path'
import { exactRenames } from '../renames.ts'
import { parseStatus, parseTracked, type Tree } from '../status.ts'
import type { KnownHistory } from '../types.ts'
import type { GitAnswer } from './git.ts'
import { hashFiles, kindOnDisk } from './objects.ts'

export type Working = Pick<KnownHistory, 'uncommitted' | 'blobs'> & {
  /** New path → old path of files that were moved and not committed. */
  readonly moves: ReadonlyMap<string, string>
  /** Tracked files that git was told to leave out of the folder. */
  readonly leftOut: readonly string[]
}

type Place = { readonly top: string; readonly prefix: string }

/** `status` and `tracked` are what git printed; only files that may differ are looked at and hashed. */
export async function readWorking(
  place: Place,
  head: Tree['files'],
  { status, tracked }: { readonly status: string; readonly tracked: string },
  wanted: (path: string) => boolean,
): Promise<Working | Extract<GitAnswer, { ok: false }>> {
  const named = parseStatus(status).filter((path) => path.startsWith(place.prefix))
  const { unwatched } = parseTracked(tracked)
  const own = named.map((path) => path.slice(place.prefix.length))
  const candidates = [...new Set([...own, ...unwatched])].filter(wanted)
  const kinds = new Map(candidates.map((path) => [path, kindOnDisk(join(place.top, place.prefix, path))]))
  const hashed = await hashFiles(
    place,
    candidates.filter((path) => kinds.get(path) === 'file'),
  )
  if (!(hashed instanceof Map)) return hashed

  const leftOut = unwatched.filter((path) => kinds.get(path) === null && !own.includes(path))
  const blobs = new Map(head)
  const uncommitted = new Map<string, 'added' | 'changed' | 'removed'>()
  for (const path of candidates) {
    const kind = kinds.get(path)
    const before = head.get(path)
    blobs.delete(path)
    const blob = hashed.get(path)
    if (blob !== undefined) blobs.set(path, blob)
    if (kind === 'folder' || leftOut.includes(path)) continue
    if (kind !== null && blob !== before) uncommitted.set(path, before === undefined ? 'added' : 'changed')
    else if (kind === null && before !== undefined) uncommitted.set(path, 'removed')
  }
  const pairs = [...uncommitted.keys()].map((path) => ({
    path,
    before: head.get(path) ?? null,
    blob: blobs.get(path) ?? null,
  }))
  return { uncommitted, blobs, moves: exactRenames(pairs), leftOut }
}
