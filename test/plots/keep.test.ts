/** What is kept is the answer itself, for as many questions as were asked for. */
import { expect, test } from 'vitest'
import { keepLast } from '../../src/plots/keep.ts'

const counting = (most: number) => {
  const asked: string[] = []
  const ask = keepLast(({ name }: { readonly name: string }) => {
    asked.push(name)
    return name.toUpperCase()
  }, most)
  return { asked, ask: (name: string) => ask({ name }) }
}

test('an equal question is answered once, and a different one is answered for itself', () => {
  const { asked, ask } = counting(2)
  expect([ask('a'), ask('a'), ask('b'), ask('a')]).toEqual(['A', 'A', 'B', 'A'])
  expect(asked).toEqual(['a', 'b'])
})

test('the one asked for longest ago goes first', () => {
  const { asked, ask } = counting(2)
  for (const name of ['a', 'b', 'a', 'c', 'a', 'b']) ask(name)
  expect(asked).toEqual(['a', 'b', 'c', 'b'])
})
