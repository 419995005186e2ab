/**
 * Front matter by gray-matter, for scripts that take single files. The library sees a text only after its first line
 * was looked at: it runs `---js` as a program whatever its options say. Options are always given: without them it
 * caches by text, and a broken head reads as `{}` the second time. One YAML 1.2 reader serves it and the core.
 */
import matter from 'gray-matter'
import type { Fault, Result } from '../../quantity/types.ts'
import { splitFrontMatter } from '../front-matter.ts'
import { type Fields, readYaml, type YamlFault } from '../yaml.ts'

export type MatterFile = { readonly fields: Fields; readonly body: string }

/** Offsets of faults count within the text. */
export function readMatter(text: string): Result<MatterFile, readonly (Fault | YamlFault)[]> {
  const split = splitFrontMatter(text)
  if (!split.ok) return { ok: false, error: [split.error] }
  const { start } = split.value
  let faults: readonly YamlFault[] = []
  const parse = (yaml: string): object => {
    // What gray-matter hands over begins at the line end behind the fence.
    const skipped = yaml.startsWith('\r\n') ? 2 : yaml.startsWith('\n') ? 1 : 0
    const read = readYaml(yaml.slice(skipped))
    faults = read.ok ? [] : read.error
    return read.ok ? read.value : {}
  }
  const stringify = () => ''
  // The fence may have blanks behind it, which gray-matter would take for a language.
  const plain = text.replace(/^(\uFEFF?---)[ \t]+(?=\r?\n)/, '$1')
  const file = matter(plain, { language: 'yaml', engines: { yaml: { parse, stringify } } })
  // A block without a field is not handed to the reader at all.
  if (Object.keys(file.data).length === 0) parse(split.value.yaml)
  if (faults.length > 0) {
    return {
      ok: false,
      error: faults.map((fault) => ({ ...fault, start: fault.start + start, end: fault.end + start })),
    }
  }
  return { ok: true, value: { fields: file.data, body: file.content } }
}
