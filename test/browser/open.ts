/** A browser for all test files of one process, and a server for one test file. */
import type { Server } from 'node:http'
import { type Browser, chromium } from 'playwright-core'
import { findBrowser } from '../../scripts/browser.ts'
import { addressOf, serve } from '../../scripts/serve.ts'

export type Opened = {
  readonly browser: Browser
  readonly address: string
  readonly close: () => Promise<void>
}

const QUIET = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
]

const launch = (): Promise<Browser> => {
  const executablePath = findBrowser()
  if (executablePath === null) throw new Error('there is no Chromium to test with')
  return chromium.launch({ executablePath, args: QUIET })
}

let launched: Promise<Browser> | undefined

/** The browser ends with the process; contexts that a test leaves open are closed with the site. */
export const openSite = async (folder: string, base = '/'): Promise<Opened> => {
  const server: Server = await serve(folder, 0, base)
  launched ??= launch()
  const browser = await launched
  const close = async (): Promise<void> => {
    for (const context of browser.contexts()) await context.close()
    server.closeAllConnections()
    await new Promise((done) => server.close(done))
  }
  return { browser, address: addressOf(server, base), close }
}
