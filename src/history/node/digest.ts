/** Digests of what a review of a record covers: the record under its id, and its data file. */
import { createHash } from 'node:crypto'
import { classify } from '../../format/classify.ts'

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
    digests.set(path, digestOf(classified.id, blob, blobs.get(dataFileOf(path))))
  }
  return digests
}

const dataFileOf = (path: string): string => path.replace(/\.[^./]*$/, '.csv')
