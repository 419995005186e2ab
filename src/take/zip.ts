/**
 * The directory of a zip archive, read without trusting it. The plain form only, as ISO/IEC 21320-1 keeps it for
 * document containers: one volume, stored or deflated entries, nothing encrypted, no 64-bit sizes.
 */
import type { Result } from '../quantity/types.ts'

export type ZipEntry = {
  /** As written, with forward slashes; Unicode composed, so that names typed on different systems are equal. */
  readonly name: string
  readonly is: 'file' | 'folder'
  readonly deflated: boolean
  /** Bytes as packed, in the archive. */
  readonly packed: Uint8Array
  /** Size and check sum that the archive claims for the content. */
  readonly size: number
  readonly crc: number
}

export type ZipLimits = { readonly entries: number; readonly entryBytes: number; readonly allBytes: number }

const END = 0x06054b50
const CENTRAL = 0x02014b50
const LOCAL = 0x04034b50
const END_LENGTH = 22
const CENTRAL_LENGTH = 46
const LOCAL_LENGTH = 30
const LONGEST_COMMENT = 0xffff

const ENCRYPTED = 1 << 0
const IN_UTF8 = 1 << 11
const STORED = 0
const DEFLATED = 8
/** File types in the upper half of the external attributes, as Unix writes them. */
const TYPE = 0xf000
const ORDINARY = [0, 0x8000, 0x4000]
const LINK = 0xa000

/** A fault of the whole archive; caught in `readZip` and given back as its error. */
type Fault = { readonly fault: string }

const isZip = (bytes: Uint8Array): boolean => bytes[0] === 0x50 && bytes[1] === 0x4b

/** Where the end record stands: its comment must reach exactly to the end of the file. */
const endOf = (view: DataView): number => {
  const last = view.byteLength - END_LENGTH
  for (let at = last; at >= Math.max(0, last - LONGEST_COMMENT); at -= 1) {
    if (
      view.getUint32(at, true) === END &&
      at + END_LENGTH + view.getUint16(at + 20, true) === view.byteLength
    )
      return at
  }
  return -1
}

const hex = (bytes: Uint8Array): string =>
  Array.from(bytes, (byte) =>
    byte > 31 && byte < 127 ? String.fromCharCode(byte) : `\\x${byte.toString(16).padStart(2, '0')}`,
  ).join('')

/** UTF-8, marked or not. Older code pages say nothing of themselves, and a guess would rename somebody's file. */
const nameOf = (bytes: Uint8Array, flags: number): string | Fault => {
  try {
    return new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes).normalize('NFC')
  } catch {
    const marked = flags & IN_UTF8 ? 'says that it is UTF-8 and is not' : 'is not UTF-8'
    return { fault: `the name \`${hex(bytes)}\` ${marked}: rename that file and pack it again` }
  }
}

type Central = {
  readonly name: string
  readonly rawName: Uint8Array
  readonly at: number
  readonly packed: number
  readonly size: number
  readonly crc: number
  readonly deflated: boolean
  readonly next: number
}

const centralAt = (bytes: Uint8Array, view: DataView, at: number, end: number): Central | Fault => {
  if (at + CENTRAL_LENGTH > end || view.getUint32(at, true) !== CENTRAL)
    return { fault: 'its directory is damaged' }
  const flags = view.getUint16(at + 8, true)
  const method = view.getUint16(at + 10, true)
  const nameEnd = at + CENTRAL_LENGTH + view.getUint16(at + 28, true)
  const next = nameEnd + view.getUint16(at + 30, true) + view.getUint16(at + 32, true)
  if (next > end) return { fault: 'its directory is damaged' }
  const rawName = bytes.subarray(at + CENTRAL_LENGTH, nameEnd)
  const name = nameOf(rawName, flags)
  if (typeof name !== 'string') return name
  const type = (view.getUint32(at + 38, true) >>> 16) & TYPE
  if (type === LINK) return { fault: `\`${name}\` is a link: pack the file itself` }
  if (!ORDINARY.includes(type)) return { fault: `\`${name}\` is no ordinary file` }
  if (flags & ENCRYPTED)
    return { fault: `\`${name}\` is encrypted: unpack it with its password, and hand in what was inside` }
  if (method !== STORED && method !== DEFLATED)
    return { fault: `\`${name}\` is packed in a way that is not read here (${method}): pack it as plain zip` }
  const sizes = { packed: view.getUint32(at + 20, true), size: view.getUint32(at + 24, true) }
  const crc = view.getUint32(at + 16, true)
  return {
    name,
    rawName,
    at: view.getUint32(at + 42, true),
    ...sizes,
    crc,
    deflated: method === DEFLATED,
    next,
  }
}

