/** Recording a run in a real browser: on a phone, without network, through a crash, with a store that is full. */
import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { unzipSync } from 'fflate'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { piecesOf } from '../../scripts/take/unpack.ts'
import { previewRun } from '../../src/form/preview.ts'
import { reopenRun } from '../../src/form/reopen.ts'
import { sortOut } from '../../src/take/parcel.ts'
import { methods, pack } from '../form/demo.ts'
import { CARD, measuresShown, openForm, pasteReadings, phoneOf, sideways, verdict, who } from './form-page.ts'
import { type Opened, openSite } from './open.ts'
import { BASE, BASED, formsOf, PLAIN } from './sites.ts'

let site: Opened
const phone = (from = site, more?: object) => phoneOf(from, more)

beforeAll(async () => {
  site = await openSite(PLAIN)
})
afterAll(() => site.close())

describe('a run from the first field to the file', () => {
  it('is judged live, and the file gives the same', async () => {
    const { tab, faults } = await openForm(await phone(), site.address + CARD)
    await who(tab)
    await pasteReadings(tab)
    const shown = await verdict(tab)
    expect(shown).toBe('pass')
    const measures = await measuresShown(tab)
    await expect.poll(() => tab.locator('.todo').textContent()).toContain('without a remark')
    expect(await tab.locator('#result svg[role=img]').count()).toBeGreaterThan(1)
    expect(await sideways(tab)).toBe(0)
    const downloading = tab.waitForEvent('download')
    await tab.getByRole('button', { name: 'Download', exact: true }).click()
    const file = await downloading
    expect(file.suggestedFilename()).toBe('2026-04-15-0900-hull-bay-leak-hull-bay-1.md')
    const read = reopenRun(readFileSync(await file.path(), 'utf8'))
    if (!read.ok) throw new Error(read.message)
    const again = previewRun(pack, methods, read.state, [])
    expect(again.findings).toEqual([])
    expect(again.measures.map(({ name, result }) => [name, result])).toEqual(measures)
    expect(again.verdict).toBe(shown)
    expect(faults).toEqual([])
  })

  it('goes on where a handed-in file ended', async () => {
    const { tab, faults } = await openForm(await phone(), site.address + CARD)
    const name = '2026-02-05-0935-hull-bay-leak-bay-1'
    const text = readFileSync(`records/runs/2026-02/${name}.md`, 'utf8')
    await tab.getByText('Open a run that was handed in').click()
    await tab
      .getByLabel('File of the run')
      .setInputFiles({ name: `${name}.md`, mimeType: 'text/markdown', buffer: Buffer.from(text) })
    await tab.waitForURL(/\?run=/)
    expect(await verdict(tab)).toBe('pass')
    expect(await tab.getByLabel('pressure, row 22').inputValue()).toBe('-1690')
    expect(faults).toEqual([])
  })

  it('takes photos along in an archive, each in its place', async () => {
    const { tab } = await openForm(await phone(), site.address + CARD)
    await who(tab)
    const png = Buffer.from(
      'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==',
      'base64',
    )
    await tab
      .getByLabel('Add photos')
      .setInputFiles({ name: 'IMG_1.PNG', mimeType: 'image/png', buffer: png })
    await tab.getByLabel('Caption').fill('the port, before')
    const downloading = tab.waitForEvent('download')
    await tab.getByRole('button', { name: 'Download', exact: true }).click()
    const archive = join(mkdtempSync(join(tmpdir(), 'handed-in-')), 'run.zip')
    await (await downloading).saveAs(archive)
    const entries = unzipSync(new Uint8Array(readFileSync(archive)))
    const id = '2026-04-15-0900-hull-bay-leak-hull-bay-1'
    const pieces = piecesOf(archive)
    const parcel = pieces.ok ? sortOut(pieces.value) : pieces
    expect(parcel.ok && parcel.value.left).toEqual([])
    const taken = parcel.ok ? parcel.value.runs.flatMap((run) => run.placements) : []
    expect(taken.map(({ path }) => path).sort()).toEqual(Object.keys(entries).sort())
    expect(Object.keys(entries).sort()).toEqual([
      `records/runs/2026-04/${id}-1.png`,
      `records/runs/2026-04/${id}.md`,
    ])
    expect(Buffer.from(entries[`records/runs/2026-04/${id}-1.png`] ?? []).equals(png)).toBe(true)
  })
})

