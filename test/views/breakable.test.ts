/** By hand: formulas as cards have them, and where their lines may end. */
import fc from 'fast-check'
import { expect, test } from 'vitest'
import { breakable } from '../../src/views/breakable.ts'

test.each([
  ['second_bulge', ['second_', 'bulge']],
  ['peak_ratio>=1.5*limit_load', ['peak_', 'ratio>=', '1.5*', 'limit_', 'load']],
  ['abs(cg - cg_nominal) <= 5 mm', ['abs(', 'cg - cg_', 'nominal) <= 5 mm']],
  ['max(first,second) < 1e-3', ['max(', 'first,', 'second) < 1e-3']],
  ['plain', ['plain']],
  ['', ['']],
])('%s', (text, pieces) => {
  expect(breakable(text)).toEqual(pieces)
})

test('nothing of the text is lost, added or left blank', () => {
  fc.assert(
    fc.property(fc.string({ unit: fc.constantFrom(...'ab_1e-+*/^,()<>= ') }), (text) => {
      const pieces = breakable(text)
      expect(pieces.join('')).toBe(text)
      expect(text === '' || pieces.every((piece) => piece !== '')).toBe(true)
    }),
  )
})
