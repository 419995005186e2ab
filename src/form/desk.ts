/**
 * The run as `check` will see it: the text that the form writes is read by the reader of all files, among the card, its
 * instruments and people, and computed by the code that computes every run.
 */
import { functionsFor, parseCard } from '../campaign/formulas.ts'
import { inOrder } from '../campaign/order.ts'
import { computeRun } from '../campaign/run.ts'
import type { Run } from '../campaign/types.ts'
import { readRecords, type TextFile } from '../format/records.ts'
import type { Records } from '../format/types.ts'
import { FUNCTIONS } from '../functions/index.ts'
import type { Method } from '../methods/method.ts'
import type { Problem } from '../problems/types.ts'

/** What a form holds of the campaign: all that lies in `shared/`, and the runs whose results may be givens. */
export type Pack = {
  readonly revision: Revision
  readonly files: readonly TextFile[]
}

/** Which state of the repository the form was built from. */
export type Revision = {
  /** Commit of what is in `shared/`; null where it is not known, or something there is not committed. */
  readonly commit: string | null
  /** Day of the build. */
  readonly day: string
  /** Digest of all that the form is made of. */
  readonly digest: string
}

export type Handed = {
  readonly path: string
  readonly text: string
  /** Names of photos and data beside it. */
  readonly beside: readonly string[]
  /** Text of the data file, where the readings lie in one. */
  readonly data?: TextFile
}

export type Taken = {
  /** Null where the file or its card cannot be read. */
  readonly run: Run | null
  readonly records: Records
  /** Of the run's own file; those of its data file too. */
  readonly problems: readonly Problem[]
}

const nameOf = (path: string): string => /([^/]+)\.(?:md|yaml)$/.exec(path)?.[1] ?? ''

const cardIn = (text: string): string => /^card:[ \t]*(\S+)/m.exec(text)?.[1] ?? ''

const wordsOf = (text: string): Set<string> => new Set(text.match(/[a-z0-9]+(?:-[a-z0-9]+)*/g) ?? [])

/** The method of a card, by the text of its file. */
export const methodOf = (pack: Pack, card: string): string => {
  const file = pack.files.find(({ path }) => path === `shared/cards/${card}.md`)
  return /^method:[ \t]*(\S+)/m.exec(file?.text ?? '')?.[1] ?? ''
}

/** The files of runs that these texts speak of, and those that they speak of in turn. */
const sourcesOf = (pack: Pack, texts: readonly string[]): TextFile[] => {
  const runs = pack.files.filter(({ path }) => path.startsWith('records/runs/'))
  const found = new Map<string, TextFile>()
  const look = (text: string): void => {
    const words = wordsOf(text)
    for (const file of runs) {
      if (found.has(file.path) || !words.has(nameOf(file.path))) continue
      found.set(file.path, file)
      look(file.text)
    }
  }
  texts.forEach(look)
  return [...found.values()]
}

/** Cards of the run and of the runs that it rests on: their methods are needed. */
export const cardsNeeded = (pack: Pack, text: string): string[] => {
  const own = cardIn(text)
  const card = pack.files.find(({ path }) => path === `shared/cards/${own}.md`)?.text ?? ''
  return [...new Set([own, ...sourcesOf(pack, [text, card]).map((file) => cardIn(file.text))])]
}

/**
 * What is read: of cards and instruments only those that are spoken of; the others are there by name, so that nothing
 * that refers to them is blamed, and cost no time. Gates say nothing about a run.
 */
const filesFor = (pack: Pack, handed: Handed): TextFile[] => {
  const cards = cardsNeeded(pack, handed.text)
  const card = pack.files.find(({ path }) => path === `shared/cards/${cards[0]}.md`)?.text ?? ''
  const sources = sourcesOf(pack, [handed.text, card])
  const spoken = wordsOf([handed.text, ...sources.map((file) => file.text)].join('\n'))
  const shared = pack.files.flatMap((file): TextFile[] => {
    const { path } = file
    if (path.startsWith('records/') || path.startsWith('shared/gates/')) return []
    const wanted = path.startsWith('shared/cards/')
      ? cards.includes(nameOf(path))
      : !path.startsWith('shared/instruments/') || spoken.has(nameOf(path))
    return [wanted ? file : { path, text: '' }]
  })
  const own = { path: handed.path, text: handed.text }
  return [
    ...shared,
    ...sources.filter(({ path }) => path !== handed.path),
    own,
    ...(handed.data ? [handed.data] : []),
  ]
}

const folderOf = (path: string): string => path.slice(0, path.lastIndexOf('/') + 1)

/** Reads and computes a run as it would be in the repository. `methods` holds those of `cardsNeeded`. */
export const takeRun = (pack: Pack, methods: Readonly<Record<string, Method>>, handed: Handed): Taken => {
  const files = filesFor(pack, handed)
  const folder = folderOf(handed.path)
  const exists = new Set([...files.map(({ path }) => path), ...handed.beside.map((name) => folder + name)])
  const { records, problems } = readRecords(files, methods, exists)
  const id = nameOf(handed.path)
  const runs = new Map<string, Run>()
  const found: Problem[] = problems.filter(
    ({ at }) => at.file === handed.path || at.file === handed.data?.path,
  )
  for (const record of inOrder(records.runs)) {
    const card = records.cards[record.card]
    const method = card && methods[card.method]
    if (!card || !method) continue
    const { run, problems } = computeRun({
      record,
      card,
      article: record.article ?? Object.keys(card.articles)[0] ?? '',
      method,
      formulas: parseCard(card),
      functions: functionsFor(method, FUNCTIONS),
      instruments: records.instruments,
      runs,
    })
    runs.set(record.id, run)
    if (record.id === id) found.push(...problems)
  }
  return { run: runs.get(id) ?? null, records, problems: found }
}
