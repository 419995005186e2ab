/** What git's index holds: the content that a commit would take, whatever lies in the working folder. */
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { dataFile, isDataFile, type TextFile } from '../../src/format/data-file.ts'
import { git } from '../git.ts'
import { neededFiles } from './needed.ts'
import { FOLDERS, type Staged } from './staged.ts'

/** Path → blob of every plain file below the root; a link, a repository within or a hidden file is no record. */
const indexedBlobs = (root: string): ReadonlyMap<string, string> | string => {
  const answer = git(root, ['ls-files', '-s', '-z', '--', ...FOLDERS])
  if (!answer.ok) return answer.why
  const entries = answer.text.split('\0').flatMap((line) => {
    const [, mode = '', blob = '', path = ''] = /^(\d+) ([0-9a-f]+) 0\t([\s\S]*)$/.exec(line) ?? []
    return mode.startsWith('100') && !/(?:^|\/)\./.test(path) ? [[path, blob] as const] : []
  })
  return new Map(entries)
}

/** Git keeps a large file elsewhere and a pointer to it in the index; the file itself lies in the working folder. */
const POINTER = 'version https://git-lfs.github.com/spec/v1\n'

const resolved = (root: string, path: string, bytes: Buffer): Buffer => {
  if (bytes.toString('latin1', 0, POINTER.length) !== POINTER) return bytes
  try {
    return readFileSync(join(root, path))
  } catch {
    return bytes
  }
}

/** As `loadRecords` reads it: a data file in whatever encoding, all others in UTF-8. */
const textFile = (path: string, bytes: Buffer): TextFile =>
  isDataFile(path) ? dataFile(path, bytes) : { path, text: bytes.toString('utf8') }

const isRecordText = (path: string): boolean => /\.(md|markdown|ya?ml)$/i.test(path)

/** Texts of blobs in one process; or why git does not give them. */
const readBlobs = (
  root: string,
  blobs: readonly (readonly [path: string, blob: string])[],
): TextFile[] | string => {
  const answer = git(root, ['cat-file', '--batch'], { input: blobs.map(([, blob]) => `${blob}\n`).join('') })
  if (!answer.ok) return answer.why
  const files: TextFile[] = []
  let at = 0
  for (const [path] of blobs) {
    const end = answer.out.indexOf(10, at)
    const size = Number(/ blob (\d+)$/.exec(answer.out.toString('utf8', at, end))?.[1] ?? Number.NaN)
    if (!Number.isInteger(size)) return `the content of ${path} is not in the repository`
    const start = end + 1
    files.push(textFile(path, resolved(root, path, answer.out.subarray(start, start + size))))
    at = start + size + 1
  }
  return files
}

export type StagedContent = {
  /** What the commit adds or changes: a run also where only its data file is. */
  readonly wanted: ReadonlySet<string>
  /** What must be read to judge that. */
  readonly files: readonly TextFile[]
  /** Every path below the root. */
  readonly exists: ReadonlySet<string>
  /** Everything is read and judged: where something is taken away, others may miss it. */
  readonly whole: boolean
}

const runOf = (path: string): string => path.replace(/\.[^./]*$/, '.md')

/** The staged content; or why git does not give it. */
export const readStaged = (root: string, { changed, removed }: Staged): StagedContent | string => {
  const blobs = indexedBlobs(root)
  if (typeof blobs === 'string') return blobs
  const texts = readBlobs(
    root,
    [...blobs].filter(([path]) => isRecordText(path)),
  )
  if (typeof texts === 'string') return texts
  const wanted = new Set([...changed, ...changed.map(runOf).filter((path) => blobs.has(path))])
  const whole = removed.length > 0
  const needed = whole ? texts : neededFiles(texts, wanted)
  const runs = new Set(needed.map(({ path }) => path))
  // Data files are large: only those of runs that are read.
  const data = readBlobs(
    root,
    [...blobs].filter(([path]) => isDataFile(path) && runs.has(runOf(path))),
  )
  if (typeof data === 'string') return data
  return { wanted, files: [...needed, ...data], exists: new Set(blobs.keys()), whole }
}
