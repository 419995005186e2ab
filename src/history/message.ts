/** The message of a commit → its subject, and lines of the form `Key: value`. */
import type { Trailer } from './types.ts'

const KEY_AND_VALUE = /^([A-Za-z][A-Za-z0-9-]*):[ \t]+(\S.*)$/

/** The first paragraph on one line, as git has it. */
export const subjectOf = (message: string): string =>
  (paragraphsOf(message)[0] ?? []).map((line) => line.trim()).join(' ')

/**
 * In every paragraph but the first: a forge that squashes puts the messages of a branch one below the other, so that
 * what closed one of them stands in the middle. A line that begins with a blank goes on with the one before it.
 */
export const trailersOf = (message: string): Trailer[] =>
  paragraphsOf(message)
    .slice(1)
    .flatMap((lines, at) =>
      unfolded(lines).flatMap((line) => {
        const [, key, value] = KEY_AND_VALUE.exec(line) ?? []
        return key !== undefined && value !== undefined
          ? [{ key, value: value.trim(), paragraph: at + 1 }]
          : []
      }),
    )

const paragraphsOf = (message: string): string[][] =>
  message
    .replaceAll('\r', '')
    .split(/\n(?:[ \t]*\n)+/)
    .map((paragraph) => paragraph.split('\n').filter((line) => line.trim() !== ''))
    .filter((lines) => lines.length > 0)

const unfolded = (lines: readonly string[]): string[] => {
  const whole: string[] = []
  for (const line of lines) {
    const last = whole.at(-1)
    if (/^[ \t]/.test(line) && last !== undefined) whole[whole.length - 1] = `${last} ${line.trim()}`
    else whole.push(line)
  }
  return whole
}
