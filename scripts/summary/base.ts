/** Which commit a branch is compared with: where it left the base. */
import { nearest } from '../../src/quantity/nearest.ts'
import { git, gitLine } from '../git.ts'

export type Base = {
  /** Where HEAD and the base parted. */
  readonly commit: string
  /** The base as git knows it: `main`, `origin/main`. */
  readonly name: string
}

export const commitOf = (root: string, name: string): string | null =>
  gitLine(root, ['rev-parse', '--quiet', '--verify', '--end-of-options', `${name}^{commit}`])

const FETCH =
  ' This is a shallow clone. Fetch it whole: git fetch --unshallow; in a workflow, check out with fetch-depth: 0.'

const shallowWords = (root: string): string =>
  gitLine(root, ['rev-parse', '--is-shallow-repository']) === 'true' ? FETCH : ''

const REFS = ['refs/heads', 'refs/remotes', 'refs/tags']

const unknownBase = (root: string, name: string): string => {
  const listed = git(root, ['for-each-ref', '--format=%(refname:short)', ...REFS])
  const names = listed.ok ? listed.text.split('\n').filter((each) => each !== '') : []
  const close = nearest(name, names)
  const hint = close.length > 0 ? ` These are close: ${close.join(', ')}.` : ''
  const fetch = shallowWords(root) || ` Perhaps it is only on the forge: git fetch origin ${name}`
  return `There is no branch, tag or commit ${name} here.${hint}${fetch}`
}

const whyNoRepository = (root: string): string | null => {
  const asked = git(root, ['rev-parse', '--show-prefix'])
  if (asked.ok) return null
  return /not a git repository/.test(asked.why) ? 'There is no git repository here.' : `git: ${asked.why}`
}

/** A branch that is only known from the forge is found under its own name; a text says what is wrong and what to do. */
export const baseOf = (root: string, name: string): Base | string => {
  const missing = whyNoRepository(root)
  if (missing !== null) return missing
  if (commitOf(root, 'HEAD') === null) return 'Nothing has been committed here yet.'
  for (const each of [name, `origin/${name}`]) {
    const base = commitOf(root, each)
    if (base === null) continue
    const commit = gitLine(root, ['merge-base', 'HEAD', base])
    if (commit) return { commit, name: each }
    return `This branch and ${each} have no commit in common here.${shallowWords(root)}`
  }
  return unknownBase(root, name)
}
