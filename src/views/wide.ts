import { chromium } from 'playwright-core'
import { addressOf, serve } from '../../scripts/serve.ts'

const [dist, ...pages] = process.argv.slice(2)
const server = await serve(dist!, 0)
const browser = await chromium.launch({
  executablePath: '/usr/bin/chromium',
  args: ['--no-sandbox', '--disable-gpu'],
})
const p = await (await browser.newContext({ viewport: { width: 360, height: 800 } })).newPage()
p.on('response', (r) => {
  if (r.status() >= 400) console.log(r.status(), r.url())
})
for (const page of pages) {
  const t = performance.now()
  await p.goto(addressOf(server) + page)
  console.log(page, performance.now() - t)
  console.log(
    await p.evaluate(() =>
      [...document.querySelectorAll('main *')]
        .filter((e) => {
          const r = e.getBoundingClientRect()
          return r.right > 361 && !e.closest('.scroll') && !e.closest('.equation')
        })
        .slice(0, 6)
        .map((e) => e.tagName + '.' + e.className + ' ' + (e.textContent ?? '').slice(0, 60)),
    ),
  )
}
await browser.close()
server.close()
