/** The form in a tab, and what a technician does with it. */
import type { BrowserContext, Page } from 'playwright-core'
import type { Opened } from './open.ts'

export const CARD = 'record/hull-bay-leak/'

/** A phone with gloves. */
export const PHONE = { viewport: { width: 360, height: 740 }, hasTouch: true, isMobile: true } as const

/** A phone with a store of its own; it is closed with the site. */
export const phoneOf = ({ browser }: Opened, more: object = {}): Promise<BrowserContext> =>
  browser.newContext({ ...PHONE, acceptDownloads: true, ...more })

/** Opens a form and collects what goes wrong on it. */
export const openForm = async (
  context: BrowserContext,
  address: string,
): Promise<{ readonly tab: Page; readonly faults: string[] }> => {
  const tab = await context.newPage()
  const faults: string[] = []
  tab.on('pageerror', (error) => faults.push(error.message))
  tab.on('console', (message) => {
    if (message.type() === 'error') faults.push(message.text())
  })
  await tab.goto(address)
  await tab.waitForSelector('record-form[data-ready]')
  return { tab, faults }
}

export const who = async (tab: Page): Promise<void> => {
  await tab.getByLabel('Article', { exact: true }).selectOption('hull/bay-1')
  await tab.getByLabel('Maja Lindqvist').check()
  await tab.getByLabel('Witness').selectOption('cokafor')
  await tab.getByLabel('Tested on', { exact: true }).fill('2026-04-15T09:00')
  await tab.getByLabel('Offset from UTC').fill('+02:00')
  await tab.getByLabel('pressure', { exact: true }).selectOption('pg-02')
  await tab.getByLabel('temperature', { exact: true }).selectOption('th-01')
  await tab.getByLabel('baro', { exact: true }).selectOption('ba-01')
}

/** Time in minutes, pascals, °C, hPa: a bay that loses little. */
export const READINGS = Array.from({ length: 21 }, (_, row) => [
  String(row * 5),
  String(-2260 + row * 4 + (row % 3)),
  (12.1 + row * 0.01).toFixed(2),
  (1009.42 - row * 0.01).toFixed(2),
])

export const pasteReadings = async (tab: Page): Promise<void> => {
  await tab.getByLabel('Unit of time').selectOption('min')
  await tab.getByText('Paste from a spreadsheet').click()
  await tab
    .getByLabel('Cells, with or without their heads')
    .fill(READINGS.map((row) => row.join('\t')).join('\n'))
  await tab.getByRole('button', { name: `Take ${READINGS.length} rows` }).click()
}

/** Waits until the newest change is computed. */
export const verdict = async (tab: Page): Promise<string> => {
  await tab.waitForSelector('#result .answer .stamp', { timeout: 20_000 })
  return ((await tab.locator('#result .answer').textContent()) ?? '').replace('So far:', '').trim()
}

export const measuresShown = (tab: Page): Promise<[string, string][]> =>
  tab
    .locator('#result tbody tr')
    .evaluateAll((rows) =>
      rows.map((row): [string, string] => [
        row.querySelector('th')?.textContent ?? '',
        row.querySelector('td.n')?.textContent ?? '',
      ]),
    )

export const sideways = (tab: Page): Promise<number> =>
  tab.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth)
