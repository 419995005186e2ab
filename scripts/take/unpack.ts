/** What was handed in, as pieces in memory: an archive, or one run with the files that it names beside it. */
import { lstatSync, readdirSync, readFileSync, statSync } from 'node:fs'
import { basename, dirname, join } from 'node:path'
import { crc32, inflateRawSync } from 'node:zlib'
import type { Result } from '../../src/quantity/types.ts'
import { namedFiles } from '../../src/take/named-files.ts'
import { caseDoubles, isLitter, nameFault } from '../../src/take/names.ts'
import { isRunFile, type Piece, textOf } from '../../src/take/parcel.ts'
import { readZip, type ZipEntry, type ZipLimits } from '../../src/take/zip.ts'

/** Far above a run with a dozen photos and a logger file of a million rows, far below what fills a laptop. */
export const LIMITS: ZipLimits = { entries: 500, entryBytes: 200e6, allBytes: 600e6 }

type Pieces = Result<readonly Piece[], readonly string[]>

const refuse = (...error: string[]): Pieces => ({ ok: false, error })

/** Never more bytes than the archive said, whatever the packed ones hold. */
const contentOf = ({ name, deflated, packed, size, crc }: ZipEntry): Uint8Array | string => {
  const damaged = `\`${name}\` is damaged: what unpacks is not what the archive says. Download or copy it again.`
  try {
    const bytes = deflated ? inflateRawSync(packed, { maxOutputLength: Math.max(1, size) }) : packed
    return bytes.length === size && crc32(bytes) === crc ? new Uint8Array(bytes) : damaged
  } catch {
    return damaged
  }
}

const archivePieces = (bytes: Uint8Array, file: string): Pieces => {
  const read = readZip(bytes, LIMITS)
  if (!read.ok) return refuse(`${file} is not taken: ${read.error}.`)
  const entries = read.value.filter((entry) => entry.is === 'file' && !isLitter(entry.name))
  const faults = entries.flatMap(({ name }) => {
    const fault = nameFault(name)
    return fault === null ? [] : [`\`${name}\` in ${file} is not taken: ${fault}.`]
  })
  const doubles = caseDoubles(entries.map(({ name }) => name)).map(
    (names) =>
      `${names.map((name) => `\`${name}\``).join(' and ')} are one file on many systems: rename one of them.`,
  )
  if (faults.length + doubles.length > 0) return refuse(...faults, ...doubles)
  const pieces: Piece[] = []
  for (const entry of entries) {
    const content = contentOf(entry)
    if (typeof content === 'string') return refuse(content)
    pieces.push({ name: entry.name, bytes: content })
  }
  return { ok: true, value: pieces }
}

/** Files beside the run; links are not followed. */
const besides = (file: string, text: string): Piece[] => {
  const folder = dirname(file)
  const there = new Map(readdirSync(folder).map((name) => [name.normalize('NFC'), name]))
  return namedFiles(text).names.flatMap((name) => {
    const path = join(folder, there.get(name) ?? name)
    const fits = nameFault(name) === null && !isRunFile(name)
    const found = fits ? lstatSync(path, { throwIfNoEntry: false }) : undefined
    return found?.isFile() ? [{ name, bytes: new Uint8Array(readFileSync(path)) }] : []
  })
}

/** Reads the file and, of an archive, everything in it. The error is a list of sentences. */
export const piecesOf = (file: string): Pieces => {
  try {
    const { size } = statSync(file)
    if (size > LIMITS.allBytes)
      return refuse(`${file} is larger than ${LIMITS.allBytes / 1e6} MB: not taken.`)
    const bytes = new Uint8Array(readFileSync(file))
    if (!isRunFile(file)) return archivePieces(bytes, basename(file))
    return { ok: true, value: [{ name: basename(file), bytes }, ...besides(file, textOf(bytes))] }
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? String(error.code) : 'unknown reason'
    const why = { ENOENT: 'there is no such file', EISDIR: 'it is a folder' }[code] ?? code
    return refuse(`${file} cannot be read: ${why}.`)
  }
}
