/** What all new files share: front matter line by line, names of files, and `…` for what is left to write. */
import { flowText, scalarText } from '../form/yaml-text.ts'

/** What `check` refuses until somebody has written something there. */
export const OPEN = '…'

/** A comment of its own line, whatever text it holds. */
export const remark = (text: string): string => `# ${text.replace(/\s+/g, ' ').trim()}`

export const field = (name: string, text: string): string => `${name}: ${scalarText(text)}`

export const listField = (name: string, texts: readonly string[]): string =>
  `${name}: ${flowText(texts.length > 0 ? texts : [OPEN])}`

export const fileText = (front: readonly string[], body: readonly string[]): string =>
  ['---', ...front, '---', ...body, ''].join('\n')

const LONGEST = 48

/** `Élevator: bracket, 2nd` → `elevator-bracket-2nd`; empty where the title has no letter that an id may have. */
export const slug = (title: string): string => {
  const words = title
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .split(/[^a-z0-9]+/)
    .filter((word) => word !== '')
  const kept = words.reduce(
    (text, word) => (text === '' ? word : text.length + word.length < LONGEST ? `${text}-${word}` : text),
    '',
  )
  return kept.slice(0, LONGEST).replace(/-$/, '')
}

/** `2026-03-04-0912`, from a time as it stands in a record. */
export const timeName = (when: string): string =>
  `${when.slice(0, 10)}-${when.slice(11, 16).replace(':', '')}`

/** The name, or the first one like it that is free. */
export const freeName = (name: string, taken: ReadonlySet<string>): string => {
  let free = name
  for (let number = 2; taken.has(free); number += 1) free = `${name}-${number}`
  return free
}
