/** A static file server for the built site: looking at it and browser tests, not for the open network. */
import { createReadStream, existsSync, statSync } from 'node:fs'
import { createServer, type Server } from 'node:http'
import { extname, join, normalize, sep } from 'node:path'
import { createGzip } from 'node:zlib'

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.woff2': 'font/woff2',
  '.png': 'image/png',
  '.jpg': 'image/jpeg',
  '.jpeg': 'image/jpeg',
  '.webp': 'image/webp',
  '.csv': 'text/csv; charset=utf-8',
  '.txt': 'text/plain; charset=utf-8',
}

/** No code but the site's own files: what a page of records must never do is run something. */
const POLICY =
  "default-src 'self'; style-src 'self'; script-src 'self'; img-src 'self' data: blob:; object-src 'none'; base-uri 'none'"

const fileFor = (folder: string, base: string, address: string): string | null => {
  const path = decodeURIComponent(new URL(address, 'http://localhost').pathname)
  if (!path.startsWith(base)) return null
  const file = normalize(join(folder, path.slice(base.length)))
  if (file !== folder && !file.startsWith(folder + sep)) return null
  if (existsSync(file) && statSync(file).isDirectory()) return join(file, 'index.html')
  return file
}

/** Text is sent packed where the browser takes it, as hosts of pages do: a phone in the hangar has a slow network. */
const isPacked = (type: string, accepted: string | string[] | undefined): boolean =>
  /^text\/|json|svg/.test(type) && /\bgzip\b/.test(String(accepted))

/** Serves `folder` under `base` (`/`, `/some/base/`); port 0 takes any that is free. */
export const serve = (folder: string, port: number, base = '/'): Promise<Server> =>
  new Promise((done, failed) => {
    const server = createServer((request, response) => {
      const file = fileFor(folder, base, request.url ?? '/')
      if (!file || !existsSync(file) || !statSync(file).isFile()) {
        response.writeHead(404, { 'content-type': 'text/plain; charset=utf-8' }).end('There is no such page.')
        return
      }
      const type = TYPES[extname(file)] ?? 'application/octet-stream'
      const packed = isPacked(type, request.headers['accept-encoding'])
      response.writeHead(200, {
        'content-type': type,
        'content-security-policy': POLICY,
        'cache-control': 'no-store',
        vary: 'accept-encoding',
        ...(packed ? { 'content-encoding': 'gzip' } : {}),
      })
      const content = createReadStream(file)
      if (packed) content.pipe(createGzip()).pipe(response)
      else content.pipe(response)
    })
    server.once('error', failed)
    server.listen(port, 'localhost', () => done(server))
  })

export const addressOf = (server: Server, base = '/'): string => {
  const address = server.address()
  const port = typeof address === 'object' && address ? address.port : 0
  return `http://localhost:${port}${base}`
}
