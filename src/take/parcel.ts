/** What was handed in, sorted out: each run with the files that it names, and where everything goes. */
import type { Result } from '../quantity/types.ts'
import { namedFiles } from './named-files.ts'
import { nameFault } from './names.ts'

export type Piece = { readonly name: string; readonly bytes: Uint8Array }

export type Placement = {
  /** Where it goes, from the root of the repository. */
  readonly path: string
  /** What it was called when it was handed in. */
  readonly name: string
  readonly bytes: Uint8Array
  readonly what: 'run' | 'data' | 'file'
}

export type HandedIn = {
  readonly id: string
  readonly text: string
  readonly placements: readonly Placement[]
}

export type Parcel = {
  readonly runs: readonly HandedIn[]
  /** Pieces that no run names. */
  readonly left: readonly string[]
  readonly notes: readonly string[]
}

const ID = /^[a-z0-9]+(?:-[a-z0-9]+)*$/
const RECORD = /\.(?:md|markdown)$/i
/** What a browser puts behind the name of a second download. */
const COPY = / ?\(\d+\)$/

export const isRunFile = (name: string): boolean => RECORD.test(name) && !/(?:^|\/)readme\.md$/i.test(name)

const sameBytes = (a: Uint8Array, b: Uint8Array): boolean =>
  a.length === b.length && a.every((byte, index) => byte === b[index])

const folderOf = (name: string): string => name.slice(0, name.lastIndexOf('/') + 1)

/** Text as it is read from a disk: what is not UTF-8 becomes a sign that the reader of records refuses. */
export const textOf = (bytes: Uint8Array): string =>
  new TextDecoder('utf-8', { ignoreBOM: true }).decode(bytes)

/** `2026-03`: the month of the time that the run says, else of its name. */
const monthOf = (id: string, text: string): string | null => {
  const said = /^when:[ \t]*["']?(\d{4}-(?:0[1-9]|1[0-2]))-\d{2}/m.exec(text)?.[1]
  return said ?? /^(\d{4}-(?:0[1-9]|1[0-2]))-\d{2}/.exec(id)?.[1] ?? null
}

const suggestedId = (stem: string): string =>
  stem
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '') || '2026-03-04-0912-tank-leak'

type Run = {
  readonly id: string
  readonly folder: string
  readonly piece: Piece
  readonly note: string | null
}

const runOf = (piece: Piece): Result<Run, string> => {
  const stem = piece.name.slice(piece.name.lastIndexOf('/') + 1).replace(RECORD, '')
  const id = stem.replace(COPY, '')
  const note =
    id === stem ? null : `\`${piece.name}\` is taken as \`${id}.md\`, without the number of the copy.`
  if (!ID.test(id)) {
    const error = `\`${piece.name}\` is no name of a run: small letters, digits and hyphens. Rename it to \`${suggestedId(id)}.md\`.`
    return { ok: false, error }
  }
  const month = monthOf(id, textOf(piece.bytes))
  if (month === null) {
    const error = `\`${piece.name}\` says no time: without \`when: 2026-03-04T09:12+01:00\` nobody knows its month.`
    return { ok: false, error }
  }
  return { ok: true, value: { id, folder: `records/runs/${month}/`, piece, note } }
}

const handedIn = (run: Run, pieces: ReadonlyMap<string, Piece>): HandedIn => {
  const { id, piece, folder } = run
  const text = textOf(piece.bytes)
  const { names, data } = namedFiles(text)
  const files = names.flatMap((name): Placement[] => {
    const found = pieces.get(`${folderOf(piece.name)}${name}`)
    // What lies elsewhere may be in the repository already; the check of the run says whether it is.
    if (!found || isRunFile(name) || nameFault(name) !== null) return []
    const what = name === data ? 'data' : 'file'
    return [{ path: `${folder}${name}`, name: found.name, bytes: found.bytes, what }]
  })
  const own: Placement = { path: `${folder}${id}.md`, name: piece.name, bytes: piece.bytes, what: 'run' }
  return { id, text, placements: [own, ...files] }
}

/** Two pieces for one place: one where they are equal, a fault where they differ. */
const meetings = (runs: readonly HandedIn[]): string[] => {
  const first = new Map<string, Placement>()
  return runs
    .flatMap((run) => run.placements)
    .flatMap((placement) => {
      const other = first.get(placement.path)
      first.set(placement.path, other ?? placement)
      if (!other || sameBytes(other.bytes, placement.bytes)) return []
      return [
        `\`${other.name}\` and \`${placement.name}\` would both become \`${placement.path}\`, and they differ.`,
      ]
    })
}

/** The error is a list of sentences. Where nothing is wrong every piece is placed, or named as left. */
export const sortOut = (all: readonly Piece[]): Result<Parcel, readonly string[]> => {
  const pieces = new Map(all.map((piece) => [piece.name, piece]))
  const read = all.filter(({ name }) => isRunFile(name)).map(runOf)
  if (read.length === 0) return { ok: false, error: ['There is no run in it: no file that ends with `.md`.'] }
  const found = read.flatMap((each) => (each.ok ? [each.value] : []))
  const runs = found.map((run) => handedIn(run, pieces))
  const faults = [...read.flatMap((each) => (each.ok ? [] : [each.error])), ...meetings(runs)]
  if (faults.length > 0) return { ok: false, error: faults }
  const taken = new Set(runs.flatMap((run) => run.placements.map(({ name }) => name)))
  const left = all.map(({ name }) => name).filter((name) => !taken.has(name))
  const once = new Map(runs.map((run) => [run.placements[0]?.path, run]))
  return {
    ok: true,
    value: { runs: [...once.values()], left, notes: found.flatMap(({ note }) => note ?? []) },
  }
}
