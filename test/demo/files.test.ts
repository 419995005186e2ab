/** Every file of the demo says that it is invented. */
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { root } from './harness.ts'

describe('the files', () => {
  const texts = (folder: string): [string, string][] =>
    readdirSync(join(root, folder), { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile())
      .map((entry) => join(entry.parentPath, entry.name))
      .map((path) => [path, readFileSync(path, 'utf8')])

  test('each says that its data are invented', () => {
    const silent = [...texts('records'), ...texts('shared')]
      .filter(([path]) => !path.endsWith('.csv'))
      .filter(([, text]) => !/invented/i.test(text))
    expect(silent.map(([path]) => path)).toEqual([])
  })
})
