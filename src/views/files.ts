/** Which files of the repository the site passes on. No kind that a browser would run (SVG, HTML). */
export const SERVED_TYPES: Readonly<Record<string, string>> = {
  jpg: 'image/jpeg',
  jpeg: 'image/jpeg',
  png: 'image/png',
  webp: 'image/webp',
  avif: 'image/avif',
  gif: 'image/gif',
  pdf: 'application/pdf',
  csv: 'text/csv',
  txt: 'text/plain',
  tsv: 'text/tab-separated-values',
  dat: 'text/plain',
  log: 'text/plain',
}

const PICTURES = new Set(['jpg', 'jpeg', 'png', 'webp', 'avif', 'gif'])

const ending = (path: string): string => (/\.([A-Za-z0-9]+)$/.exec(path)?.[1] ?? '').toLowerCase()

export const isServed = (path: string): boolean => SERVED_TYPES[ending(path)] !== undefined
export const isPicture = (path: string): boolean => PICTURES.has(ending(path))

/** `photos/a.jpg` named in `records/runs/2026-03/x.md` → `records/runs/2026-03/photos/a.jpg`; null where it leaves the repository. */
export const besideRecord = (record: string, file: string): string | null => {
  const parts = record.split('/').slice(0, -1)
  for (const part of file.split('/')) {
    if (part === '..') {
      if (parts.pop() === undefined) return null
    } else if (part !== '.' && part !== '') parts.push(part)
  }
  return parts.join('/')
}
