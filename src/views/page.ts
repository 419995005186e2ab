/** Putting a page together: a view from its blocks, sections that vanish when empty. */
import { createHash } from 'node:crypto'
import type { Prose } from './prose.ts'
import type { Site } from './site.ts'
import type { Block, Cell, Column, Inline, PageKind, Rich, Row, Table, Target, View } from './view.ts'

export type Draft = {
  readonly path: Target
  readonly kind: PageKind
  readonly title: string
  readonly description: string
  readonly blocks: readonly Block[]
  readonly files?: readonly string[]
}

export const viewOf = (site: Site, draft: Draft): View => {
  const { path, kind, title, description, blocks } = draft
  const data = {
    campaign: site.title,
    title,
    description,
    blocks,
    files: [...new Set(draft.files ?? [])].sort(),
  }
  const key = createHash('sha256')
    .update(JSON.stringify([path, kind, data]))
    .digest('hex')
    .slice(0, 32)
  return { path, kind, data, key }
}

/** A section, or nothing where it would be empty. */
export const section = (id: string, title: string, blocks: readonly Block[]): Block[] =>
  blocks.length > 0 ? [{ is: 'section', id, title, blocks }] : []

export const text = (...pieces: Inline[]): Block => ({ is: 'text', text: pieces })

export const list = (items: readonly Rich[]): Block[] => (items.length > 0 ? [{ is: 'list', items }] : [])

export const prose = (written: Prose): Block[] =>
  written.html.trim() === '' ? [] : [{ is: 'prose', html: written.html }]

/** Column names that begin with `#` hold numbers. */
const columnOf = (name: string): Column =>
  name.startsWith('#') ? { text: name.slice(1), numeric: true } : { text: name }

export const table = (
  caption: string,
  columns: readonly string[],
  rows: readonly (Row | readonly Rich[])[],
  more: Partial<Table> = {},
): Block[] => {
  const full: readonly Row[] = rows.map((row) => ('cells' in row ? row : { cells: row }))
  return full.length > 0
    ? [
        {
          is: 'table',
          table: { caption, columns: columns.map(columnOf), rows: full, narrow: 'stack', ...more },
        },
      ]
    : []
}

export const cell = (label: string, value: Rich | string, width?: Cell['width']): Cell => ({
  label,
  value: typeof value === 'string' ? [value] : value,
  ...(width ? { width } : {}),
})

/** Pieces of text with a separator between them. */
export const joined = (pieces: readonly (Inline | Rich)[], separator: Inline = ', '): Rich =>
  pieces.flatMap((piece, index): Rich => {
    const flat: Rich = typeof piece === 'string' || 'is' in piece ? [piece] : piece
    return index === 0 ? flat : [separator, ...flat]
  })

export const code = (written: string): Inline => ({ is: 'code', text: written })
export const strong = (written: string): Inline => ({ is: 'strong', text: written })
export const small = (...pieces: Inline[]): Inline => ({ is: 'small', text: pieces })
export const lineBreak: Inline = { is: 'break' }
