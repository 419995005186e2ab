/** What the YAML parser breaks on, in the words of somebody who writes a record by hand. */
import { YAMLException } from 'js-yaml'
import type { Fault } from '../quantity/types.ts'
import { tab } from './yaml-layout.ts'

/** One fault, at the smallest span that shows it; offsets count within `yaml`. */
export function syntaxFault(yaml: string, error: unknown): Fault {
  const reason = error instanceof YAMLException ? error.reason : 'this cannot be read as YAML'
  const at = Math.min(
    error instanceof YAMLException ? (error.mark?.position ?? 0) : 0,
    Math.max(0, yaml.length - 1),
  )
  const start = yaml.lastIndexOf('\n', at - 1) + 1
  const line = lineAt(yaml, start)
  const indent = /^[ \t]*/.exec(line)?.[0] ?? ''
  const tabAt =
    indent.includes('\t') || /tab characters/.test(reason) ? indent.indexOf('\t') : line.indexOf('\t')
  if (tabAt >= 0) return tab(start + tabAt)
  return (
    notClosed(yaml, start) ??
    outdented(yaml, start) ??
    missingBlank(yaml, start) ??
    misplaced(yaml, start, line) ??
    colon(yaml, at, start) ??
    needsQuotes(line, start) ??
    stray(reason, start, line) ??
    other(reason, line, start)
  )
}

const FIELD = /^(\s*)(?:- )?[\w/-]+:(\s|$)/

