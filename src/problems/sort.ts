/** Order and count of problems. */
import type { Problem } from './types.ts'

/** By file, line and column; what stands at one place keeps errors before warnings. Code units, not a locale, decide. */
export function sortProblems(problems: readonly Problem[]): Problem[] {
  return [...problems].sort(
    (a, b) =>
      byText(a.at.file, b.at.file) ||
      a.at.line - b.at.line ||
      a.at.column - b.at.column ||
      byText(a.severity, b.severity) ||
      byText(a.code, b.code) ||
      byText(a.message, b.message),
  )
}

/** `2 errors and 1 warning in 2 files; 40 files were read`, or that nothing was wrong. */
export function countProblems(problems: readonly Problem[], filesRead: number): string {
  const read = `${count(filesRead, 'file')} ${filesRead === 1 ? 'was' : 'were'} read`
  if (problems.length === 0) return `no problems; ${read}`
  const errors = problems.filter((problem) => problem.severity === 'error').length
  const warnings = problems.length - errors
  const files = new Set(problems.map((problem) => problem.at.file)).size
  const counts = [errors > 0 ? count(errors, 'error') : '', warnings > 0 ? count(warnings, 'warning') : '']
  return `${counts.filter((text) => text !== '').join(' and ')} in ${count(files, 'file')}; ${read}`
}

const count = (n: number, what: string) => `${n} ${what}${n === 1 ? '' : 's'}`

const byText = (a: string, b: string) => (a < b ? -1 : a > b ? 1 : 0)
