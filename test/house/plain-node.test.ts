/** Vitest forgives what Node does not: every module is loaded by Node itself, as the commands load it. */
import { execFileSync } from 'node:child_process'
import { globSync } from 'node:fs'
import { resolve } from 'node:path'
import { expect, it } from 'vitest'

const home = resolve(import.meta.dirname, '../..')

it('every module of the core and of the views loads under plain Node', () => {
  const files = globSync('src/**/*.ts', { cwd: home }).filter(
    (file) => !/\.web\.ts$|\.d\.ts$|src\/pages\/|src\/components\/|src\/scripts\//.test(file),
  )
  expect(files.length).toBeGreaterThan(50)
  const code = `for (const file of ${JSON.stringify(files.map((file) => resolve(home, file)))}) await import(file)`
  execFileSync(process.execPath, ['--input-type=module', '-'], { cwd: home, input: code, stdio: 'pipe' })
})
