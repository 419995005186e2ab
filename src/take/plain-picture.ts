/**
 * Whether a picture holds nothing but the picture: no position, time, name of a camera, text or second picture.
 * JPEG after ITU-T T.81 annex B (markers) and ISO/IEC 10918-5 (APP0), PNG after ISO/IEC 15948 (chunks).
 */

const ascii = (bytes: Uint8Array, at: number, length: number): string =>
  String.fromCharCode(...bytes.subarray(at, at + length))

const SCAN = 0xda
/** APP0 (JFIF), APP14 (colour transform), and APP2 where it is a colour profile. */
const isHarmless = (marker: number, bytes: Uint8Array, at: number): boolean =>
  marker === 0xe0 || marker === 0xee || (marker === 0xe2 && ascii(bytes, at, 11) === 'ICC_PROFILE')

export const isPlainJpeg = (bytes: Uint8Array): boolean => {
  if (bytes[0] !== 0xff || bytes[1] !== 0xd8) return false
  let at = 2
  while (at + 4 <= bytes.length) {
    if (bytes[at] !== 0xff) return false
    const marker = bytes[at + 1] ?? 0
    const isExtra = (marker >= 0xe0 && marker <= 0xef) || marker === 0xfe
    if (isExtra && !isHarmless(marker, bytes, at + 4)) return false
    if (marker === SCAN) break
    at += 2 + ((bytes[at + 2] ?? 0) << 8) + (bytes[at + 3] ?? 0)
  }
  // The first end marker after the scan began must be the last thing in the file: cameras hang more pictures behind it.
  for (; at + 1 < bytes.length; at += 1) {
    if (bytes[at] === 0xff && bytes[at + 1] === 0xd9) return at + 2 === bytes.length
  }
  return false
}

const PNG = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]
const PICTURE_CHUNKS = new Set(
  'IHDR PLTE IDAT IEND tRNS gAMA cHRM sRGB iCCP sBIT bKGD pHYs hIST cICP'.split(' '),
)

export const isPlainPng = (bytes: Uint8Array): boolean => {
  if (PNG.some((byte, index) => bytes[index] !== byte)) return false
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength)
  for (let at = PNG.length; at + 12 <= bytes.length; ) {
    const kind = ascii(bytes, at + 4, 4)
    if (!PICTURE_CHUNKS.has(kind)) return false
    at += 12 + view.getUint32(at)
    if (kind === 'IEND') return at === bytes.length
  }
  return false
}
