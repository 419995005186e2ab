/** What the checker says of a run, and at which control. */
import type { Problem } from '../problems/types.ts'

/** `by`, `instruments.pressure`, `cell.3.1` (row and column as the form counts them), `file` where no control fits. */
export type Spot = string

export type Finding = {
  readonly spot: Spot
  readonly severity: Problem['severity']
  readonly code: string
  readonly message: string
  readonly hint: string
}

/** How many stand in the way. */
export const errorsIn = (findings: readonly Finding[]): number =>
  findings.filter(({ severity }) => severity === 'error').length
