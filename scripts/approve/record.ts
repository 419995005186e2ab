/** Which records are meant, and whether a person may review them. */
import { isAbsolute, relative, resolve } from 'node:path'
import type { Campaign } from '../../src/campaign/types.ts'
import { isDataFile } from '../../src/format/data-file.ts'
import type { Person, Records } from '../../src/format/types.ts'
import type { KnownHistory } from '../../src/history/types.ts'
import { nearest } from '../../src/quantity/nearest.ts'

export type Named = Records['seen'][number]

/** By id or by path, seen from the root or from here; or that there is none. */
export const findRecord = (records: Records, root: string, here: string, text: string): Named | string => {
  const fromRoot = (folder: string) => relative(root, resolve(folder, text)).replaceAll('\\', '/')
  const paths = isAbsolute(text) ? [fromRoot(here)] : [text, fromRoot(root), fromRoot(here)]
  const found = records.seen.find(({ id, path }) => id === text || paths.includes(path))
  if (found) return found
  const close = nearest(
    text,
    records.seen.map(({ id }) => id),
  )
  const hint = close.length > 0 ? `; these are close: ${close.join(', ')}` : ''
  return `There is no record ${text}${hint}. An id or the path of its file is needed.`
}

/** Whose own work a record is by what it says, with the words for it. */
const workOf = (records: Records, { id, kind }: Named): readonly (readonly [who: string, what: string])[] => {
  const run = kind === 'run' ? records.runs[id] : undefined
  const rework = kind === 'rework' ? records.reworks[id] : undefined
  const item = kind === 'item' ? records.items[id] : undefined
  return [
    ...(run?.by ?? []).map((who) => [who, 'made the run'] as const),
    ...(run?.witness
      ? [[run.witness, 'was its witness, and one person fills one role on a run'] as const]
      : []),
    ...(rework?.by ?? []).map((who) => [who, 'did the rework'] as const),
    ...(item ? [[item.raised.by, 'raised it'] as const] : []),
    ...(item?.closed ? [[item.closed.by, 'closed it'] as const] : []),
  ]
}

const SAYS_WHO = new Set(['run', 'rework', 'item'])

/** A card or an instrument does not say who wrote it; git does. */
const wrote = (history: KnownHistory, path: string, person: Person): boolean => {
  const last = history.files.get(path)?.touched.at(-1)
  const author = last && history.commits.get(last.commit)?.author.email.toLowerCase()
  return person.emails.some((email) => email.toLowerCase() === author)
}

const stem = (path: string): string => path.replace(/\.[^./]*$/, '')

/** A record is its file and the data file beside it. */
const isPartOf = (file: string, path: string): boolean =>
  file === path || (isDataFile(file) && stem(file) === stem(path))

/** Why this person cannot review this record now, with what to do instead; null where nothing stands against it. */
export const objectionTo = (
  { records, problems }: Campaign,
  history: KnownHistory,
  record: Named,
  person: Person,
): string | null => {
  const { id, kind, path } = record
  const open = [...history.uncommitted.keys()].filter((file) => isPartOf(file, path))
  if (open.length > 0) {
    return `${open.join(' and ')}: not committed as it lies there, and a review covers what is committed. Commit first.`
  }
  const broken = problems.some(({ severity, at }) => severity === 'error' && isPartOf(at.file, path))
  if (broken) return `${id} has errors; see npm run check, and mend them before anybody reviews it.`
  const own = workOf(records, record).find(([who]) => who === person.id)
  if (own) return `${id}: ${person.name} ${own[1]}; a second person must review it.`
  if (!SAYS_WHO.has(kind) && wrote(history, path, person)) {
    return `${id}: ${person.name} wrote it as it is now; a second person must review it.`
  }
  return null
}
