/** A problem on one line, for editors and for search. */
import type { Problem } from '../types.ts'

export function printLine(problem: Problem): string {
  const { at, severity, code, message, hint } = problem
  const line = `${at.file}:${at.line}:${at.column}: ${severity} ${code}: ${message}${hint ? ` (${hint})` : ''}`
  return line.replace(/\s*\n\s*/g, ' ')
}
