/** Copies the photos and data files that pages show into the built site, and serves them while developing. */
import { copyFile, mkdir, readFile, stat } from 'node:fs/promises'
import { dirname, extname, resolve, sep } from 'node:path'
import { fileURLToPath } from 'node:url'
import type { AstroIntegration } from 'astro'
import { SERVED_TYPES } from './files.ts'
import { loadViews } from './load.ts'

const root = (): string => resolve(loadViews().root)

/** Full path of a file of the repository; null where it would lie outside, or is of a kind that is not served. */
const inside = (file: string): string | null => {
  const full = resolve(root(), file)
  return full.startsWith(root() + sep) && SERVED_TYPES[extname(full).slice(1).toLowerCase()] ? full : null
}

export const recordFiles = (): AstroIntegration => ({
  name: 'record-files',
  hooks: {
    'astro:build:done': async ({ dir, logger }) => {
      const files = new Set(loadViews().views.flatMap((view) => view.data.files))
      for (const file of files) {
        const from = inside(file)
        const there =
          from !== null &&
          (await stat(from).then(
            (found) => found.isFile(),
            () => false,
          ))
        if (!from || !there) {
          logger.warn(`${file} is named in a record and is not there`)
          continue
        }
        const to = fileURLToPath(new URL(`files/${file.split('/').map(encodeURIComponent).join('/')}`, dir))
        await mkdir(dirname(to), { recursive: true })
        await copyFile(from, to)
      }
    },
    'astro:server:setup': ({ server }) => {
      server.middlewares.use(async (request, response, next) => {
        const file = /\/files\/([^?#]+)/.exec(request.url ?? '')?.[1]
        const from = file ? inside(decodeURIComponent(file)) : null
        const bytes = from ? await readFile(from).catch(() => null) : null
        if (!from || !bytes) return next()
        response.setHeader(
          'Content-Type',
          SERVED_TYPES[extname(from).slice(1).toLowerCase()] ?? 'application/octet-stream',
        )
        response.end(bytes)
      })
    },
  },
})
