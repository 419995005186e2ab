/** Pictures and files that a record names must be there. */
import { makeProblem } from '../../problems/make.ts'
import { placeOf } from '../../problems/place.ts'
import type { Problem } from '../../problems/types.ts'
import { nearest } from '../../quantity/nearest.ts'
import type { Document } from '../document.ts'

const PICTURE = /!\[[^\]\n]*\]\(\s*<?([^)\s>]+)>?(?:\s+"[^"\n]*")?\s*\)/g
const CODE = /^(```|~~~)[\s\S]*?^\1|`[^`\n]+`/gm

/** Addresses of the pictures in prose and where each begins; what stands in code is no picture. */
export function picturesIn(body: string): { readonly name: string; readonly start: number }[] {
  const text = body.replace(CODE, (code) => ' '.repeat(code.length))
  return [...text.matchAll(PICTURE)].map((match) => {
    const name = match[1] ?? ''
    return { name, start: match.index + match[0].indexOf(name, match[0].indexOf('](')) }
  })
}

/** `exists` holds the paths of all files, relative to the root; addresses on the web are not looked at. */
export function pictureProblems(
  document: Document,
  files: readonly { readonly file: string }[],
  exists: ReadonlySet<string>,
): Problem[] {
  const { source, body, bodyStart } = document
  const problems: Problem[] = []
  const missing = (name: string) =>
    !/^[a-z][a-z0-9+.-]*:/i.test(name) && !exists.has(beside(source.path, decoded(name)))
  for (const [index, { file }] of files.entries()) {
    if (missing(file)) problems.push(gone(file, source.path, exists, source.locate(['files', index, 'file'])))
  }
  for (const { name, start } of picturesIn(body)) {
    if (!missing(name)) continue
    const from = bodyStart + start
    const at = placeOf(source.path, source.text, from, from + name.length, 'value')
    problems.push(gone(name, source.path, exists, at))
  }
  return problems
}

function gone(name: string, path: string, exists: ReadonlySet<string>, at: Problem['at']): Problem {
  const folder = path.slice(0, path.lastIndexOf('/') + 1)
  const around = [...exists]
    .filter((file) => file.startsWith(folder))
    .map((file) => file.slice(folder.length))
  const [near] = nearest(name, around)
  const hint = near
    ? `\`${near}\` is close`
    : 'paths count from the folder of this file; put the picture beside it'
  return makeProblem({ code: 'file/not-there', message: `there is no file \`${name}\``, at, hint })
}

/** A relative path, counted from the folder of a file, as a path from the root. */
function beside(path: string, name: string): string {
  const steps = name.startsWith('/') ? [] : path.split('/').slice(0, -1)
  for (const step of name.split('/')) {
    if (step === '..') steps.pop()
    else if (step !== '.' && step !== '') steps.push(step)
  }
  return steps.join('/')
}

function decoded(name: string): string {
  try {
    return decodeURI(name)
  } catch {
    return name
  }
}
