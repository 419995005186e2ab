/** What a hand in a glove, a wrong time, a second tab or an old file could take from a run, and does not. */
import { mkdtempSync, readFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { unzipSync, zipSync } from 'fflate'
import type { Page } from 'playwright-core'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { CARD, measuresShown, openForm, phoneOf, READINGS, verdict, who } from './form-page.ts'
import { type Opened, openSite } from './open.ts'
import { PLAIN } from './sites.ts'

let site: Opened
const phone = (more?: object) => phoneOf(site, more)
beforeAll(async () => {
  site = await openSite(PLAIN)
})
afterAll(() => site.close())

const png = (last: number): Buffer =>
  Buffer.concat([
    Buffer.from(
      'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==',
      'base64',
    ),
    Buffer.from([last]),
  ])
const photo = (last: number) => ({ name: `IMG_${last}.PNG`, mimeType: 'image/png', buffer: png(last) })

const handedIn = async (tab: Page): Promise<Record<string, Uint8Array>> => {
  const downloading = tab.waitForEvent('download')
  await tab.getByRole('button', { name: 'Download', exact: true }).click()
  const archive = join(mkdtempSync(join(tmpdir(), 'handed-in-')), 'run.zip')
  await (await downloading).saveAs(archive)
  return unzipSync(new Uint8Array(readFileSync(archive)))
}

const kept = (tab: Page): Promise<void> => tab.locator('.kept', { hasText: 'Kept' }).waitFor()

it('photos chosen quickly, and a time put right after them, in the archive under the name of the run', async () => {
  const { tab, faults } = await openForm(await phone(), site.address + CARD)
  await who(tab)
  const input = tab.getByLabel('Add photos')
  await input.setInputFiles(photo(1))
  await input.setInputFiles(photo(2))
  await tab.getByLabel('Caption of photo 2').fill('the gauge')
  await tab.getByLabel('Tested on', { exact: true }).fill('2026-04-15T10:30')
  await expect.poll(() => tab.locator('#seen legend').allTextContents()).toHaveLength(2)
  await tab.getByLabel('Caption of photo 1').fill('the port')
  await kept(tab)
  await tab.waitForTimeout(200)
  await tab.reload()
  await tab.waitForSelector('record-form[data-ready]')
  const id = 'records/runs/2026-04/2026-04-15-1030-hull-bay-leak-hull-bay-1'
  const entries = await handedIn(tab)
  expect(Object.keys(entries).sort()).toEqual([`${id}-1.png`, `${id}-2.png`, `${id}.md`])
  expect(Buffer.from(entries[`${id}-1.png`] ?? []).equals(png(1))).toBe(true)
  expect(Buffer.from(entries[`${id}-2.png`] ?? []).equals(png(2))).toBe(true)
  expect(Buffer.from(entries[`${id}.md`] ?? []).toString()).toMatch(
    /1030-hull-bay-leak-hull-bay-1-1\.png, caption: the port[\s\S]*1-2\.png, caption: the gauge/,
  )
  expect(faults).toEqual([])
})

it('a photo of another tab is never put in the place of one', async () => {
  const context = await phone()
  const { tab } = await openForm(context, site.address + CARD)
  await who(tab)
  await kept(tab)
  const { tab: other } = await openForm(context, tab.url())
  await tab.getByLabel('Add photos').setInputFiles(photo(1))
  await tab.getByLabel('Caption of photo 1').waitFor()
  await other.getByLabel('Add photos').setInputFiles(photo(2))
  await expect.poll(() => other.locator('.not-kept').textContent()).toContain('another tab')
  const entries = Object.entries(await handedIn(tab))
  const [, bytes] = entries.find(([name]) => name.endsWith('-1.png')) ?? []
  expect(Buffer.from(bytes ?? []).equals(png(1))).toBe(true)
})

it('each reading beyond the stop value is announced, also after one was seen, and when it is pasted', async () => {
  const { tab } = await openForm(await phone(), site.address + CARD)
  const alarm = tab.locator('.stop-alarm')
  await tab.getByRole('button', { name: 'Take a reading now' }).click()
  await tab.getByLabel('pressure, row 1').pressSequentially('-3001')
  await alarm.getByRole('button', { name: 'Seen' }).click()
  expect(await alarm.isVisible()).toBe(false)
  await tab.getByRole('button', { name: 'Take a reading now' }).click()
  await tab.getByLabel('pressure, row 2').pressSequentially('-3002')
  expect(await alarm.textContent()).toContain('-3002 Pa in row 2')
  await alarm.getByRole('button', { name: 'Seen' }).click()
  await tab.getByText('Paste from a spreadsheet').click()
  await tab.getByLabel('Cells, with or without their heads').fill('pressure\n-3500')
  await tab.getByRole('button', { name: 'Take 1 rows' }).click()
  expect(await alarm.textContent()).toContain('-3500 Pa in row 3')
})

it('one tap takes no reading away: neither its row nor its column', async () => {
  const { tab } = await openForm(await phone(), site.address + CARD)
  await tab.getByText('Columns', { exact: true }).click()
  await tab.getByRole('button', { name: 'Leave out temperature' }).waitFor()
  await tab.getByRole('button', { name: 'Take a reading now' }).click()
  await tab.getByLabel('temperature, row 1').fill('12.1')
  expect(await tab.getByRole('button', { name: 'Leave out temperature' }).count()).toBe(0)
  const remove = tab.getByRole('button', { name: /emove row 1$/ })
  await remove.dblclick()
  expect(await tab.getByLabel('temperature, row 1').inputValue()).toBe('12.1')
  await tab.waitForTimeout(500)
  await tab.getByRole('button', { name: 'Really remove row 1' }).click()
  expect(await tab.getByLabel('temperature, row 1').count()).toBe(0)
})

it('what a comma means stays asked through the next reading, and is asked once a column', async () => {
  const { tab } = await openForm(await phone(), site.address + CARD)
  const stamp = tab.getByRole('button', { name: 'Take a reading now' })
  await stamp.click()
  await tab.getByLabel('baro, row 1').fill('1,009')
  await tab.getByLabel('pressure, row 1').fill('-2260')
  await stamp.click()
  const question = tab.getByRole('group', { name: 'What is 1,009?' })
  await question.getByRole('button', { name: '1009' }).click()
  await tab.getByLabel('baro, row 2').fill('1,010')
  await tab.getByLabel('baro, row 2').press('Enter')
  expect(await tab.getByLabel('baro, row 2').inputValue()).toBe('1010')
})

it('the keyboard stays where it was when a unit is chosen', async () => {
  const { tab } = await openForm(await phone(), site.address + CARD)
  const unit = tab.getByLabel('Unit of time')
  await unit.focus()
  await unit.selectOption('min')
  expect(await unit.evaluate((control) => control === document.activeElement)).toBe(true)
})

it('an address of a run that is not here is told of, and no other run is put in its place unseen', async () => {
  const { tab } = await openForm(await phone(), `${site.address}${CARD}?run=not-here`)
  expect(await tab.locator('.form-head [role=alert]', { hasText: 'not in this browser' }).count()).toBe(1)
})

it('a run that has landed keeps its name when it is opened again; comments that would go are told of', async () => {
  const { tab } = await openForm(await phone(), site.address + CARD)
  const name = '2026-02-05-0935-hull-bay-leak-bay-1'
  const text = readFileSync(`records/runs/2026-02/${name}.md`, 'utf8').replace(
    '\nreadings:',
    '\n# as read\nreadings:',
  )
  await tab.getByText('Open a run that was handed in').click()
  await tab
    .getByLabel('File of the run')
    .setInputFiles({ name: `${name} (1).md`, mimeType: 'text/markdown', buffer: Buffer.from(text) })
  await tab.waitForURL(/\?run=/)
  await tab.waitForSelector('record-form[data-ready]')
  const downloading = tab.waitForEvent('download')
  await tab.getByRole('button', { name: 'Download', exact: true }).click()
  expect((await downloading).suggestedFilename()).toBe(`${name}.md`)
  expect(
    await tab.locator('.form-head [role=alert]', { hasText: 'comments between the fields' }).count(),
  ).toBe(1)
})

it('an archive that was handed in opens again with its photo and its file of readings', async () => {
  const { tab, faults } = await openForm(await phone(), site.address + CARD)
  await who(tab)
  await tab.getByText('Take the readings from a logger file').click()
  const log = [['time', 'pressure', 'temperature', 'baro'], ['min', 'Pa', '°C', 'hPa'], ...READINGS]
  const buffer = Buffer.from(log.map((row) => row.join(';')).join('\n'))
  await tab.getByLabel('Logger file').setInputFiles({ name: 'log.csv', mimeType: 'text/csv', buffer })
  await tab.getByLabel('Column for pressure').waitFor({ timeout: 20_000 })
  await tab.getByLabel('Unit of pressure in the file').fill('Pa')
  await tab.getByLabel('Add photos').setInputFiles(photo(1))
  await tab.getByLabel('Caption of photo 1').fill('the port')
  await kept(tab)
  const entries = await handedIn(tab)
  expect(Object.keys(entries)).toHaveLength(3)

  const other = await openForm(await phone(), site.address + CARD)
  await other.tab.getByText('Open a run that was handed in').click()
  await other.tab.getByLabel('File of the run').setInputFiles({
    name: 'run.zip',
    mimeType: 'application/zip',
    buffer: Buffer.from(zipSync(entries)),
  })
  await other.tab.waitForURL(/\?run=/)
  await other.tab.waitForSelector('record-form[data-ready]')
  expect(await verdict(other.tab)).toBe(await verdict(tab))
  expect(await measuresShown(other.tab)).toEqual(await measuresShown(tab))
  // Its columns can be chosen again, as they were.
  await other.tab.getByText('Take the readings from a logger file').click()
  await other.tab.getByRole('button', { name: 'Choose its columns again' }).click()
  await other.tab.getByLabel('Column for pressure').waitFor({ timeout: 20_000 })
  expect(await other.tab.getByLabel('Unit of pressure in the file').inputValue()).toBe('Pa')
  expect(await handedIn(other.tab)).toEqual(entries)
  expect([...faults, ...other.faults]).toEqual([])
})

it('a paper sheet is asked for its time, and the day of a sheet brings the offset of that day', async () => {
  const context = await phone({ timezoneId: 'Europe/Oslo' })
  const { tab } = await openForm(context, site.address + CARD)
  await tab.getByLabel('Typed in from a paper sheet').check()
  const time = tab.getByLabel('Tested on', { exact: true })
  expect(await time.inputValue()).toBe('')
  // Oslo keeps +01:00 in winter and +02:00 in summer (IANA time zone database).
  await time.fill('2026-01-15T10:30')
  expect(await tab.getByLabel('Offset from UTC').inputValue()).toBe('+01:00')
  await time.fill('2026-07-15T10:30')
  expect(await tab.getByLabel('Offset from UTC').inputValue()).toBe('+02:00')
  await tab.getByLabel('Offset from UTC').fill('+03:00')
  await time.fill('2026-01-15T10:31')
  expect(await tab.getByLabel('Offset from UTC').inputValue()).toBe('+03:00')
})
