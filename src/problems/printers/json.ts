/** A problem as the JSON of `check` gives it: a projection that stays as it is. */
import type { Problem, Severity } from '../types.ts'

export type ProblemJson = {
  readonly severity: Severity
  readonly code: string
  readonly message: string
  /** Empty where there is none. */
  readonly hint: string
  readonly file: string
  readonly line: number
  readonly column: number
}

export function problemJson(problem: Problem): ProblemJson {
  const { severity, code, message, hint, at } = problem
  return { severity, code, message, hint: hint ?? '', file: at.file, line: at.line, column: at.column }
}
