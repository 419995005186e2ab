/** A run with its data file and its photos in one archive, each in the place where it belongs in a repository. */
import { zipSync } from 'fflate'

export type Piece = { readonly name: string; readonly bytes: Uint8Array }

/** `folder`: that of the month of the run, from the root of the repository. */
export const archiveOf = (pieces: readonly Piece[], folder: string): Uint8Array =>
  zipSync(Object.fromEntries(pieces.map(({ name, bytes }) => [`${folder}/${name}`, bytes])), { level: 6 })
