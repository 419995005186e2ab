/** What the forge said about reviews, from a file that a step of CI writes and nobody commits. */
import { readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import { parseReviewsFile } from '../forge/file.ts'
import type { ForgePull } from '../types.ts'

export type ForgeReviews = { readonly pulls: readonly ForgePull[]; readonly notes: readonly string[] }

/** A file that is part of the repository could have been written by whoever wants to be approved. */
export function readReviewsFile(root: string, file: string, tracked: boolean): ForgeReviews {
  if (tracked)
    return { pulls: [], notes: [`${file} is committed, and so is not believed: take it out of git`] }
  const text = textOf(resolve(root, file))
  if (text === null) return { pulls: [], notes: [] }
  const read = parseReviewsFile(text)
  if (read) return { pulls: read.pulls, notes: [] }
  return { pulls: [], notes: [`${file} cannot be read as reviews of a forge: write it anew`] }
}

const textOf = (path: string): string | null => {
  try {
    return readFileSync(path, 'utf8')
  } catch {
    return null
  }
}
