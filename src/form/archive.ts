/** A run with its data file and its photos in one archive, each in the place where it belongs in a repository. */
import { unzipSync, zipSync } from 'fflate'

export type Piece = { readonly name: string; readonly bytes: Uint8Array }

/** `folder`: that of the month of the run, from the root of the repository. */
export const archiveOf = (pieces: readonly Piece[], folder: string): Uint8Array =>
  zipSync(Object.fromEntries(pieces.map(({ name, bytes }) => [`${folder}/${name}`, bytes])), { level: 6 })

export type Parcel = {
  /** Name and text of the run. */
  readonly run: { readonly name: string; readonly text: string }
  readonly beside: readonly Piece[]
}

/** The run in an archive that was handed in, and what goes with it; null where it does not hold exactly one. */
export const openArchive = (bytes: Uint8Array): Parcel | null => {
  const pieces = Object.entries(unzipSync(bytes))
    .filter(([path]) => !path.endsWith('/'))
    .map(([path, content]): Piece => ({ name: path.slice(path.lastIndexOf('/') + 1), bytes: content }))
  const [run, second] = pieces.filter(({ name }) => name.endsWith('.md'))
  if (!run || second) return null
  return {
    run: { name: run.name, text: new TextDecoder().decode(run.bytes) },
    beside: pieces.filter((piece) => piece !== run),
  }
}
