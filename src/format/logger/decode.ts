/** From the bytes of a file to its text, whatever wrote it: UTF-8, UTF-16 of either order, or Windows-1252. */
import type { Encoding, LoggerText } from './types.ts'

const LABEL: Readonly<Record<Encoding, string>> = {
  'UTF-8': 'utf-8',
  'UTF-16 LE': 'utf-16le',
  'UTF-16 BE': 'utf-16be',
  'Windows-1252': 'windows-1252',
}

/** So many bytes tell the encoding. */
const LOOKED_AT = 4096

/**
 * The encoding by byte order mark (Unicode Standard, 2.6 and 23.8); without one, by where the zero bytes of Latin
 * letters and digits lie: every other byte of UTF-16, none of the others.
 */
export function encodingOf(head: Uint8Array): Exclude<Encoding, 'Windows-1252'> {
  const [first, second] = head
  if (first === 0xff && second === 0xfe) return 'UTF-16 LE'
  if (first === 0xfe && second === 0xff) return 'UTF-16 BE'
  const looked = head.subarray(0, LOOKED_AT)
  const zeros = [0, 0]
  for (let at = 0; at < looked.length; at++) if (looked[at] === 0) zeros[at % 2] = (zeros[at % 2] ?? 0) + 1
  const [even = 0, odd = 0] = zeros
  const half = looked.length / 2
  if (odd > 0.4 * half && even < 0.1 * half) return 'UTF-16 LE'
  if (even > 0.4 * half && odd < 0.1 * half) return 'UTF-16 BE'
  return 'UTF-8'
}

/**
 * The text of a file that comes in pieces of bytes (or of text, which is taken as it is). What is not valid UTF-8
 * is Windows-1252, in which every byte is a sign; only names and units can suffer from that, no figure.
 */
export function decodePieces(pieces: Iterable<Uint8Array | string>): LoggerText {
  const all = [...pieces]
  const bytes = all.filter((piece) => typeof piece !== 'string')
  if (bytes.length < all.length || all.length === 0) return { text: tidied(all.join('')) }
  const size = bytes.reduce((sum, piece) => sum + piece.length, 0)
  const found = encodingOf(joined(bytes, LOOKED_AT))
  if (found !== 'UTF-8') {
    const cut = size % 2 === 1
    return { text: tidied(decoded(bytes, found, false)), encoding: found, ...(cut ? { cut } : {}) }
  }
  try {
    return { text: tidied(decoded(bytes, 'UTF-8', true)), encoding: 'UTF-8' }
  } catch {
    return { text: tidied(decoded(bytes, 'Windows-1252', false)), encoding: 'Windows-1252' }
  }
}

function decoded(pieces: readonly Uint8Array[], encoding: Encoding, fatal: boolean): string {
  const decoder = new TextDecoder(LABEL[encoding], { fatal })
  const [only] = pieces
  if (only && pieces.length === 1) return decoder.decode(only)
  const texts = pieces.map((piece) => decoder.decode(piece, { stream: true }))
  return texts.join('') + decoder.decode()
}

/** The first bytes, across pieces. */
function joined(pieces: readonly Uint8Array[], most: number): Uint8Array {
  const head = new Uint8Array(
    Math.min(
      most,
      pieces.reduce((sum, piece) => sum + piece.length, 0),
    ),
  )
  let filled = 0
  for (const piece of pieces) {
    if (filled === head.length) break
    const part = piece.subarray(0, head.length - filled)
    head.set(part, filled)
    filled += part.length
  }
  return head
}

/** Without a mark; where lines end in a carriage return alone, it becomes a line end, at the same offset. */
function tidied(text: string): string {
  const bare = text.charCodeAt(0) === 0xfeff ? text.slice(1) : text
  return bare.includes('\r') && !bare.includes('\n') ? bare.replaceAll('\r', '\n') : bare
}
