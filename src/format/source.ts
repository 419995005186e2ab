/** A file that was read, and the way back from its fields and cells to lines and columns. */
import { placeOf, placeOfFile } from '../problems/place.ts'
import type { Place } from '../problems/types.ts'
import { cellSpan, type TextLine } from './cell-places.ts'
import { type FieldNode, fieldAt, fieldTree, literalLineStarts, spanInScalar } from './positions.ts'
import type { FieldPath, SourceFile } from './types.ts'

/** Cells are those of the table in the file itself; where readings lie in a data file, its reader finds them. */
export function makeSource(
  path: string,
  text: string,
  yaml: { readonly start: number; readonly text: string },
): SourceFile {
  let known: FieldNode | null | undefined
  const tree = () => {
    if (known === undefined) known = fieldTree(yaml.text)
    return known
  }
  const place = (start: number, end: number, part: Place['part']) =>
    placeOf(path, text, yaml.start + start, yaml.start + end, part)

  const locate: SourceFile['locate'] = (fields, part = 'value', span) => {
    const root = tree()
    if (root === null || fields.length === 0) return placeOfHead(path, text, yaml.start)
    const { node, found } = fieldAt(root, fields)
    if (node === root) return placeOfHead(path, text, yaml.start)
    if ((part === 'key' || !found) && node.key) return place(node.key.start, node.key.end, 'key')
    if (span && found) {
      const { start, end } = spanInScalar(node, yaml.text, span)
      return place(start, Math.max(end, start + 1), 'value')
    }
    return place(node.start, trimmedEnd(yaml.text, node), 'value')
  }

  const locateCell: SourceFile['locateCell'] = (row, column) => {
    const root = tree()
    const readings = root?.children.get('readings')
    if (!readings?.scalar) return locate(['readings'], 'key')
    const { start, end } = cellSpan(blockLines(readings, yaml.text), row, column)
    return place(start, end, 'cell')
  }
  return { path, text, locate, locateCell }
}

function placeOfHead(path: string, text: string, yamlStart: number): Place {
  return yamlStart === 0
    ? placeOfFile(path)
    : { ...placeOf(path, text, 0, 3, 'file'), column: 1, endColumn: 4 }
}

function blockLines(node: FieldNode, yaml: string): readonly TextLine[] {
  const starts = literalLineStarts(node, yaml)
  const lines = node.scalar?.value.split('\n') ?? []
  return lines.map((text, index) => ({ text, start: starts[index] ?? node.start }))
}

const trimmedEnd = (yaml: string, node: FieldNode) =>
  node.start + Math.max(1, yaml.slice(node.start, node.end).trimEnd().length)

export type Located = { readonly source: SourceFile; readonly path: FieldPath }
