/** What `new` leaves for the technician to write is marked `…`; a file that still has one is not read further. */
import { makeProblem } from '../problems/make.ts'
import type { Problem } from '../problems/types.ts'
import type { FieldPath, Plain, SourceFile } from './types.ts'

const MARK = '…'

const marked = (value: Plain, path: FieldPath): FieldPath[] => {
  if (typeof value === 'string') return value.trim().startsWith(MARK) ? [path] : []
  const entries: readonly (readonly [string | number, Plain])[] = Array.isArray(value)
    ? value.map((each: Plain, index) => [index, each] as const)
    : Object.entries(value)
  return entries.flatMap(([key, each]) => marked(each, [...path, key]))
}

export const placeholders = (fields: Readonly<Record<string, Plain>>, source: SourceFile): Problem[] =>
  marked(fields, []).map((path) => {
    const name = path.filter((key) => typeof key === 'string').join('.')
    return makeProblem({
      code: 'field/not-filled',
      message: `\`${name}\` is not filled in yet`,
      at: source.locate(path),
      hint: 'write what was, or take the field out where it is not needed',
    })
  })
