/** The uncertainty budget of a result: one line a source, the scatter of one fit together, the biggest first. */
import type { Records } from '../format/types.ts'
import { type BudgetLine, budget } from '../quantity/quantity.ts'
import type { Quantity, Unit } from '../quantity/types.ts'
import { differenceText, dofText, factorText, resultText } from './show.ts'
import { sourceLabel } from './sources.ts'
import type { Budget, BudgetRow } from './view.ts'
import { nameWords, plural } from './words.ts'

const MOST_LINES = 8
/** Below this share of the variance a line says nothing. */
const LEAST_SHARE = 0.0005

type Line = { readonly label: string; readonly u: number; readonly share: number; readonly dof: number }

/** Lines that read the same (the orthogonal parts of one fit) are one line for the reader. */
const byLabel = (lines: readonly BudgetLine[], records: Records): Line[] => {
  const found = new Map<string, Line>()
  for (const line of lines) {
    const label = sourceLabel(line.source, records)
    const before = found.get(label)
    found.set(label, {
      label,
      u: before ? Math.hypot(before.u, line.u) : Math.abs(line.u),
      share: (before?.share ?? 0) + line.share,
      dof: Math.min(before?.dof ?? line.dof, line.dof),
    })
  }
  return [...found.values()].sort((a, b) => b.share - a.share)
}

const rowOf = (line: Line, unit: Unit): BudgetRow => ({
  source: line.label,
  share: line.share,
  shown: line.share < 0.005 ? '< 1 %' : `${Math.round(line.share * 100)} %`,
  u: differenceText(line.u, unit),
  dof: dofText(line.dof),
})

const restOf = (lines: readonly Line[], unit: Unit): BudgetRow[] => {
  if (lines.length === 0) return []
  const share = lines.reduce((sum, line) => sum + line.share, 0)
  const u = Math.hypot(...lines.map((line) => line.u))
  const label = plural(lines.length, 'smaller source')
  return [{ ...rowOf({ label, u, share, dof: Number.POSITIVE_INFINITY }, unit), dof: '' }]
}

export const budgetOf = (name: string, quantity: Quantity, unit: Unit, records: Records): Budget => {
  const lines = byLabel(budget(quantity), records)
  const weighty = lines.filter((line) => line.share >= LEAST_SHARE)
  const shown = weighty.length > MOST_LINES + 1 ? weighty.slice(0, MOST_LINES) : weighty
  const rows = [...shown.map((line) => rowOf(line, unit)), ...restOf(lines.slice(shown.length), unit)]
  return {
    measure: nameWords(name),
    result: resultText(quantity, unit),
    note: factorText(quantity, unit),
    rows,
  }
}