describe('a logger file', () => {
  const exported = (count: number): Buffer => {
    const rows = Array.from({ length: count }, (_, row) => {
      const share = row / count
      const cells = [
        share * 6300,
        -2260 + share * 90 + (row % 7) * 0.2,
        12.1 + share * 0.2,
        1009.42 - (row % 5) * 0.01,
      ]
      return cells.map((cell) => cell.toFixed(3).replace('.', ',')).join(';')
    })
    return Buffer.from(['Logger 7', 'Zeit;P1;temperature;baro', 's;Pa;°C;hPa', ...rows].join('\n'))
  }

  it('is looked at, its columns are chosen, and it goes along under the name of the run', async () => {
    const { tab } = await openForm(await phone(), site.address + CARD)
    await who(tab)
    await tab.getByText('Take the readings from a logger file').click()
    const buffer = exported(400)
    await tab.getByLabel('Logger file').setInputFiles({ name: 'LOG.TXT', mimeType: 'text/plain', buffer })
    await tab.getByLabel('Column for time').selectOption('Zeit')
    await tab.getByLabel('Column for pressure').selectOption('P1')
    expect(await tab.getByLabel('Decimal sign of the file').inputValue()).toBe(',')
    expect(await verdict(tab)).toBe('pass')
    expect(await sideways(tab)).toBe(0)
    await tab.reload()
    expect(await verdict(tab)).toBe('pass')
    const downloading = tab.waitForEvent('download')
    await tab.getByRole('button', { name: 'Download', exact: true }).click()
    const entries = unzipSync(new Uint8Array(readFileSync(await (await downloading).path())))
    const id = 'records/runs/2026-04/2026-04-15-0900-hull-bay-leak-hull-bay-1'
    expect(Object.keys(entries).sort()).toEqual([`${id}.md`, `${id}.txt`])
    expect(Buffer.from(entries[`${id}.txt`] ?? []).equals(buffer)).toBe(true)
    expect(Buffer.from(entries[`${id}.md`] ?? []).toString()).toContain('    pressure: {from: P1, unit: Pa}')
  })

  it('of a million samples never stops the page', async () => {
    const { tab } = await openForm(await phone(), site.address + CARD)
    await who(tab)
    await tab.getByText('Take the readings from a logger file').click()
    const path = join(mkdtempSync(join(tmpdir(), 'logger-')), 'log.csv')
    writeFileSync(path, exported(1_000_000))
    const longest = await tab.evaluateHandle(() => {
      const seen = { gap: 0 }
      let last = performance.now()
      setInterval(() => {
        const here = performance.now()
        seen.gap = Math.max(seen.gap, here - last)
        last = here
      }, 10)
      return seen
    })
    await tab.getByLabel('Logger file').setInputFiles(path)
    await tab.getByLabel('Column for time').selectOption('Zeit', { timeout: 60_000 })
    await tab.getByLabel('Column for pressure').selectOption('P1')
    await tab.waitForSelector('#result .answer .stamp', { timeout: 90_000 })
    expect(await longest.evaluate(({ gap }) => gap)).toBeLessThan(500)
  })
})

