import { chromium } from 'playwright-core'
import { addressOf, serve } from '../../scripts/serve.ts'

const [dist, ...pages] = process.argv.slice(2)
const server = await serve(dist!, 0)
const base = addressOf(server)
const browser = await chromium.launch({
  executablePath: '/usr/bin/chromium',
  args: [
    '--no-sandbox',
    '--disable-gpu',
    '--disable-quic',
    '--no-first-run',
    '--disable-background-networking',
    '--disable-component-update',
    '--disable-sync',
  ],
})
for (const page of pages)
  for (const [w, scheme] of [
    [1280, 'light'],
    [360, 'light'],
    [1280, 'dark'],
  ] as const) {
    if (scheme === 'dark' && !page.startsWith('runs/2')) continue
    const ctx = await browser.newContext({ viewport: { width: w, height: 800 }, colorScheme: scheme })
    const p = await ctx.newPage()
    p.on('console', (m) => {
      if (m.type() === 'error' || m.type() === 'warning') console.log(page, m.text())
    })
    p.on('pageerror', (e) => console.log(page, e.message))
    await p.goto(base + page)
    const over = await p.evaluate(
      () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
    )
    if (over > 0) console.log('SIDEWAYS', page, w, over)
    const h = await p.evaluate(() => document.documentElement.scrollHeight)
    const step = w === 360 ? 2400 : 1400
    const max = Number(process.env.MAX ?? 2)
    for (let y = 0, i = 0; y < h && i < max; y += step, i++)
      await p.screenshot({
        path: `/tmp/shots/${(page || 'front').replace(/\//g, '_')}-${w}-${scheme}-${i}.png`,
        fullPage: true,
        clip: { x: 0, y, width: w, height: Math.min(step, h - y) },
      })
    await ctx.close()
  }
await browser.close()
server.close()
