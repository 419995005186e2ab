/** Which repository a folder lies in, and which of its commits is the newest of the main line. */
import type { UnknownHistory } from '../types.ts'
import { git } from './git.ts'
import { gitFailed, unknown } from './unknown.ts'

export type RepositoryPlace = {
  readonly state: 'found'
  /** Folder of the working tree. */
  readonly top: string
  /** From there to the root of the campaign, with a slash at the end, or nothing. */
  readonly prefix: string
  readonly head: string
  readonly mainTip: string
}

const QUESTIONS = [
  '--is-bare-repository',
  '--is-shallow-repository',
  '--is-inside-work-tree',
  '--show-prefix',
  '--show-toplevel',
]

/** The main line is HEAD where that is the branch `main`; else the forge's state of it; else the local one. */
export async function findPlace(root: string, main: string): Promise<RepositoryPlace | UnknownHistory> {
  const asked = await git(root, ['rev-parse', ...QUESTIONS])
  const [bare, shallow, inside, prefix = '', top = ''] = asked.out.toString('utf8').split('\n')
  if (bare === 'true' || inside === 'false') return unknown('bare')
  if (!asked.ok) return gitFailed(asked)
  if (shallow === 'true') return unknown('shallow')
  const [headAsked, refsAsked] = await Promise.all([
    git(root, ['rev-parse', '--verify', '--quiet', 'HEAD^{commit}']),
    git(root, ['for-each-ref', '--format=%(HEAD) %(objectname) %(refname)', local(main), remote(main)]),
  ])
  if (!headAsked.ok) return unknown('no-commit')
  if (!refsAsked.ok) return gitFailed(refsAsked)
  const head = headAsked.out.toString('utf8').trim()
  const mainTip = tipOf(refsAsked.out.toString('utf8'), main, head)
  return mainTip === undefined ? unknown('no-main', main) : { state: 'found', top, prefix, head, mainTip }
}

const local = (main: string) => `refs/heads/${main}`
const remote = (main: string) => `refs/remotes/origin/${main}`

function tipOf(listed: string, main: string, head: string): string | undefined {
  const refs = listed.split('\n').map((line) => {
    const [hash = '', name = ''] = line.slice(2).split(' ')
    return { here: line.startsWith('*'), hash, name }
  })
  const named = (name: string) => refs.find((ref) => ref.name === name)
  if (named(local(main))?.here) return head
  return (named(remote(main)) ?? named(local(main)))?.hash
}
