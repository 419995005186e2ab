/** Small helpers for faults with offsets. */
import type { Fault } from './types.ts'

export function refuse(
  code: string,
  message: string,
  start: number,
  end: number,
  more: Pick<Fault, 'expected' | 'why' | 'hint'> = {},
): { readonly ok: false; readonly error: Fault[] } {
  return { ok: false, error: [{ code, message, start, end: Math.max(end, start + 1), ...more }] }
}

/** The faults of a part, as offsets into the whole. */
export function moveFaults(
  result: { readonly ok: false; readonly error: Fault[] },
  by: number,
): { readonly ok: false; readonly error: Fault[] } {
  return {
    ok: false,
    error: result.error.map((fault) => ({ ...fault, start: fault.start + by, end: fault.end + by })),
  }
}
