import { chromium } from 'playwright-core'
import { addressOf, serve } from '../../scripts/serve.ts'
import { pagesOf } from '../../test/browser/sites.ts'

const dist = process.argv[2]!
const server = await serve(dist, 0)
const browser = await chromium.launch({
  executablePath: '/usr/bin/chromium',
  args: ['--no-sandbox', '--disable-gpu'],
})
const p = await (await browser.newContext({ viewport: { width: 360, height: 800 } })).newPage()
await p.route('**/*.woff2', (r) => r.abort())
for (const page of pagesOf(dist)) {
  await p.goto(addressOf(server) + page)
  const o = await p.evaluate(() => document.documentElement.scrollWidth - 360)
  if (o > 0)
    console.log(
      page,
      o,
      await p.evaluate(() =>
        [...document.querySelectorAll('main *, header *')]
          .filter((e) => {
            const r = e.getBoundingClientRect()
            return r.right > 361 && !e.closest('.scroll') && !e.closest('.equation')
          })
          .slice(0, 4)
          .map((e) => e.tagName + '.' + e.getAttribute('class') + ' ' + (e.textContent ?? '').slice(0, 60)),
      ),
    )
}
await browser.close()
server.close()
