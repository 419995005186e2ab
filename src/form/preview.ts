/** What the form shows of a run while it is being recorded: plain texts and numbers, nothing left to compute. */
import { conductItems } from '../campaign/items/conduct.ts'
import { evidenceItems } from '../campaign/items/evidence.ts'
import type { Run } from '../campaign/types.ts'
import type { LoggerText } from '../format/logger/types.ts'
import type { Verdict } from '../judge/types.ts'
import type { Method } from '../methods/method.ts'
import { criterionRows } from '../views/criteria.ts'
import { figurePlot } from '../views/figures.ts'
import { resultText } from '../views/show.ts'
import type { CriterionRow, Plot } from '../views/view.ts'
import { nameWords } from '../views/words.ts'
import { type Pack, type Taken, takeRun } from './desk.ts'
import { errorsIn, type Finding } from './finding.ts'
import { runFolder, runPath } from './name.ts'
import { cellFindings, findingsOf } from './spots.ts'
import type { RunState } from './state.ts'
import { runText, writeRun } from './write.ts'

export type Preview = {
  readonly path: string
  readonly text: string
  readonly findings: readonly Finding[]
  /** Null where nothing can be computed yet. */
  readonly verdict: Verdict | null
  /** Why nothing, or nothing better, can be said. */
  readonly reasons: readonly string[]
  readonly criteria: readonly CriterionRow[]
  readonly measures: readonly { readonly name: string; readonly meaning: string; readonly result: string }[]
  readonly notes: readonly string[]
  readonly advice: readonly string[]
  /** Open items that this run would raise by itself. */
  readonly items: readonly string[]
  readonly plots: readonly Plot[]
  /** Rows that were read. */
  readonly rows: number
}

/** What of a run alone can be said: what depends on other runs is said when it has landed. */
const OWN_ITEMS: readonly string[] = ['two-roles', 'deviation', 'inspection-open']

const itemsOf = (run: Run, { records }: Taken): string[] => {
  const context = { records, runs: [run], cards: [], asOf: run.record.when.date }
  const own = conductItems(context).filter((item) => OWN_ITEMS.includes(item.kind))
  return [...evidenceItems(context), ...own].map((item) => item.title)
}

const measuresOf = (run: Run): Preview['measures'] => {
  const { computed } = run
  if (!computed) return []
  const meanings = new Map(computed.schema.measures.map((field) => [field.name, field.meaning]))
  return Object.entries({ ...computed.measures, ...computed.derived }).flatMap(([name, quantity]) => {
    const unit = run.units[name]
    const meaning =
      meanings.get(name) ?? (run.card.derive[name] ? `of the card: ${run.card.derive[name]}` : '')
    return unit ? [{ name: nameWords(name), meaning, result: resultText(quantity, unit) }] : []
  })
}

const plain = (sentence: string): [string] => [sentence]

/** What is said where nothing is computed. */
const waiting = ({ run }: Taken, findings: readonly Finding[]): string[] => {
  const errors = errorsIn(findings)
  if (errors > 0)
    return [
      `Nothing is computed yet: ${errors} ${errors === 1 ? 'thing stands' : 'things stand'} in the way.`,
    ]
  return run ? [] : ['The card itself has errors, so nothing can be computed.']
}

/** Data of the readings, where they lie in a file beside the run. */
export type Beside = (LoggerText & { readonly name: string }) | null

/** Nobody has said yet who records: that is asked for, and hinders no result meanwhile. */
const NOBODY: Finding = {
  spot: 'by',
  severity: 'error',
  code: 'field/empty',
  message: 'nobody is named who records',
  hint: 'tick at least one name',
}

const somebody = (pack: Pack): string => {
  const people = pack.files.find(({ path }) => path === 'shared/people.yaml')?.text ?? ''
  return /^([a-z0-9][a-z0-9-]*):/m.exec(people)?.[1] ?? ''
}

/** The text of the run, what `check` will say of it, and what comes out. */
export const previewRun = (
  pack: Pack,
  methods: Readonly<Record<string, Method>>,
  state: RunState,
  taken: readonly string[],
  beside: Beside = null,
): Preview => {
  const nobody = state.by.length === 0
  const written = writeRun(nobody ? { ...state, by: [somebody(pack)] } : state)
  // A data file has the name of its run: that of an opened one may be somebody's own.
  const stem = beside && /^(.*)\.[^.]*$/.exec(beside.name)?.[1]
  const path = stem ? `${runFolder(state)}/${stem}.md` : runPath(state, taken)
  const folder = path.slice(0, path.lastIndexOf('/') + 1)
  const data = beside ? { data: { ...beside, path: folder + beside.name } } : {}
  const names = state.files.map(({ file }) => file)
  const read = takeRun(pack, methods, { path, text: written.text, beside: names, ...data })
  const found = findingsOf(read.problems, written, path, state.columns.length)
  const cells = read.run ? [] : cellFindings(written, state.columns.length, state.missing)
  const known = new Set(found.map(({ spot }) => spot))
  const findings = [...found, ...cells.filter(({ spot }) => !known.has(spot))]
  const run = errorsIn(findings) > 0 ? null : read.run
  const preferred = read.records.settings.units
  return {
    path,
    text: runText(state),
    findings: nobody ? [NOBODY, ...findings] : findings,
    verdict: run?.computed ? run.wouldBe : null,
    reasons: [...waiting(read, findings), ...(run?.reasons ?? [])],
    criteria: run ? criterionRows(run.judgements, { linked: plain }) : [],
    measures: run ? measuresOf(run) : [],
    notes: run?.notes ?? [],
    advice: run?.advice.map((each) => each.text) ?? [],
    items: run ? itemsOf(run, read) : [],
    plots: run?.computed ? run.computed.figures.map((figure) => figurePlot(figure, run, preferred)) : [],
    rows: run?.record.readings.rows ?? 0,
  }
}
