/** What lies in the places already, and putting files there: nothing is ever overwritten. */
import { existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import type { Placement } from '../../src/take/parcel.ts'

export type Found = {
  /** Free places. */
  readonly free: readonly Placement[]
  /** Lies there already, byte for byte. */
  readonly same: readonly Placement[]
  /** Sentences: something else lies there. */
  readonly other: readonly string[]
}

const bytesAt = (path: string): Buffer | null => {
  try {
    return readFileSync(path)
  } catch {
    return null
  }
}

/** `exists`: paths of all files of the records, to find those that some systems take for the same. */
export const lookAt = (
  root: string,
  placements: readonly Placement[],
  exists: ReadonlySet<string>,
): Found => {
  const folded = new Map([...exists].map((path) => [path.toLowerCase(), path]))
  const free: Placement[] = []
  const same: Placement[] = []
  const other: string[] = []
  for (const placement of placements) {
    const { path, bytes } = placement
    const alike = folded.get(path.toLowerCase())
    const there = existsSync(join(root, path))
    if (!there && alike === undefined) free.push(placement)
    else if (alike !== undefined && alike !== path)
      other.push(`${path} and ${alike}, which is there, are one file on many systems.`)
    else if (bytesAt(join(root, path))?.equals(bytes)) same.push(placement)
    else other.push(`${path} is there already, with other content.`)
  }
  return { free, same, other }
}

export const removeAll = (root: string, placements: readonly Placement[]): void => {
  for (const { path } of placements) rmSync(join(root, path), { force: true })
}

/** Null, or why a file could not be written; then none of them is left behind. */
export const writeAll = (root: string, placements: readonly Placement[]): string | null => {
  const written: Placement[] = []
  for (const placement of placements) {
    const full = join(root, placement.path)
    try {
      mkdirSync(dirname(full), { recursive: true })
      // `wx` refuses what came there meanwhile; what is written in part is taken away again.
      writeFileSync(full, '', { flag: 'wx' })
      written.push(placement)
      writeFileSync(full, placement.bytes)
    } catch (error) {
      removeAll(root, written)
      const why = error instanceof Error ? error.message : String(error)
      return `${placement.path} cannot be written (${why}); nothing was placed.`
    }
  }
  return null
}
