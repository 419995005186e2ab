import { expect, test } from 'vitest'
import { makeProblem } from '../../src/problems/make.ts'
import { placeOfFile } from '../../src/problems/place.ts'

const parts = { code: 'a/b', message: 'something is wrong', at: placeOfFile('a.md') }

test('a problem that does not say how severe it is, is an error', () => {
  expect(makeProblem(parts).severity).toBe('error')
  expect(makeProblem({ ...parts, severity: undefined }).severity).toBe('error')
  expect(makeProblem({ ...parts, severity: 'warning' }).severity).toBe('warning')
})