/** Where the packed bytes of an entry begin and end; the header before them must name the same file. */
const packedOf = (
  bytes: Uint8Array,
  view: DataView,
  entry: Central,
  end: number,
): { readonly from: number; readonly to: number } | Fault => {
  const { at, name, rawName } = entry
  if (at + LOCAL_LENGTH > end || view.getUint32(at, true) !== LOCAL)
    return { fault: `the beginning of \`${name}\` is damaged` }
  const nameLength = view.getUint16(at + 26, true)
  const from = at + LOCAL_LENGTH + nameLength + view.getUint16(at + 28, true)
  const local = bytes.subarray(at + LOCAL_LENGTH, at + LOCAL_LENGTH + nameLength)
  if (nameLength !== rawName.length || local.some((byte, index) => byte !== rawName[index]))
    return { fault: `\`${name}\` has two names in the archive: it was tampered with, or is damaged` }
  if (from + entry.packed > end) return { fault: `\`${name}\` is cut off` }
  return { from, to: from + entry.packed }
}

const megabytes = (bytes: number): string => `${Math.ceil(bytes / 1e5) / 10} MB`

const tooMuch = (entries: readonly Central[], limits: ZipLimits): string | null => {
  const large = entries.find((entry) => entry.size > limits.entryBytes)
  if (large)
    return `\`${large.name}\` would be ${megabytes(large.size)}, at most ${megabytes(limits.entryBytes)} are taken`
  const all = entries.reduce((sum, entry) => sum + entry.size, 0)
  return all > limits.allBytes
    ? `it would unpack to ${megabytes(all)}, at most ${megabytes(limits.allBytes)} are taken`
    : null
}

/** The error is a sentence about the archive, without a full stop. Nothing is unpacked here. */
export const readZip = (bytes: Uint8Array, limits: ZipLimits): Result<readonly ZipEntry[], string> => {
  const refuse = (error: string) => ({ ok: false, error }) as const
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength)
  const end = endOf(view)
  if (end < 0)
    return refuse(isZip(bytes) ? 'it is cut off: its directory is missing' : 'it is no zip archive')
  const count = view.getUint16(end + 10, true)
  const start = view.getUint32(end + 16, true)
  if (count === 0xffff || start === 0xffffffff)
    return refuse('it is of the 64-bit kind: pack it as plain zip')
  if (view.getUint16(end + 4, true) !== 0 || view.getUint16(end + 8, true) !== count)
    return refuse('it is one of several volumes: pack it as one')
  if (start + view.getUint32(end + 12, true) !== end)
    return refuse('its directory is not where it says: it is damaged, or something was put before it')
  if (count > limits.entries) return refuse(`it holds ${count} entries, at most ${limits.entries} are taken`)

  const entries: Central[] = []
  for (let at = start; entries.length < count; ) {
    const entry = centralAt(bytes, view, at, end)
    if ('fault' in entry) return refuse(entry.fault)
    entries.push(entry)
    at = entry.next
  }
  const much = tooMuch(entries, limits)
  if (much !== null) return refuse(much)

  const found: ZipEntry[] = []
  let free = 0
  // Entries that share bytes are how a small archive unpacks to a mountain.
  for (const entry of entries.toSorted((a, b) => a.at - b.at)) {
    const place = packedOf(bytes, view, entry, start)
    if ('fault' in place) return refuse(place.fault)
    if (entry.at < free) return refuse(`\`${entry.name}\` lies over another entry: the archive is damaged`)
    free = place.to
    const { name, size, crc, deflated } = entry
    const is = name.endsWith('/') ? 'folder' : 'file'
    found.push({ name, is, deflated, packed: bytes.subarray(place.from, place.to), size, crc })
  }
  return { ok: true, value: found }
}
