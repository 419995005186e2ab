/** Whether a module's default export is a problem code; the contract test refuses files for which it is not. */
import type { ProblemCode } from './types.ts'

export function isProblemCode(value: unknown): value is ProblemCode {
  return (
    typeof value === 'object' &&
    value !== null &&
    'code' in value &&
    'severity' in value &&
    'title' in value &&
    'page' in value &&
    'example' in value
  )
}