describe('at the valve', () => {
  it('one button stamps a reading, Enter goes on, the sign has a key, a comma is understood or asked about', async () => {
    const { tab } = await openForm(await phone(), site.address + CARD)
    await tab.getByRole('button', { name: 'Take a reading now' }).click()
    expect(await tab.getByLabel('time, row 1').inputValue()).toMatch(/^\d\d:\d\d:\d\d$/)
    const pressure = tab.getByLabel('pressure, row 1')
    expect(await pressure.evaluate((cell) => cell === document.activeElement)).toBe(true)
    expect(await pressure.getAttribute('inputmode')).toBe('decimal')
    await tab.keyboard.type('2260,5')
    await tab.getByRole('button', { name: 'Change the sign' }).click()
    expect(await pressure.evaluate((cell) => cell === document.activeElement)).toBe(true)
    await tab.keyboard.press('Enter')
    expect(await pressure.inputValue()).toBe('-2260.5')
    await tab.keyboard.type('12,1')
    await tab.keyboard.press('Enter')
    await tab.keyboard.type('1,009')
    await tab.keyboard.press('Enter')
    await tab.getByRole('group', { name: 'What is 1,009?' }).getByRole('button', { name: '1009' }).click()
    expect(await tab.getByLabel('baro, row 1').inputValue()).toBe('1009')
    expect(await tab.locator('.timers').textContent()).toMatch(/since the first 0:\d\d.*next in/s)
  })

  it('beyond the stop value it is said at once, by shape, word and an alert', async () => {
    const { tab } = await openForm(await phone(), site.address + CARD)
    await tab.getByRole('button', { name: 'Take a reading now' }).click()
    await tab.getByLabel('pressure, row 1').pressSequentially('-3001')
    const alarm = tab.locator('.stop-alarm')
    expect(await alarm.isVisible()).toBe(true)
    expect(await alarm.getAttribute('role')).toBe('alert')
    expect(await alarm.textContent()).toMatch(/Stop\..*-3001 Pa in row 1 is beyond −3000 Pa/)
    await tab.getByLabel('pressure, row 1').fill('-2999')
    expect(await alarm.isVisible()).toBe(false)
  })

  it('says what is wrong at its place', async () => {
    const { tab } = await openForm(await phone(), site.address + CARD)
    await tab.getByRole('button', { name: 'Take a reading now' }).click()
    await tab.getByLabel('temperature, row 1').fill('warm')
    await tab.getByLabel('baro, row 1').focus()
    const cell = tab.locator('[data-spot="cell.0.2"]')
    await expect.poll(() => cell.locator('.fault').textContent()).toContain('no number')
    expect(await tab.getByLabel('temperature, row 1').getAttribute('aria-invalid')).toBe('true')
    await tab.getByLabel('temperature, row 1').fill('12.1')
    await expect.poll(() => cell.locator('.fault').textContent()).toBe('')
  })
})

describe('with the keyboard only', () => {
  it('a run is recorded, and the file is in the list of what stands in the way', async () => {
    const context = await site.browser.newContext({ viewport: { width: 1000, height: 800 } })
    const { tab } = await openForm(context, site.address + CARD)
    const tabTo = async (name: string): Promise<void> => {
      for (let presses = 0; presses < 120; presses += 1) {
        const here = await tab.evaluate(() => {
          const element = document.activeElement
          if (element === document.body) return ''
          const label =
            element instanceof HTMLInputElement || element instanceof HTMLSelectElement
              ? element.labels?.[0]?.textContent
              : ''
          return `${element?.getAttribute('aria-label') ?? ''} ${label ?? ''} ${element instanceof HTMLButtonElement || element?.tagName === 'SUMMARY' ? element.textContent : ''}`
        })
        if (here.includes(name)) return
        await tab.keyboard.press('Tab')
      }
      throw new Error(`the keyboard does not reach ${name}`)
    }
    await tabTo('Maja Lindqvist')
    await tab.keyboard.press('Space')
    await tabTo('Take a reading now')
    await tab.keyboard.press('Enter')
    for (const cell of ['-2260', '12.1', '1009.4', 'quiet']) {
      await tab.keyboard.type(cell)
      await tab.keyboard.press('Enter')
    }
    // Behind the last cell comes the button for the next reading.
    expect(await tab.evaluate(() => document.activeElement?.textContent)).toBe('Take a reading now')
    await tab.keyboard.press('Enter')
    expect(await tab.getByLabel('pressure, row 2').evaluate((cell) => cell === document.activeElement)).toBe(
      true,
    )
    await tabTo('The file as it will be')
    await tab.keyboard.press('Enter')
    expect(await tab.locator('#hand-in pre').textContent()).toMatch(
      /by: \[mlindqvist\][\s\S]*-2260 +12\.1 +1009\.4 +quiet/,
    )
  })
})

