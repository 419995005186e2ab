/** A run handed in as an archive and opened again: the same text, the same files beside it. */

import fc from 'fast-check'
import { zipSync } from 'fflate'
import { expect, it } from 'vitest'
import { archiveOf, openArchive } from '../../src/form/archive.ts'

const bytes = (text: string): Uint8Array => new TextEncoder().encode(text)

it('whatever goes in comes out', () => {
  fc.assert(
    fc.property(
      fc.string({ unit: 'grapheme' }),
      fc.dictionary(fc.stringMatching(/^[a-z0-9-]{1,20}\.(jpg|csv)$/), fc.uint8Array()),
      (text, files) => {
        const beside = Object.entries(files).map(([name, content]) => ({ name, bytes: content }))
        const opened = openArchive(
          archiveOf([{ name: 'run.md', bytes: bytes(text) }, ...beside], 'records/runs/2026-04'),
        )
        // The decoder takes a byte order mark away, as the reader of files does.
        expect(opened?.run).toEqual({ name: 'run.md', text: text.replace(/^\uFEFF/, '') })
        expect(opened?.beside.toSorted((a, b) => (a.name < b.name ? -1 : 1))).toEqual(
          beside.toSorted((a, b) => (a.name < b.name ? -1 : 1)),
        )
      },
    ),
    { numRuns: 60 },
  )
})

it.each([
  ['no run', { 'photo.jpg': bytes('x') }],
  ['two runs', { 'a.md': bytes('a'), 'b/c.md': bytes('c') }],
])('an archive with %s is none that was handed in', (_, files) => {
  expect(openArchive(zipSync(files))).toBeNull()
})
