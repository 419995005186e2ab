/** A file of the test campaign with some of its fields replaced, as the examples of problem codes give them. */
import { BASE } from '../format/base.ts'

const KEY = /^([A-Za-z][\w-]*):/

/** An example is a whole file where it opens with a fence, is blank, or there is no such file; else it is fields. */
export function withFields(path: string, example: string): string {
  const base = BASE[path]
  if (base === undefined || example.trim() === '' || /^\s*---/.test(example)) return example
  const [head = '', ...prose] = base.split(/^---$/m).slice(1)
  const replaced = example.split('\n').flatMap((line) => KEY.exec(line)?.[1] ?? [])
  const kept: string[] = []
  let skipping = false
  let placed = false
  for (const line of head.trim().split('\n')) {
    const key = KEY.exec(line)?.[1]
    if (key !== undefined) skipping = replaced.includes(key)
    if (key !== undefined && skipping && !placed) {
      kept.push(example)
      placed = true
    }
    if (!skipping) kept.push(line)
  }
  if (!placed) kept.push(example)
  return `---\n${kept.join('\n')}\n---${prose.join('---')}`
}
