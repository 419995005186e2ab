/** Scans of one text that are kept, so that whoever reads it again in other units or with other columns need not wait. */
import type { ColumnPlan } from './plan.ts'
import type { RawColumn } from './raw.ts'
import { MISSING, numberMarks, type Scan, type Scanned, scan } from './scan.ts'

/** By all that the rows depend on; within, by all that a column depends on. Filled by `scanKept` alone. */
export type KeptScans = Map<string, { readonly starts: Int32Array; readonly columns: Map<string, RawColumn> }>

const rowsKey = ({ from, to, dialect, names, missing }: Scan): string =>
  JSON.stringify([from, to, dialect, names.length, numberMarks(missing, dialect).sort()])

const columnKey = (plan: ColumnPlan): string =>
  JSON.stringify([plan.at, plan.kind, plan.kind === 'time' ? plan.written : ''])

/** Where a value is missing, it also depends on what is listed as missing. */
const gapsKey = (plan: ColumnPlan, missing: readonly string[]): string =>
  `${columnKey(plan)} ${JSON.stringify([...new Set([...MISSING, ...missing])].sort())}`

/**
 * As `scan`, and out of `kept` where all that is wanted is there. Only a scan without a fault is kept, and one in which
 * each row has all its cells: then it does not matter what else is read of them.
 */
export function scanKept(input: Scan, kept: KeptScans): Scanned {
  // What a window leaves is small, and seldom asked for twice.
  if (input.window) return scan(input)
  const { missing } = input
  const key = rowsKey(input)
  const before = kept.get(key)
  const known = input.columns.flatMap(
    (plan) => before?.columns.get(columnKey(plan)) ?? before?.columns.get(gapsKey(plan, missing)) ?? [],
  )
  if (before && known.length === input.columns.length)
    return { rows: before.starts.length, starts: before.starts, columns: known, short: false, faults: [] }
  const scanned = scan(input)
  if (scanned.faults.length > 0 || scanned.short) return scanned
  const columns = before?.columns ?? new Map<string, RawColumn>()
  for (const [column, plan] of input.columns.entries()) {
    const raw = scanned.columns[column]
    const isWhole = plan.kind !== 'words' && raw?.missing.includes(1) === false
    if (raw) columns.set(isWhole ? columnKey(plan) : gapsKey(plan, missing), raw)
  }
  kept.set(key, { starts: scanned.starts, columns })
  return scanned
}
