/** Two states of the files of a campaign, path by path: what came, went, moved, and which fields differ. */
import { changesOf } from '../campaign/history/changes.ts'
import { dataPathIn, type RunText } from '../campaign/history/run-text.ts'
import { classify, type FileKind } from '../format/classify.ts'

export type Texts = ReadonlyMap<string, string>

export type FieldChange = { readonly at: string; readonly before: string; readonly after: string }

export type FileChange = {
  readonly path: string
  readonly id: string
  readonly kind: FileKind | 'other'
  readonly is: 'added' | 'removed' | 'changed'
  /** Empty: only prose, pictures or layout. */
  readonly fields: readonly FieldChange[]
}

export type FileChanges = {
  readonly files: readonly FileChange[]
  /** Old path → new path, with not a letter changed. */
  readonly moved: ReadonlyMap<string, string>
}

/** Line ends and a byte order mark say nothing. */
const same = (text: string | undefined): string | undefined =>
  text?.replace(/^\ufeff/, '').replaceAll('\r\n', '\n')

const asRecord = (path: string, text: string): string =>
  path.endsWith('.md') ? text : `---\n${text.replace(/^\ufeff/, '')}\n---\n`

const runText = (path: string, texts: Texts): RunText => {
  const text = asRecord(path, texts.get(path) ?? '')
  const beside = dataPathIn(path, text)
  const data = beside === null ? undefined : texts.get(beside)
  return beside === null || data === undefined
    ? { path, text }
    : { path, text, data: { path: beside, text: data } }
}

/** Fields that differ, as `given volume`, `readings row 30 column pressure`. */
export const fieldChanges = (path: string, before: Texts, after: Texts): FieldChange[] =>
  changesOf(runText(path, before), runText(path, after))

/** The record that a file belongs to: a data file belongs to its run. */
const ownerOf = (path: string, texts: Texts): string => {
  const run = path.replace(/\.[^./]*$/, '.md')
  return classify(path).kind === 'other' && texts.has(run) ? run : path
}

const movedFiles = (
  gone: readonly string[],
  come: readonly string[],
  before: Texts,
  after: Texts,
): Map<string, string> => {
  const byText = new Map(come.map((path) => [same(after.get(path)), path]))
  const moved = new Map<string, string>()
  for (const path of gone) {
    const to = byText.get(same(before.get(path)))
    if (to !== undefined && ![...moved.values()].includes(to)) moved.set(path, to)
  }
  return moved
}

export const fileChanges = (before: Texts, after: Texts): FileChanges => {
  const gone = [...before.keys()].filter((path) => !after.has(path))
  const come = [...after.keys()].filter((path) => !before.has(path))
  const moved = movedFiles(gone, come, before, after)
  const kept = [...after.keys()].filter((path) => before.has(path))
  const touched = new Set([
    ...kept
      .filter((path) => same(before.get(path)) !== same(after.get(path)))
      .map((path) => ownerOf(path, after)),
    ...[...gone, ...come]
      .map((path) => ownerOf(path, after))
      .filter((path) => before.has(path) && after.has(path)),
  ])
  const change = (path: string, is: FileChange['is']): FileChange => {
    const classified = classify(path)
    const known = classified.kind !== 'other' && classified.kind !== 'unknown'
    return {
      path,
      id: known ? classified.id : path,
      kind: known ? classified.kind : 'other',
      is,
      fields: is === 'changed' ? fieldChanges(path, before, after) : [],
    }
  }
  const stays = new Set([...moved.keys(), ...moved.values()])
  const alone = (path: string): boolean => !stays.has(path) && !touched.has(ownerOf(path, after))
  const files = [
    ...gone.filter(alone).map((path) => change(path, 'removed')),
    ...come.filter(alone).map((path) => change(path, 'added')),
    ...[...touched].map((path) => change(path, 'changed')),
  ]
  return { files: files.sort((a, b) => (a.path < b.path ? -1 : 1)), moved }
}
