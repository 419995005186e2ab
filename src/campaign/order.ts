/** Runs depend on each other only through givens that are results of other runs. */
import type { RunRecord } from '../format/types.ts'

const needsOf = (run: RunRecord): string[] =>
  Object.values(run.given).flatMap((given) => (given.form === 'result' ? [given.from] : []))

/** Sources first, else by time. A ring is a problem of the files; here it is cut so that nothing hangs. */
export const inOrder = (runs: Readonly<Record<string, RunRecord>>): RunRecord[] => {
  const byTime = Object.values(runs).sort((a, b) => a.when.epoch - b.when.epoch || (a.id < b.id ? -1 : 1))
  const done = new Set<string>()
  const ordered: RunRecord[] = []
  const visit = (run: RunRecord | undefined): void => {
    if (!run || done.has(run.id)) return
    done.add(run.id)
    for (const need of needsOf(run)) visit(runs[need])
    ordered.push(run)
  }
  for (const run of byTime) visit(run)
  return ordered
}