/** A value that opens a bracket or a quote and does not close it before the next field of its set. */
function notClosed(yaml: string, errorLine: number): Fault | undefined {
  let start = 0
  while (start <= errorLine) {
    const line = lineAt(yaml, start)
    const opens = /^(\s*)(?:- )?(?:[\w/-]+:\s+)?([[{"'])/.exec(line)
    if (opens) {
      const next = new RegExp(`\\n {0,${(opens[1] ?? '').length}}[\\w-]`).exec(yaml.slice(start))
      const value = start + opens[0].length - 1
      const end = next ? start + next.index : yaml.length
      const at = openIn(yaml.slice(value, end))
      if (at !== undefined) {
        const sign = yaml[value + at] ?? ''
        const closing: Record<string, string> = { '{': '`}`', '[': '`]`' }
        const hint = `write the closing ${closing[sign] ?? 'quote'}`
        return {
          code: 'yaml/not-closed',
          message: `\`${sign}\` is not closed`,
          start: value + at,
          end: value + at + 1,
          hint,
        }
      }
    }
    start += line.length + 1
  }
  return undefined
}

/** Offset of the innermost bracket or quote that is still open at the end of a text. */
function openIn(text: string): number | undefined {
  const open: number[] = []
  let quote: number | undefined
  for (let at = 0; at < text.length; at++) {
    const sign = text[at] ?? ''
    if (quote !== undefined) {
      if (sign === text[quote]) quote = undefined
    } else if ((sign === '"' || sign === "'") && /[\s{[,]|^$/.test(text[at - 1] ?? '')) quote = at
    else if (sign === '{' || sign === '[') open.push(at)
    else if (sign === '}' || sign === ']') open.pop()
  }
  return quote ?? open.at(-1)
}

/** A line of a block of text (`readings: |`) that is not indented, and so is no part of it. */
function outdented(yaml: string, errorLine: number): Fault | undefined {
  const opener = [...yaml.slice(0, errorLine).matchAll(/^( *)(?:- )?([\w-]+): *[|>][+-]?[ \r]*\n/gm)].at(-1)
  if (!opener) return undefined
  let start = opener.index + opener[0].length
  while (start <= errorLine) {
    const line = lineAt(yaml, start)
    const indent = line.length - line.trimStart().length
    if (line.trim() !== '' && indent <= (opener[1] ?? '').length) {
      if (FIELD.test(line)) return undefined
      const message = `this line is not indented, and so does not belong to \`${opener[2]}\``
      const hint = `indent every line of \`${opener[2]}\` by two blanks`
      return {
        code: 'yaml/indentation',
        message,
        start: start + indent,
        end: start + line.trimEnd().length,
        hint,
      }
    }
    start += line.length + 1
  }
  return undefined
}

/** `volume:96 L`: without a blank the colon is part of the text. */
function missingBlank(yaml: string, start: number): Fault | undefined {
  const before = yaml.lastIndexOf('\n', start - 2) + 1
  for (const from of start > 0 ? [before, start] : [start]) {
    const found = /^(\s*(?:- )?)([A-Za-z_][\w-]*):([^\s/].*)$/.exec(lineAt(yaml, from))
    if (!found) continue
    const [, lead = '', name = '', rest = ''] = found
    const place = from + lead.length
    const hint = `write \`${name}: ${rest.trim()}\``
    const message = `a blank is missing after \`${name}:\``
    return { code: 'yaml/missing-blank', message, start: place, end: place + name.length + 1, hint }
  }
  return undefined
}

/** A second `: ` on the line, at which the parser stops. */
function colon(yaml: string, at: number, start: number): Fault | undefined {
  if (yaml[at] !== ':' || !/:\s/.test(yaml.slice(start, at))) return undefined
  return {
    code: 'yaml/colon',
    message: 'a colon followed by a blank inside a text makes YAML read another field',
    start: at,
    end: at + 1,
    hint: 'put the whole text in quotes, as in `what: "step 4: soak shortened"`',
  }
}

function needsQuotes(line: string, start: number): Fault | undefined {
  const found = /^(\s*(?:- )?(?:[\w-]+:\s+)?)(([@`%*&!|>?,\]}"'-]).*)$/.exec(line)
  if (!found) return undefined
  const [, lead = '', text = '', sign = ''] = found
  if (sign === '-' && lead.trim() === '') return undefined
  return {
    code: 'yaml/needs-quotes',
    message: `a text with \`${sign}\` in this place is not read as a text`,
    start: start + lead.length,
    end: start + lead.length + text.trimEnd().length,
    hint: `put the whole text in quotes: \`"${text.trim().replaceAll('"', "'")}"\``,
  }
}

/** A field that stands in another column than the one above it, whose value is already complete. */
function misplaced(yaml: string, start: number, line: string): Fault | undefined {
  const own = FIELD.exec(line)
  const above = yaml.slice(0, start).trimEnd().split('\n').at(-1) ?? ''
  const other = FIELD.exec(above)
  if (!own || !other || own[1] === other[1] || /:\s*[|>]?$/.test(above)) return undefined
  const indent = (own[1] ?? '').length
  return {
    code: 'yaml/indentation',
    message: `this field does not stand in the column of the one above it, \`${above.trim().slice(0, 40)}\``,
    start: start + indent,
    end: start + line.trimEnd().length,
    hint: 'fields of one set begin in the same column',
  }
}

function stray(reason: string, start: number, line: string): Fault | undefined {
  if (!/indentation|multiline key|end of the stream|mapping key/.test(reason)) return undefined
  const lead = line.length - line.trimStart().length
  return {
    code: 'yaml/indentation',
    message: 'this line is neither a field nor part of the text above it',
    start: start + lead,
    end: start + Math.max(line.trimEnd().length, lead + 1),
    hint: 'write a name, a colon and a blank, then the value; indent what belongs to the field above',
  }
}

function other(reason: string, line: string, start: number): Fault {
  if (/single document/.test(reason)) {
    const hint = 'delete the lines `---` and `...` between the fields'
    return {
      code: 'yaml/syntax',
      message: 'there are several YAML documents in one file',
      start: 0,
      end: 1,
      hint,
    }
  }
  const lead = line.length - line.trimStart().length
  const end = start + Math.max(line.trimEnd().length, lead + 1)
  const hint = 'write one field a line: a name, a colon and a blank, then the value'
  return {
    code: 'yaml/syntax',
    message: `this cannot be read as YAML: ${reason}`,
    start: start + lead,
    end,
    hint,
  }
}

function lineAt(yaml: string, start: number): string {
  const end = yaml.indexOf('\n', start)
  return yaml.slice(start, end < 0 ? yaml.length : end)
}
