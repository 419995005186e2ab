/**
 * YAML 1.2 with the failsafe schema: every scalar is the text that was written. One parser (js-yaml's event stream)
 * serves the fast reading here and the exact places in `positions.ts`. What YAML readers quietly drop or replace
 * is refused: comments behind a value, tags, anchors, merge keys, tabs, empty values, double keys.
 */
import { EVENT_ID, type Event, getScalarValue, parseEvents } from 'js-yaml'
import type { Fault, Result } from '../quantity/types.ts'
import type { Plain } from './types.ts'
import { layoutFault } from './yaml-layout.ts'
import { syntaxFault } from './yaml-syntax.ts'

/** `first`: span of the first definition, where a key stands twice. */
export type YamlFault = Fault & { readonly first?: { readonly start: number; readonly end: number } }

export type Fields = { readonly [key: string]: Plain }

/** Offsets of faults count within `yaml`. A syntax fault is the only one; of the others all are given. */
export function readYaml(yaml: string): Result<Fields, YamlFault[]> {
  const events = yamlEvents(yaml)
  if (!events.ok) return events
  const faults: YamlFault[] = [...layoutFault(events.value, yaml)]
  const read = faults.length > 0 ? '' : build(events.value, yaml, faults)
  if (faults.length > 0) return { ok: false, error: faults }
  if (typeof read === 'object' && !isList(read)) return { ok: true, value: read }
  const code = read === '' ? 'yaml/no-fields' : 'yaml/not-fields'
  const message = read === '' ? 'there are no fields' : 'this is no set of fields'
  const hint = 'write one field a line, as in `title: Fuel tank, vacuum leak check`'
  const firstLine = /^.*/.exec(yaml.trimStart())?.[0].length ?? 0
  const start = yaml.length - yaml.trimStart().length
  return { ok: false, error: [{ code, message, start, end: start + firstLine, hint }] }
}

/** The parser's flat stream of events with offsets, or what the syntax breaks on. */
export function yamlEvents(yaml: string): Result<Event[], YamlFault[]> {
  try {
    return { ok: true, value: parseEvents(yaml, {}) }
  } catch (error) {
    return { ok: false, error: [syntaxFault(yaml, error)] }
  }
}

export const isList = (plain: Plain): plain is readonly Plain[] => Array.isArray(plain)

function build(events: readonly Event[], yaml: string, faults: YamlFault[]): Plain {
  let next = 0
  const value = (): Plain => {
    const event = events[next++]
    if (event === undefined || event.type === EVENT_ID.POP) return ''
    if (event.type === EVENT_ID.DOCUMENT) return value()
    if (event.type === EVENT_ID.SCALAR) return getScalarValue(yaml, event)
    if (event.type === EVENT_ID.SEQUENCE) return list()
    if (event.type === EVENT_ID.MAPPING) return fields()
    return ''
  }
  const list = (): Plain => {
    const entries: Plain[] = []
    while (more()) entries.push(value())
    return entries
  }
  const fields = (): Plain => {
    const read: Record<string, Plain> = {}
    const places = new Map<string, { start: number; end: number }>()
    while (more()) {
      const event = events[next]
      const key = value()
      const span =
        event?.type === EVENT_ID.SCALAR
          ? { start: event.valueStart, end: event.valueEnd }
          : { start: 0, end: 1 }
      const fault = typeof key === 'string' ? keyFault(key, span, places.get(key)) : complexKey(span)
      if (fault) faults.push(fault)
      const content = value()
      if (fault || typeof key !== 'string') continue
      places.set(key, span)
      read[key] = content
    }
    return read
  }
  const more = () => {
    const event = events[next]
    if (event === undefined) return false
    if (event.type !== EVENT_ID.POP) return true
    next++
    return false
  }
  return value()
}

function keyFault(
  key: string,
  span: { start: number; end: number },
  first: { start: number; end: number } | undefined,
): YamlFault | undefined {
  if (first) {
    const hint = 'keep one of the two; where both are meant, write a list'
    return { code: 'yaml/duplicate-key', message: `\`${key}\` stands twice`, ...span, first, hint }
  }
  if (key === '<<') {
    const hint = 'write the fields out in full'
    return { code: 'yaml/reference', message: 'merge keys (`<<`) are not used in records', ...span, hint }
  }
  if (key === '__proto__')
    return { code: 'field/unknown', message: `the field \`${key}\` is not known`, ...span }
  return undefined
}

function complexKey(span: { start: number; end: number }): YamlFault {
  const hint = 'write a name, a colon and a blank, then the value'
  return {
    code: 'yaml/syntax',
    message: 'a field name is a text, not a list or a set of fields',
    ...span,
    hint,
  }
}
