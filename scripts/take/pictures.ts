/** Photos fit for a repository: small enough, upright, and without the position and other data of the camera. */
import type { CampaignSettings } from '../../src/format/types.ts'
import type { Result } from '../../src/quantity/types.ts'
import type { Placement } from '../../src/take/parcel.ts'
import { isPlainJpeg, isPlainPng } from '../../src/take/plain-picture.ts'

/** Longest edge in pixels, tried in order until the picture fits. The first still shows the digits of a gauge. */
const EDGES = [2560, 2048, 1600, 1280, 1024, 800, 640]
/** A picture that says it is larger is not unpacked. */
const MOST_PIXELS = 150e6
const JPEG_QUALITY = 85
const WEBP_QUALITY = 82
const AVIF_QUALITY = 60

/** Ending → what must be inside, as sharp calls it. */
const FORMATS: Readonly<Record<string, string>> = {
  jpg: 'jpeg',
  jpeg: 'jpeg',
  png: 'png',
  webp: 'webp',
  avif: 'heif',
  gif: 'gif',
}

const endingOf = (path: string): string => (/\.([^./]+)$/.exec(path)?.[1] ?? '').toLowerCase()

const size = (bytes: number): string =>
  bytes < 1e6 ? `${Math.ceil(bytes / 1e3)} kB` : `${(Math.ceil(bytes / 1e5) / 10).toFixed(1)} MB`

/** Loaded where there is a picture: most runs have none, and it takes its time. */
const open = async (bytes: Uint8Array) => {
  const { default: sharp } = await import('sharp')
  return sharp(bytes, { limitInputPixels: MOST_PIXELS, failOn: 'truncated' })
}

/** Without metadata, turned as the camera was held. */
const drawn = async (bytes: Uint8Array, format: string, edge: number): Promise<Uint8Array> => {
  const opened = await open(bytes)
  const picture = opened
    .autoOrient()
    .resize({ width: edge, height: edge, fit: 'inside', withoutEnlargement: true })
  const made = {
    jpeg: () => picture.jpeg({ quality: JPEG_QUALITY }),
    png: () => picture.png({ compressionLevel: 9 }),
    webp: () => picture.webp({ quality: WEBP_QUALITY }),
    heif: () => picture.avif({ quality: AVIF_QUALITY }),
  }[format]
  return (made?.() ?? picture).toBuffer()
}

const isPlain = (format: string, bytes: Uint8Array): boolean =>
  (format === 'jpeg' && isPlainJpeg(bytes)) || (format === 'png' && isPlainPng(bytes)) || format === 'gif'

export type Fitted = { readonly placement: Placement; readonly note: string }

const fitPicture = async (
  placement: Placement,
  format: string,
  most: number,
): Promise<Result<Fitted, string>> => {
  const { bytes, name } = placement
  const { format: inside, width = 0, height = 0 } = await (await open(bytes)).metadata()
  if (inside !== format)
    return { ok: false, error: `\`${name}\` holds ${inside}, not what its ending says: rename it.` }
  const fits = bytes.length <= most && Math.max(width, height) <= (EDGES[0] ?? 0)
  if (isPlain(format, bytes) && (fits || format === 'gif')) {
    if (bytes.length <= most) return { ok: true, value: { placement, note: '' } }
    return {
      ok: false,
      error: `\`${name}\` is ${size(bytes.length)}, at most ${size(most)}: make it a jpg or png.`,
    }
  }
  for (const edge of EDGES) {
    const small = new Uint8Array(await drawn(bytes, format, edge))
    if (small.length > most) continue
    const note = `${size(bytes.length)} → ${size(small.length)}, without data of the camera`
    return { ok: true, value: { placement: { ...placement, bytes: small }, note } }
  }
  return {
    ok: false,
    error: `\`${name}\` cannot be made smaller than ${size(most)}: crop it, or make it a jpg.`,
  }
}

const isAllowed = (ending: string, kinds: readonly string[]): boolean =>
  kinds.some((kind) => kind === ending || (FORMATS[kind] !== undefined && FORMATS[kind] === FORMATS[ending]))

/** Pictures are made to fit the campaign's limits; other files must fit as they are. Readings are never cut. */
export const fitFile = async (
  placement: Placement,
  { maxBytes, kinds }: CampaignSettings['files'],
): Promise<Result<Fitted, string>> => {
  const { name, path, bytes, what } = placement
  if (what === 'run') return { ok: true, value: { placement, note: '' } }
  if (what === 'data') {
    const note =
      bytes.length > maxBytes ? `${size(bytes.length)}, kept whole: readings are not made smaller` : ''
    return { ok: true, value: { placement, note } }
  }
  const ending = endingOf(path)
  if (!isAllowed(ending, kinds)) {
    const error = `\`${name}\` is not taken: of files, campaign.yaml takes ${kinds.join(', ')}. Make it one of these.`
    return { ok: false, error }
  }
  const format = FORMATS[ending]
  if (format === undefined) {
    if (bytes.length <= maxBytes) return { ok: true, value: { placement, note: '' } }
    const error = `\`${name}\` is ${size(bytes.length)}; campaign.yaml takes at most ${size(maxBytes)} a file.`
    return { ok: false, error }
  }
  try {
    return await fitPicture(placement, format, maxBytes)
  } catch (error) {
    const why = error instanceof Error ? error.message.replace(/\s*\n\s*/g, '; ') : String(error)
    return {
      ok: false,
      error: `\`${name}\` cannot be read as a picture (${why}): take it again, or leave it out.`,
    }
  }
}
