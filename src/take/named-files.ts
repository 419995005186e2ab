/** Which files a run names: its data file, its photos and scans, the pictures in its prose. */
import { picturesIn } from '../format/checks/pictures.ts'
import { splitFrontMatter } from '../format/front-matter.ts'
import type { Plain } from '../format/types.ts'
import { isList, readYaml } from '../format/yaml.ts'

export type NamedFiles = {
  /** As written, with decoded addresses; each once. */
  readonly names: readonly string[]
  /** The one with the readings, among them. */
  readonly data: string | null
}

const fieldOf = (plain: Plain | undefined, name: string): Plain | undefined =>
  typeof plain === 'object' && !isList(plain) ? plain[name] : undefined

const fileOf = (plain: Plain | undefined): string[] => {
  const file = fieldOf(plain, 'file')
  return typeof file === 'string' ? [file] : []
}

const decoded = (address: string): string => {
  try {
    return decodeURI(address)
  } catch {
    return address
  }
}

const written = (name: string): string => name.normalize('NFC').replace(/^(?:\.\/)+/, '')

/** Of a text whose front matter cannot be read: none. The reader of records says why. */
export const namedFiles = (text: string): NamedFiles => {
  const parts = splitFrontMatter(text)
  const read = parts.ok ? readYaml(parts.value.yaml) : null
  if (!parts.ok || !read?.ok) return { names: [], data: null }
  const { readings, files } = read.value
  const [data = null] = fileOf(readings).map(written)
  const listed = files !== undefined && isList(files) ? files.flatMap(fileOf) : []
  const pictured = picturesIn(parts.value.body)
    .map(({ name }) => decoded(name))
    .filter((name) => !/^[a-z][a-z0-9+.-]*:/i.test(name))
  const names = [...(data === null ? [] : [data]), ...listed, ...pictured]
  return { names: [...new Set(names.map(written))], data }
}
