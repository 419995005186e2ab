/** What YAML allows and records do not: found in the event stream, without building anything. */
import { EVENT_ID, type Event } from 'js-yaml'
import type { Fault } from '../quantity/types.ts'

/** All faults of layout, in the order of the text; offsets count within `yaml`. */
export function layoutFault(events: readonly Event[], yaml: string): Fault[] {
  const faults: Fault[] = []
  const signs = yaml.includes('#') || yaml.includes('\t')
  // For each open list or set of fields: how many nodes it has had. In a set, every second node is a value.
  const open: { readonly fields: boolean; count: number }[] = []
  let last = { start: 0, end: 0 }
  for (const event of events) {
    if (event.type === EVENT_ID.POP) open.pop()
    if (event.type === EVENT_ID.ALIAS) faults.push(reference(event.anchorStart - 1, event.anchorEnd, 'alias'))
    if (event.type === EVENT_ID.POP || event.type === EVENT_ID.DOCUMENT) continue
    const parent = open.at(-1)
    if (parent) parent.count++
    if (event.type === EVENT_ID.ALIAS) continue
    if (event.anchorStart >= 0) faults.push(reference(event.anchorStart - 1, event.anchorEnd, 'anchor'))
    if (event.tagStart >= 0) faults.push(tag(event.tagStart, event.tagEnd))
    if (event.type !== EVENT_ID.SCALAR) {
      open.push({ fields: event.type === EVENT_ID.MAPPING, count: 0 })
      continue
    }
    if (event.valueStart < 0) {
      if (parent?.fields && parent.count % 2 === 0) faults.push(noValue(yaml, last))
      else if (parent) faults.push(noEntry(yaml, last.end))
      continue
    }
    if (signs) gap(yaml, last.end, event.valueStart, faults)
    last = { start: event.valueStart, end: event.valueEnd }
  }
  if (signs) gap(yaml, last.end, yaml.length, faults)
  return faults
}

/** Between two scalars stand only signs of structure: a `#` there begins a comment. */
function gap(yaml: string, from: number, to: number, faults: Fault[]): void {
  for (let at = from; at < to; at++) {
    const sign = yaml[at]
    if (sign !== '#' && sign !== '\t') continue
    const lineStart = yaml.lastIndexOf('\n', at - 1) + 1
    const lineEnd = yaml.indexOf('\n', at) < 0 ? yaml.length : yaml.indexOf('\n', at)
    if (sign === '\t') {
      faults.push(tab(at))
    } else if (yaml.slice(lineStart, at).trim() !== '') {
      faults.push(comment(at, at + yaml.slice(at, lineEnd).trimEnd().length))
    }
    at = lineEnd
  }
}

export function tab(at: number): Fault {
  const hint = 'use blanks: YAML readers differ in what a tab means; only tables of readings may have tabs'
  return { code: 'yaml/tab', message: 'there is a tab', start: at, end: at + 1, hint }
}

function comment(start: number, end: number): Fault {
  return {
    code: 'yaml/comment-behind-value',
    message: 'what follows `#` would be lost: YAML takes it for a comment',
    start,
    end,
    hint: 'put the whole text in quotes if it belongs to the value, or move the comment to a line of its own',
  }
}

function reference(start: number, end: number, what: string): Fault {
  const hint =
    'write the value out in full where it is meant; put a text that begins with `&` or `*` in quotes'
  return { code: 'yaml/reference', message: `a YAML ${what} is not used in records`, start, end, hint }
}

function tag(start: number, end: number): Fault {
  return {
    code: 'yaml/tag',
    message: 'what begins with `!` is a YAML tag, and would be lost',
    start,
    end,
    hint: 'leave the tag out; put a text that begins with `!` in quotes',
  }
}

/** A field without a value; `key` is where its name stands. */
function noValue(yaml: string, key: { start: number; end: number }): Fault {
  const name = yaml.slice(key.start, key.end)
  const whole = /(?:^|[\s:])([+-]?\d+),$/.exec(yaml.slice(0, key.start))?.[1]
  if (whole !== undefined && /^\d/.test(name)) {
    const hint = `write \`${whole}.${name}\``
    const message = 'a decimal comma ends the value here, because it separates fields'
    return {
      code: 'quantity/decimal-comma',
      message,
      start: key.start - whole.length - 1,
      end: key.end,
      hint,
    }
  }
  const glued = /^([^:]+):(\S.*)$/.exec(name)
  const hint = glued
    ? `put a blank after the colon, as in \`${glued[1]}: ${glued[2]}\``
    : 'write a value, or delete the field: a field that is left out is not known, an empty one is a mistake'
  return { code: 'yaml/empty-value', message: `\`${name}\` has no value`, ...key, hint }
}

function noEntry(yaml: string, cursor: number): Fault {
  const lead =
    /^[^\n]*?[-,[]\s*/.exec(yaml.slice(cursor))?.[0] ?? /^[\s\S]*?-/.exec(yaml.slice(cursor))?.[0] ?? ''
  const start = cursor + Math.max(0, lead.trimEnd().length - 1)
  const hint = 'write the entry, or delete the line'
  return { code: 'yaml/empty-value', message: 'an entry has no value', start, end: start + 1, hint }
}
