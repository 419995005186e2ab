/** A browser and a server for one test file. */
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

export const openSite = async (folder: string, base = '/'): Promise<Opened> => {
  const server: Server = await serve(folder, 0, base)
  const executablePath = findBrowser()
  if (executablePath === null) throw new Error('there is no Chromium to test with')
  const browser = await chromium.launch({ executablePath, args: QUIET })
  const close = async (): Promise<void> => {
    await browser.close()
    await new Promise((done) => server.close(done))
  }
  return { browser, address: addressOf(server, base), close }
}
