/** Where each field stands: a tree of spans, built from the parser's events only for a file that has a problem. */
import { EVENT_ID, type Event, getScalarValue, SCALAR_STYLE } from 'js-yaml'
import type { FieldPath } from './types.ts'
import { yamlEvents } from './yaml.ts'

export type Span = { readonly start: number; readonly end: number }

export type FieldNode = Span & {
  readonly key?: Span
  readonly scalar?: { readonly value: string; readonly literal: boolean }
  readonly children: ReadonlyMap<string | number, FieldNode>
}

/** The tree of a YAML text, with offsets within it; null where it cannot be parsed. */
export function fieldTree(yaml: string): FieldNode | null {
  const events = yamlEvents(yaml)
  if (!events.ok) return null
  let next = 0
  const node = (key?: Span): FieldNode => {
    const event = events.value[next++]
    if (event?.type === EVENT_ID.DOCUMENT) return node(key)
    if (event?.type === EVENT_ID.SCALAR) return scalarNode(event, yaml, key)
    if (event?.type !== EVENT_ID.SEQUENCE && event?.type !== EVENT_ID.MAPPING) {
      return { start: key?.start ?? 0, end: key?.end ?? 0, key, children: new Map() }
    }
    const children = new Map<string | number, FieldNode>()
    while (events.value[next] && events.value[next]?.type !== EVENT_ID.POP) {
      if (event.type === EVENT_ID.SEQUENCE) {
        children.set(children.size, node())
      } else {
        const name = node()
        const text = name.scalar?.value ?? ''
        const child = node({ start: name.start, end: name.end })
        if (!children.has(text)) children.set(text, child)
      }
    }
    next++
    return { ...extent(event, yaml, children), key, children }
  }
  return node()
}

/** The node at a path, or the nearest parent that is there. */
export function fieldAt(
  tree: FieldNode,
  path: FieldPath,
): { readonly node: FieldNode; readonly found: boolean } {
  let node = tree
  for (const step of path) {
    const child = node.children.get(step)
    if (child === undefined) return { node, found: false }
    node = child
  }
  return { node, found: true }
}

/** From a span in a scalar's text to the span in the YAML; a text that was folded or has escapes is taken whole. */
export function spanInScalar(node: FieldNode, yaml: string, span: Span): Span {
  const { scalar } = node
  if (scalar === undefined) return node
  const raw = yaml.slice(node.start, node.end)
  if (raw === scalar.value) return { start: node.start + span.start, end: node.start + span.end }
  if (!scalar.literal) return node
  const starts = literalLineStarts(node, yaml)
  const shifted = (offset: number) => {
    const before = scalar.value.slice(0, offset)
    const line = before.split('\n').length - 1
    return (starts[line] ?? node.start) + offset - (before.lastIndexOf('\n') + 1)
  }
  return { start: shifted(span.start), end: shifted(span.end) }
}

/** Offset in the YAML at which each line of a block of text (`|`) begins, after its indentation. */
export function literalLineStarts(node: FieldNode, yaml: string): number[] {
  const starts: number[] = []
  const lines = node.scalar?.value.split('\n') ?? []
  let at = node.start
  for (const line of lines) {
    const end = yaml.indexOf('\n', at) < 0 ? yaml.length : yaml.indexOf('\n', at)
    const raw = yaml.slice(at, end).replace(/\r$/, '')
    starts.push(at + Math.max(0, raw.length - line.length))
    at = end + 1
  }
  return starts
}

type ScalarEvent = Extract<Event, { type: typeof EVENT_ID.SCALAR }>

function scalarNode(event: ScalarEvent, yaml: string, key?: Span): FieldNode {
  if (event.valueStart < 0) return { start: key?.start ?? 0, end: key?.end ?? 0, key, children: new Map() }
  const scalar = { value: getScalarValue(yaml, event), literal: event.style === SCALAR_STYLE.LITERAL_BLOCK }
  return { start: event.valueStart, end: event.valueEnd, key, scalar, children: new Map() }
}

function extent(
  event: { start: number },
  yaml: string,
  children: ReadonlyMap<string | number, FieldNode>,
): Span {
  const ends = [...children.values()].map((child) => child.end)
  const end = Math.max(event.start + 1, ...ends)
  const closes = /^["']?\s*[}\]]/.exec(yaml.slice(end))?.[0].length ?? 0
  return { start: event.start, end: /[{[]/.test(yaml[event.start] ?? '') ? end + closes : end }
}
