/** Problems as they are printed for a person: place, what is wrong, the lines, why, and what to write instead. */
import type { Problem } from '../types.ts'
import { excerpt } from './excerpt.ts'

const COLOURS = { error: 31, warning: 33, strong: 1, quiet: 2 } as const

/** `textOf` gives a file's text for the excerpt; where it gives none, the problem is printed without lines. */
export function printTerminal(
  problem: Problem,
  textOf: (file: string) => string | undefined,
  options: { readonly colour?: boolean } = {},
): string {
  const paint = (name: keyof typeof COLOURS, text: string) =>
    options.colour ? `\u001b[${COLOURS[name]}m${text}\u001b[0m` : text
  const { at, severity, code } = problem
  const place = paint('strong', `${at.file}:${at.line}:${at.column}`)
  const lines = [`${place}  ${paint(severity, severity)}  ${code}`, `  ${problem.message}`]
  lines.push(...excerpt(at, textOf(at.file) ?? ''))
  for (const { message, at: other } of problem.related ?? []) {
    lines.push(`  ${message}: ${other.file}:${other.line}:${other.column}`)
    lines.push(...excerpt(other, textOf(other.file) ?? ''))
  }
  const note = (name: string, text: string) => lines.push(`  ${paint('quiet', name.padEnd(4))}  ${text}`)
  if (problem.expected?.length) note('expected', problem.expected.join(', '))
  if (problem.why) note('why', problem.why)
  if (problem.hint) note('hint', problem.hint)
  note('see', [...(problem.see ?? []), `problems: ${code}`].join(' · '))
  return lines.join('\n')
}
