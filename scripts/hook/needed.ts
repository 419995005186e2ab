/** Which files must be read to judge a few of them: those that they name, and so on. */
import type { TextFile } from '../../src/format/data-file.ts'

const stem = (path: string): string => path.slice(path.lastIndexOf('/') + 1).replace(/\.[^.]*$/, '')

/** Everything in a text that may be the id of a record: small letters, digits, hyphens. */
const namesIn = (text: string): Iterable<string> => text.match(/[a-z0-9]+(?:-[a-z0-9]+)*/g) ?? []

/** Articles are named by parts of their path, people everywhere. */
const ALWAYS = /^shared\/(?:articles\/|[^/]*$)/

/**
 * A record is read where it is wanted, where a file that is read names its id, or where it has the id of one that is
 * read, since an id is taken only once. Whatever a wanted file refers to is thus among them.
 */
export const neededFiles = (files: readonly TextFile[], wanted: ReadonlySet<string>): TextFile[] => {
  const byName = Map.groupBy(files, ({ path }) => stem(path))
  const needed = new Map(files.filter(({ path }) => ALWAYS.test(path)).map((file) => [file.path, file]))
  const seen = new Set<TextFile>()
  const open = files.filter(({ path }) => wanted.has(path))
  for (let file = open.pop(); file; file = open.pop()) {
    if (seen.has(file)) continue
    seen.add(file)
    needed.set(file.path, file)
    for (const name of [stem(file.path), ...namesIn(file.text)]) open.push(...(byName.get(name) ?? []))
  }
  return [...needed.values()]
}