describe('nothing is lost', () => {
  it('a page that dies in the middle of a cell is there again', async () => {
    const context = await phone()
    const { tab } = await openForm(context, site.address + CARD)
    await tab.getByLabel('Maja Lindqvist').check()
    await tab.getByRole('button', { name: 'Take a reading now' }).click()
    await tab.getByLabel('pressure, row 1').pressSequentially('-22')
    await expect.poll(() => tab.url()).toContain('?run=')
    const address = tab.url()
    await tab.locator('.kept', { hasText: 'Kept' }).waitFor()
    await tab.waitForTimeout(100)
    // The process of the page is killed: no event of leaving reaches it.
    const devtools = await context.newCDPSession(tab)
    void devtools.send('Page.crash').catch(() => undefined)
    await tab.waitForEvent('crash').catch(() => undefined)
    const { tab: again } = await openForm(context, address)
    expect(await again.getByLabel('pressure, row 1').inputValue()).toBe('-22')
    expect(await again.getByLabel('Maja Lindqvist').isChecked()).toBe(true)
  })

  it('several runs stand side by side, each taken away only when asked twice', async () => {
    const context = await phone()
    for (const note of ['first', 'second']) {
      const { tab } = await openForm(context, site.address + CARD)
      await tab.getByLabel('Note on the place').fill(note)
      await tab.locator('.kept', { hasText: 'Kept' }).waitFor()
      await tab.close()
    }
    const { tab } = await openForm(context, `${site.address}record/tank-leak/`)
    await tab.locator('.begun li').nth(1).waitFor()
    expect(await tab.locator('.begun li').count()).toBe(2)
    await tab.locator('.begun a').first().click()
    await tab.waitForSelector('record-form[data-ready]')
    expect(await tab.getByLabel('Note on the place').inputValue()).toBe('second')
    await tab.locator('.begun li').first().waitFor()
    await tab.getByRole('button', { name: /^Remove 2026|^Remove .* from this browser/ }).click()
    expect(await tab.locator('.begun li').count()).toBe(1)
    // Two taps of one glove are one.
    await tab.getByRole('button', { name: 'Really remove it from this browser' }).click()
    expect(await tab.locator('.begun li').count()).toBe(1)
    await tab.waitForTimeout(500)
    await tab.getByRole('button', { name: 'Really remove it from this browser' }).click()
    await expect.poll(() => tab.locator('.begun li').count()).toBe(0)
  })

  it.each([
    ['full', 'IDBObjectStore.prototype.put = () => { throw new DOMException("full", "QuotaExceededError") }'],
    [
      'blocked',
      'indexedDB.open = () => { throw new Error("blocked") }; Storage.prototype.setItem = () => { throw new Error("blocked") }',
    ],
  ])('a store that is %s is said loudly, and the text is offered', async (_, script) => {
    const context = await phone()
    await context.addInitScript(script)
    const { tab } = await openForm(context, site.address + CARD)
    await tab.getByLabel('Note on the place').fill('draughty')
    const alarm = tab.locator('.not-kept')
    await expect.poll(() => alarm.textContent()).toContain('Not kept')
    expect(await alarm.getAttribute('role')).toBe('alert')
    expect(await alarm.getByRole('textbox').inputValue()).toContain('draughty')
    const downloading = tab.waitForEvent('download')
    await alarm.getByRole('button', { name: 'Download the text' }).click()
    expect(readFileSync(await (await downloading).path(), 'utf8')).toContain('draughty')
  })

  it('without a database the plain store keeps it', async () => {
    const context = await phone()
    await context.addInitScript('indexedDB.open = () => { throw new Error("blocked") }')
    const { tab } = await openForm(context, site.address + CARD)
    await tab.getByLabel('Note on the place').fill('draughty')
    await tab.locator('.kept', { hasText: 'Kept' }).waitFor()
    await tab.reload()
    await tab.waitForSelector('record-form[data-ready]')
    expect(await tab.getByLabel('Note on the place').inputValue()).toBe('draughty')
  })

  it('two tabs with one run do not overwrite each other unseen', async () => {
    const context = await phone()
    const { tab } = await openForm(context, site.address + CARD)
    await tab.getByLabel('Note on the place').fill('one')
    await expect.poll(() => tab.url()).toContain('?run=')
    const { tab: other } = await openForm(context, tab.url())
    await other.getByLabel('Note on the place').fill('two')
    await other.locator('.kept', { hasText: 'Kept' }).waitFor()
    await tab.getByLabel('Note on the place').fill('three')
    await expect.poll(() => tab.locator('.not-kept').textContent()).toContain('another tab')
  })
})

