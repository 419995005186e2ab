/** The demo campaign as a form holds it. */
import { globSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Pack } from '../../src/form/desk.ts'
import { loadMethods } from '../../src/methods/registry.ts'
import { prepareFormulas } from '../../src/quantity/formula/index.ts'
import { root } from '../demo/harness.ts'

await prepareFormulas()
export const methods = await loadMethods()

const paths = globSync(['shared/**/*.{md,yaml}', 'records/runs/**/*.md'], { cwd: root }).sort()
export const textOf = (path: string): string => readFileSync(join(root, path), 'utf8')

/** A real pack holds only those runs whose results may be givens; here all are at hand, so that each can be tried. */
export const pack: Pack = {
  revision: { commit: null, day: '2026-04-20', digest: 'test' },
  files: paths.map((path) => ({ path, text: textOf(path) })),
}
