/** A factor below that of the rule is said. 14 CFR 23.955(b), (c), as before amendment 64: 150 % gravity, 125 % pump. */
import { expect, test } from 'vitest'
import { method } from '../../../src/methods/fuel-flow/index.ts'
import { measured, rehearsed, remarksOf, type Setup } from '../bench.ts'
import { given, instrument } from '../parts.ts'

const setup = (feed: string, factor?: number): Setup => ({
  method,
  inputs: {
    required: given(27 / 3.6e6, 'volume-flow'),
    ...(factor === undefined ? {} : { factor: given(factor, 'number') }),
  },
  words: { feed },
  instruments: { volume: instrument('can', { resolution: 5e-6, offset: 5e-6 }) },
})
const isSaid = (of: Setup): boolean => {
  const columns = rehearsed(of, { flow: 60 / 3.6e6 }, 1)
  return remarksOf(of, measured(of, columns)).some(({ text }) => text.startsWith('the factor is'))
}

test.each([
  ['gravity', undefined, false],
  ['gravity', 1.5, false],
  ['gravity', 1.25, true],
  ['pump', 1.25, false],
  ['pump', 1, true],
] as const)('%s with %s: %s', (feed, factor, expected) => expect(isSaid(setup(feed, factor))).toBe(expected))
