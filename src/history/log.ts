/** What `git log --pretty=raw --raw -z` prints → commits, each with what it changed against its first parent. */
import { subjectOf, trailersOf } from './message.ts'
import type { Commit } from './types.ts'

/** A file that a commit brought, changed or took away. `null`: not there, or no file of its own (a link, a module). */
export type Change = {
  readonly path: string
  readonly before: string | null
  readonly blob: string | null
}

export type LoggedCommit = { readonly commit: Commit; readonly changes: readonly Change[] }

/** In the order of the text. Paths that `wanted` refuses are left out. */
export function parseLog(text: string, wanted: (path: string) => boolean): LoggedCommit[] {
  const commits: { commit: Commit; changes: Change[] }[] = []
  const tokens = tokensOf(text)
  for (let token = tokens(); token !== null; token = tokens()) {
    let raw = token
    if (raw.startsWith('commit ')) {
      // The first line about a file follows on the message, which is indented.
      const end = raw.indexOf('\n:')
      commits.push({ commit: parseCommit(end < 0 ? raw : raw.slice(0, end)), changes: [] })
      raw = end < 0 ? '' : raw.slice(end + 1)
    }
    if (!raw.startsWith(':')) continue
    const path = tokens() ?? ''
    const change = parseChange(raw, path)
    if (change && wanted(path)) commits.at(-1)?.changes.push(change)
  }
  return commits
}

/** What `git log --merges --diff-merges=combined --raw -z --format=%H` prints → files that a merge made anew. */
export function parseMerges(text: string): Map<string, Set<string>> {
  const merges = new Map<string, Set<string>>()
  const tokens = tokensOf(text)
  let files = new Set<string>()
  for (let token = tokens(); token !== null; token = tokens()) {
    if (token.startsWith('::')) files.add(tokens() ?? '')
    else if (token.trim() !== '') {
      files = new Set()
      merges.set(token.trim(), files)
    }
  }
  return merges
}

/** Pieces between NULs, one after the other, without a list of them all. */
function tokensOf(text: string): () => string | null {
  let at = 0
  return () => {
    if (at >= text.length) return null
    const end = text.indexOf('\0', at)
    const token = text.slice(at, end < 0 ? text.length : end)
    at = end < 0 ? text.length : end + 1
    return token
  }
}

/** `:100644 100755 <before> <blob> M`; modes that begin with 100 are files. */
function parseChange(raw: string, path: string): Change | null {
  const [modeBefore = '', mode = '', before = '', blob = ''] = raw.slice(1).split(' ')
  const change = {
    path,
    before: modeBefore.startsWith('100') ? before : null,
    blob: mode.startsWith('100') ? blob : null,
  }
  return change.before === change.blob ? null : change
}

function parseCommit(text: string): Commit {
  const split = text.indexOf('\n\n')
  const head = split < 0 ? text : text.slice(0, split)
  const message = split < 0 ? '' : text.slice(split + 2).replace(/^ {4}/gm, '')
  const fields = head.split('\n').map((line) => [line.slice(0, line.indexOf(' ')), afterBlank(line)] as const)
  const field = (name: string) => fields.find(([key]) => key === name)?.[1] ?? ''
  const author = parseIdentity(field('author'))
  const committer = parseIdentity(field('committer'))
  const signed = fields.some(([key]) => key === 'gpgsig' || key === 'gpgsig-sha256')
  return {
    hash: field('commit'),
    parents: fields.flatMap(([key, value]) => (key === 'parent' ? [value] : [])),
    author: { name: author.name, email: author.email },
    authored: author.when,
    committed: committer.when,
    epoch: committer.epoch,
    subject: subjectOf(message),
    trailers: trailersOf(message),
    signature: signed ? 'not-checked' : 'none',
    signer: null,
  }
}

const afterBlank = (line: string): string => line.slice(line.indexOf(' ') + 1)

type Identity = {
  readonly name: string
  readonly email: string
  readonly when: string
  readonly epoch: number
}

/** `Name <email> 1772611920 +0100`. */
function parseIdentity(text: string): Identity {
  const [, name = '', email = '', seconds = '0', sign = '+', hours = '00', minutes = '00'] =
    /^(.*?) ?<(.*)> (-?\d+) ([+-])(\d\d)(\d\d)$/.exec(text) ?? []
  const offset = (sign === '-' ? -1 : 1) * (Number(hours) * 60 + Number(minutes))
  const epoch = withinCalendar(Number(seconds) * 1000)
  const local = new Date(withinCalendar(epoch + offset * 60_000)).toISOString().slice(0, 19)
  return { name, email, when: `${local}${offset === 0 ? '+' : sign}${hours}:${minutes}`, epoch }
}

/** A damaged commit can have any number there; what is no date at all counts as 1970. */
const withinCalendar = (epoch: number): number => (Math.abs(epoch) <= 8e15 ? epoch : 0)
