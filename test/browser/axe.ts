/** Barriers that axe finds: WCAG 2.2 AA as far as it can tell, and its best practice. */
import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import type { Page } from 'playwright-core'

const source = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8')

const EVERYTHING = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice']
/** The rules that look at colours; the others find the same in light and dark. */
const COLOURS = ['color-contrast', 'link-in-text-block']

const run = (tab: Page, options: object): Promise<string[]> =>
  tab.evaluate(`axe.run(document, ${JSON.stringify(options)}).then((result) => result.violations
    .map((each) => each.id + ': ' + each.nodes.slice(0, 3).map((node) => node.target.join(' ')).join(', ')))`)

/** A state in which a page is looked at. */
export type Look = { readonly width: number; readonly colorScheme: 'light' | 'dark' }

/** In light and in dark, at each width. */
export const looksAt = (...widths: readonly number[]): Look[] =>
  widths.flatMap((width) => [
    { width, colorScheme: 'light' },
    { width, colorScheme: 'dark' },
  ])

/**
 * What keeps somebody from reading a page: in light all rules, in dark those of colour. `afterLook` is called in each
 * state. The context must let scripts of tests in (`bypassCSP`).
 */
export const barriersOn = async (
  tab: Page,
  looks: readonly Look[],
  afterLook: (look: Look) => Promise<void> = async () => undefined,
): Promise<string[]> => {
  const found: string[] = []
  await tab.evaluate(source)
  for (const look of looks) {
    const { width, colorScheme } = look
    await tab.setViewportSize({ width, height: 900 })
    await tab.emulateMedia({ colorScheme })
    const rules = colorScheme === 'light' ? EVERYTHING : COLOURS
    const barriers = await run(tab, { runOnly: rules, resultTypes: ['violations'] })
    found.push(...barriers.map((each) => `at ${width}, ${colorScheme}: ${each}`))
    await afterLook(look)
  }
  return found
}
