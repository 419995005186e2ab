/** How problems come about: from parts, or from a fault in a text whose place is known. */
import type { Fault } from '../quantity/types.ts'
import type { Place, Problem, Severity } from './types.ts'

/** A problem is an error unless it says that it is a warning. The message is one sentence without a full stop. */
export function makeProblem(parts: Omit<Problem, 'severity'> & { readonly severity?: Severity }): Problem {
  return { ...parts, severity: parts.severity ?? 'error' }
}

/** A fault says what is wrong with a text; `at` says where that text stands. */
export function problemOfFault(fault: Fault, at: Place, severity: Severity = 'error'): Problem {
  const { code, message, expected, why, hint } = fault
  return makeProblem({ code, severity, message, at, expected, why, hint })
}
