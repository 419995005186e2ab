/** Texts as YAML: plain where that is safe to read back as it was, else in double quotes. */

import type { Plain } from '../format/types.ts'

export const isList = (value: Plain): value is readonly Plain[] => Array.isArray(value)

/** Signs that mean something at the head of a value, or anywhere within a list on one line. */
const HEAD = /^[-?:,[\]{}#&*!|>'"%@`~=<]|^\.\.\./
const MARKS = /[[\]{},"'\\]|:(?:\s|$)|\s#/

const isPlain = (text: string): boolean => {
  if (
    text === '' ||
    text !== text.trim() ||
    /[^\P{C}\u200d]|[\u0085\u00a0\u2028\u2029\ufeff\t\n\r]/u.test(text)
  )
    return false
  // A minus before a digit is a number; before a blank it would begin a list.
  return (!HEAD.test(text) || /^-\d/.test(text)) && !MARKS.test(text)
}

/** A text as a value or a key. Halves of a character that some keyboards leave behind become the sign for that. */
export const scalarText = (text: string): string => {
  const whole = text.toWellFormed()
  if (isPlain(whole)) return whole
  // JSON's escapes are YAML's as well; what YAML does not print is escaped too.
  return JSON.stringify(whole).replace(/[^\P{C}\u200d]|[\u0085\u00a0\u2028\u2029\ufeff]/gu, (sign) =>
    [...sign].map(escaped).join(''),
  )
}

const escaped = (sign: string): string => {
  const code = sign.codePointAt(0) ?? 0
  return code > 0xffff
    ? `\\U${code.toString(16).padStart(8, '0')}`
    : `\\u${code.toString(16).padStart(4, '0')}`
}

/** Any value on one line: `[a, b]`, `{id: a, what: b}`. */
export const flowText = (value: Plain): string => {
  if (typeof value === 'string') return scalarText(value)
  if (isList(value)) return `[${value.map(flowText).join(', ')}]`
  return `{${Object.entries(value)
    .map(([name, each]) => `${scalarText(name)}: ${flowText(each)}`)
    .join(', ')}}`
}
