/** All files of a campaign at once: read, typed, and with every reference checked. Pure: texts in, records out. */

import { sortProblems } from '../problems/sort.ts'
import type { Problem } from '../problems/types.ts'
import { campaignRings, runRings } from './checks/campaign-rings.ts'
import { checkCard } from './checks/card.ts'
import { idProblems, missingFiles, unknownPlace } from './checks/files.ts'
import { checkGate, checkItem, checkReadiness, checkRework } from './checks/others.ts'
import { pictureProblems } from './checks/pictures.ts'
import { checkRun } from './checks/run.ts'
import { classify } from './classify.ts'
import type { TextFile } from './data-file.ts'
import { readDocument } from './document.ts'
import { type Drafts, readDrafts, withProse } from './drafts.ts'
import { gateRecord } from './kinds/gate.ts'
import { itemRecord } from './kinds/item.ts'
import { readinessRecord } from './kinds/readiness.ts'
import { reworkRecord } from './kinds/rework.ts'
import { runReadings } from './run-readings.ts'
import type { CardRecord, Records, RunRecord } from './types.ts'
import type { Known, MethodSchemas, World } from './world.ts'

export type { TextFile } from './data-file.ts'
export type { MethodSchemas } from './world.ts'

/**
 * A file with an error is left out of the records and stands in `seen` as broken; what refers to it is kept and
 * not blamed: a run whose card is broken is among the runs, its card is not among the cards.
 * @param exists paths of all files under the root, pictures too; left out, pictures are not looked for
 */
export function readRecords(
  files: readonly TextFile[],
  schemas: MethodSchemas,
  exists?: ReadonlySet<string>,
): { readonly records: Records; readonly problems: Problem[] } {
  const byPath = new Map(files.map((file) => [file.path, file]))
  const fileOf = (path: string) => byPath.get(path)
  const problems: Problem[] = []
  const broken = new Set<string>()
  const report = (path: string, found: readonly Problem[]) => {
    problems.push(...found)
    if (found.some((problem) => problem.severity === 'error')) broken.add(path)
  }

  const known: Known[] = []
  for (const { path } of files) {
    const classified = classify(path)
    if (classified.kind === 'unknown') report(path, [unknownPlace(path, classified)])
    else if (classified.kind !== 'other') known.push({ kind: classified.kind, id: classified.id, path })
  }
  for (const { path, problem } of [...idProblems(known), ...missingFiles(known)]) report(path, [problem])

  // Of two files with one id the first is read; what the other says belongs to nothing.
  const first = known.filter(({ path }) => !broken.has(path))
  const documents = first.map((entry) => {
    const read = readDocument(entry.path, fileOf(entry.path)?.text ?? '', entry.kind)
    if (!read.ok) report(entry.path, read.error)
    return { known: entry, read }
  })
  const drafts = readDrafts(documents, schemas, report)
  const world: World & Drafts = {
    ...drafts,
    schemas,
    exists,
    known: new Map(first.map((entry) => [entry.id, entry])),
  }

  const cards: Record<string, CardRecord> = {}
  for (const draft of drafts.cards.values()) {
    const { record, problems } = checkCard(draft, world)
    report(record.source.path, problems)
    cards[record.id] = record
  }
  const runs: Record<string, RunRecord> = {}
  for (const draft of drafts.runs.values()) {
    const { readings, source, problems: unread } = runReadings(draft.base, draft.fields, fileOf)
    report(source.path, unread)
    const empty = { rows: 0, columns: [] }
    const located = { ...draft, base: { ...draft.base, source } }
    const { record, problems } = checkRun(located, readings ?? empty, readings !== null, world)
    report(record.source.path, problems)
    runs[record.id] = record
  }
  for (const draft of drafts.gates.values()) report(draft.base.source.path, checkGate(draft, world))
  for (const draft of drafts.reworks.values()) report(draft.base.source.path, checkRework(draft, world))
  for (const draft of drafts.items.values()) report(draft.base.source.path, checkItem(draft, world))
  for (const draft of drafts.readiness.values()) report(draft.base.source.path, checkReadiness(draft, world))
  for (const { path, problem } of [...campaignRings(world), ...runRings(runs, cards)]) report(path, [problem])
  if (exists) {
    for (const { base, document, files } of withProse(drafts)) {
      report(base.source.path, pictureProblems(document, files, exists))
    }
  }

  const whole = <T extends { readonly source: { readonly path: string } }>(
    records: Iterable<readonly [string, T]>,
  ) => Object.fromEntries([...records].filter(([, record]) => !broken.has(record.source.path)))
  const built = <D, R extends { readonly source: { readonly path: string } }>(
    of: ReadonlyMap<string, D>,
    build: (draft: D) => R,
  ) => whole([...of].map(([id, draft]) => [id, build(draft)] as const))
  const records: Records = {
    settings: drafts.settings,
    people: drafts.people ?? {},
    articles: whole(drafts.articles),
    instruments: whole(drafts.instruments),
    cards: whole(Object.entries(cards)),
    runs: whole(Object.entries(runs)),
    gates: built(drafts.gates, ({ base, fields }) => gateRecord(base, fields)),
    reworks: built(drafts.reworks, ({ base, fields }) => reworkRecord(base, fields)),
    items: built(drafts.items, ({ base, fields }) => itemRecord(base, fields)),
    readiness: built(drafts.readiness, ({ base, fields }) => readinessRecord(base, fields)),
    seen: known.map(({ path, id, kind }) => ({ path, id, kind, broken: broken.has(path) })),
  }
  return { records, problems: sortProblems(problems) }
}