describe.each([
  { where: 'at the root of a host', folder: PLAIN, base: '/' },
  { where: 'under a base path', folder: BASED, base: BASE },
])('without network, $where', ({ folder, base }) => {
  let own: Opened
  beforeAll(async () => {
    own = await openSite(folder, base)
  })
  afterAll(() => own.close())

  it('after one visit every form opens, computes and keeps, and says which cards it holds', async () => {
    const context = await phone(own)
    const { tab, faults } = await openForm(context, own.address + CARD)
    await tab.locator('.held', { hasText: 'Works without network' }).waitFor({ timeout: 30_000 })
    await tab.close()
    await context.setOffline(true)
    const { tab: cut } = await openForm(context, `${own.address}record/tank-leak/`)
    await cut.goto(own.address + CARD)
    await cut.waitForSelector('record-form[data-ready]')
    await who(cut)
    await pasteReadings(cut)
    expect(await verdict(cut)).toMatch(/pass|fail|undetermined/)
    expect(await cut.locator('.held').textContent()).toMatch(/Cards as of commit|not committed/)
    await cut.reload()
    expect(await verdict(cut)).toMatch(/pass|fail|undetermined/)
    await cut.goto(`${own.address}record/`)
    await expect.poll(() => cut.locator('.begun li').count()).toBe(1)
    expect(faults).toEqual([])
  })

  it('a newer state of the cards is said', async () => {
    const context = await phone(own)
    await context.route('**/record/revision.json', (route) =>
      route.fulfill({ json: { commit: 'ffff', day: '2026-05-01', digest: 'another' } }),
    )
    const { tab } = await openForm(context, own.address + CARD)
    await tab
      .locator('.held', { hasText: 'A newer state of the cards is there' })
      .waitFor({ timeout: 30_000 })
  })
})

describe('the form of every method', () => {
  it('takes a reading, computes and fits a phone, without an error', async () => {
    const context = await phone()
    const wrong: string[] = []
    const forms = formsOf(PLAIN)
    // As many as there are methods.
    expect(forms.length).toBeGreaterThan(12)
    for (const page of forms) {
      const { tab, faults } = await openForm(context, site.address + page)
      await tab.getByRole('button', { name: 'Take a reading now' }).click()
      await tab.locator('.todo strong').waitFor({ timeout: 20_000 })
      const said = await tab.locator('.said.loud').textContent()
      if (said) wrong.push(`${page}: ${said}`)
      if ((await sideways(tab)) > 0) wrong.push(`${page}: scrolls sideways`)
      wrong.push(...faults.map((fault) => `${page}: ${fault}`))
      await tab.close()
    }
    expect(wrong).toEqual([])
  })

  it.each(['light', 'dark'] as const)('has no barrier that axe finds, %s', async (colorScheme) => {
    const context = await phone(site, { colorScheme, bypassCSP: true })
    const { tab } = await openForm(context, site.address + CARD)
    await who(tab)
    await pasteReadings(tab)
    await verdict(tab)
    await tab.getByLabel('pressure, row 3').fill('-3500')
    await tab.getByRole('button', { name: 'Add a deviation' }).click()
    await tab.getByLabel('what was done').fill('x')
    await tab.evaluate(() => {
      for (const details of document.querySelectorAll('details')) details.open = true
    })
    await tab.locator('.todo .error').first().waitFor()
    await tab.addScriptTag({ path: createRequire(import.meta.url).resolve('axe-core') })
    const found: { id: string; nodes: string[] }[] = await tab.evaluate(`axe.run(document, {
      runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'],
    }).then(({ violations }) => violations.map(({ id, nodes }) => ({ id, nodes: nodes.map((node) => node.html.slice(0, 200)) })))`)
    expect(found).toEqual([])
  })
})
