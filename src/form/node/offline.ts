/** After the build: what the forms hold, what says which state it is, and the worker that keeps it without network. */
import { createHash } from 'node:crypto'
import { readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { fileURLToPath } from 'node:url'
import type { AstroIntegration } from 'astro'
import { transformWithOxc } from 'vite'
import { loadViews } from '../../views/load.ts'
import type { Pack } from '../desk.ts'
import { packFiles, sourcesOf } from './pack.ts'
import { revisionOf } from './revision.ts'

const WORKER = 'src/form/offline/service-worker.web.ts'

/** Letters of other scripts come from the device: they would double what a phone has to fetch. */
const OTHER_LETTERS = /-(?:cyrillic|greek|vietnamese)[^/]*\.woff2$/

const filesBelow = (folder: string, prefix: string): string[] =>
  readdirSync(join(folder, prefix), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) =>
      join(entry.parentPath, entry.name).slice(folder.length).replaceAll('\\', '/').replace(/^\//, ''),
    )
    .sort()

const digestOf = (texts: readonly (string | Uint8Array)[]): string => {
  const hash = createHash('sha256')
  for (const text of texts) hash.update(text).update('\0')
  return hash.digest('hex').slice(0, 16)
}

const manifest = (base: string, title: string) => ({
  name: `Record a run: ${title}`,
  short_name: 'Record a run',
  start_url: `${base}record/`,
  scope: `${base}record/`,
  display: 'standalone',
  background_color: '#f7f6f1',
  theme_color: '#0b5674',
  icons: [{ src: `${base}icon.svg`, sizes: 'any', type: 'image/svg+xml', purpose: 'any' }],
})

const packOf = (): Omit<Pack, 'revision'> & { readonly root: string } => {
  const { root, views } = loadViews()
  const folder = resolve(root)
  return { root: folder, files: packFiles(folder, sourcesOf(views)) }
}

export const offlineForms = (base: string): AstroIntegration => ({
  name: 'offline-forms',
  hooks: {
    'astro:build:done': async ({ dir }) => {
      const out = fileURLToPath(dir).replace(/\/$/, '')
      const { root, files } = packOf()
      const pages = filesBelow(out, 'record')
      const assets = filesBelow(out, 'assets').filter((file) => !OTHER_LETTERS.test(file))
      const title = loadViews().views[0]?.data.campaign ?? ''
      const digest = digestOf([
        JSON.stringify(files),
        ...[...pages, ...assets].flatMap((file) => [file, readFileSync(join(out, file))]),
      ])
      const revision = { ...revisionOf(root), digest }
      const write = (name: string, text: string): void => writeFileSync(join(out, 'record', name), text)
      write('shared.json', JSON.stringify({ revision, files }))
      write('revision.json', JSON.stringify(revision))
      write('manifest.json', JSON.stringify(manifest(base, title)))
      const addresses = [
        ...pages.map((file) => file.replace(/index\.html$/, '')),
        ...assets,
        'record/shared.json',
        'record/manifest.json',
        'icon.svg',
      ]
      const held = JSON.stringify({ digest, base, files: addresses })
      const { code } = await transformWithOxc(readFileSync(resolve(WORKER), 'utf8'), WORKER)
      write('worker.js', `const HELD = ${held}\n${code}`)
    },
    'astro:server:setup': ({ server }) => {
      server.middlewares.use((request, response, next) => {
        if (!/\/record\/shared\.json(?:\?|$)/.test(request.url ?? '')) return next()
        const { root, files } = packOf()
        const revision = { ...revisionOf(root), digest: digestOf([JSON.stringify(files)]) }
        response.setHeader('Content-Type', 'application/json')
        response.end(JSON.stringify({ revision, files }))
      })
    },
  },
})
