/** The files of a campaign from disk: the only place where the format meets a file system. */
import { type Dirent, readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { makeProblem } from '../../problems/make.ts'
import { placeOfFile } from '../../problems/place.ts'
import { sortProblems } from '../../problems/sort.ts'
import type { Problem } from '../../problems/types.ts'
import { dataFile, isDataFile, type TextFile } from '../data-file.ts'
import { readRecords } from '../records.ts'
import type { Records } from '../types.ts'
import type { MethodSchemas } from '../world.ts'

export type Loaded = {
  readonly records: Records
  readonly problems: readonly Problem[]
  /** The text files that were read, by path. */
  readonly texts: ReadonlyMap<string, string>
  /** Every file under `records/` and `shared/`. */
  readonly exists: ReadonlySet<string>
}

const READ_AS_TEXT = /\.(md|markdown|ya?ml)$/i

/** `root` holds `records/` and `shared/`. Never throws: what cannot be read is a problem. */
export function loadRecords(root: string, schemas: MethodSchemas): Loaded {
  const problems: Problem[] = []
  const paths = ['records', 'shared'].flatMap((folder) => filesUnder(root, folder, problems))
  const files: TextFile[] = []
  for (const path of paths.filter((path) => READ_AS_TEXT.test(path) || isDataFile(path))) {
    try {
      files.push(readTextFile(root, path))
    } catch (error) {
      problems.push(unreadable(path, error))
    }
  }
  const exists = new Set(paths)
  const read = readRecords(files, schemas, exists)
  return {
    records: read.records,
    problems: sortProblems([...problems, ...read.problems]),
    texts: new Map(files.map((file) => [file.path, file.text])),
    exists,
  }
}

/** A file as text; a data file may be in any encoding. */
export const readTextFile = (root: string, path: string): TextFile =>
  isDataFile(path)
    ? dataFile(path, readFileSync(join(root, path)))
    : { path, text: readFileSync(join(root, path), 'utf8') }

/** Paths relative to the root, with forward slashes, in the order of code units on every system. */
function filesUnder(root: string, folder: string, problems: Problem[]): string[] {
  const paths: string[] = []
  for (const entry of entriesOf(root, folder, problems)) {
    const path = `${folder}/${entry.name}`
    if (entry.name.startsWith('.')) continue
    if (entry.isDirectory()) paths.push(...filesUnder(root, path, problems))
    else if (entry.isFile() || entry.isSymbolicLink()) paths.push(path)
  }
  return paths
}

function entriesOf(root: string, folder: string, problems: Problem[]): Dirent[] {
  try {
    const entries = readdirSync(join(root, folder), { withFileTypes: true })
    return entries.sort((a, b) => (a.name < b.name ? -1 : a.name > b.name ? 1 : 0))
  } catch (error) {
    // A campaign without records yet has no such folder.
    if (!(error instanceof Error && 'code' in error && error.code === 'ENOENT'))
      problems.push(unreadable(folder, error))
    return []
  }
}

function unreadable(path: string, error: unknown): Problem {
  const code = error instanceof Error && 'code' in error ? String(error.code) : 'unknown reason'
  const hint = 'check that the file is there, that it may be read, and that it is no link to nowhere'
  return makeProblem({
    code: 'file/unreadable',
    message: `this cannot be read (${code})`,
    at: placeOfFile(path),
    hint,
  })
}
