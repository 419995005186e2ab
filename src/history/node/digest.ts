/** Digests of what a review of a record covers: the record under its id, and its data file. */
import { createHash } from 'node:crypto'
import { classify } from '../../format/classify.ts'
import { DATA_ENDINGS } from '../../format/data-file.ts'
import type { FileHistory } from '../types.ts'

/** `sha256:` of id, blob of the record and blob of the data file beside it, with NUL between. */
export const digestOf = (id: string, record: string, data: string | undefined): string =>
  `sha256:${createHash('sha256')
    .update([id, record, data ?? ''].join('\0'))
    .digest('hex')}`

/** Of every record, by path. `blobs` is path → blob; the data file lies under the name of the record. */
export function digestsOf(blobs: ReadonlyMap<string, string>): Map<string, string> {
  const digests = new Map<string, string>()
  for (const [path, blob] of blobs) {
    const classified = classify(path)
    if (classified.kind === 'other' || classified.kind === 'unknown') continue
    digests.set(path, digestOf(classified.id, blob, dataOf(path, blobs)))
  }
  return digests
}

/** Of earlier landed states of cards, which a later reader asks about: were they reviewed when they were in force? */
export function pastDigestsOf(files: ReadonlyMap<string, FileHistory>): Map<string, string> {
  const digests = new Map<string, string>()
  for (const [now, { landed }] of files) {
    for (const { path, blob } of landed) {
      const classified = classify(path)
      if (classified.kind === 'card' && blob !== null)
        digests.set(`${now} ${blob}`, digestOf(classified.id, blob, undefined))
    }
  }
  return digests
}

/** Whatever the logger's file is called behind the name of the record; of several none is left out. */
const dataOf = (path: string, blobs: ReadonlyMap<string, string>): string | undefined => {
  const stem = path.replace(/\.[^./]*$/, '')
  const found = DATA_ENDINGS.flatMap((ending) => blobs.get(`${stem}.${ending}`) ?? [])
  return found.length === 0 ? undefined : found.join('\0')
}
