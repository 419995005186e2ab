/** The last step: files into their place, a branch, a commit a run. */
import type { Campaign } from '../../src/campaign/types.ts'
import type { Parcel, Placement } from '../../src/take/parcel.ts'
import {
  authorOf,
  beginBranch,
  branchName,
  branchState,
  commitFiles,
  notCommitted,
  type Repository,
  remoteOf,
  repositoryAt,
} from './branch.ts'
import { lookAt, removeAll, writeAll } from './on-disk.ts'
import type { Fitted } from './pictures.ts'
import { nextSteps, takenMessage } from './said.ts'

export type Outcome = { readonly taken: boolean; readonly lines: readonly string[] }

export type Ready = {
  readonly root: string
  readonly parcel: Parcel
  readonly campaign: Campaign
  readonly fitted: readonly Fitted[]
  /** Paths of all files of the records. */
  readonly exists: ReadonlySet<string>
  /** Name of what was handed in. */
  readonly from: string
}

export type PlaceOptions = { readonly branch: string | undefined; readonly commit: boolean }

const taken = (...lines: string[]): Outcome => ({ taken: true, lines })
const refused = (...lines: string[]): Outcome => ({ taken: false, lines })

const shown = ({ placement, note }: Fitted): string => `${placement.path}${note === '' ? '' : `   ${note}`}`

const commitRuns = ({ root, parcel, campaign, from }: Ready): Outcome => {
  const done = new Set<string>()
  const lines: string[] = []
  for (const { id, placements } of parcel.runs) {
    const own = placements.map(({ path }) => path).filter((path) => !done.has(path))
    const paths = notCommitted(root, own)
    if (paths.length === 0) continue
    for (const path of paths) done.add(path)
    const run = campaign.runs.find((each) => each.id === id)
    const author = authorOf(run?.record.by ?? [], campaign.records.people)
    const made = commitFiles(root, { paths, author, message: takenMessage(id, run, from) })
    if (!made.ok) {
      const call = `git add -- ${paths.join(' ')} && git commit --only -- ${paths.join(' ')}`
      const why = `The files lie in their place, and git made no commit of ${id}: ${made.why}`
      return refused(...lines, why, `Mend it, then: ${call}`)
    }
    lines.push(`Commit ${made.hash}, author ${author ? author.name : 'as git knows you'}.`)
  }
  return taken(...lines)
}

const onBranch = (ready: Ready, free: readonly Placement[], branch: string, on: string | null): Outcome => {
  const { root, campaign, fitted } = ready
  const state = branchState(
    root,
    branch,
    fitted.map(({ placement }) => placement),
  )
  if (state === 'no name') return refused(`${branch} is no name for a branch; name another with --branch.`)
  if (state === 'same') return taken(`The branch ${branch} holds exactly this already: nothing was done.`)
  if (state === 'other')
    return refused(`The branch ${branch} is there already, with other content; name another with --branch.`)
  const failed = writeAll(root, free)
  if (failed !== null) return refused(failed)
  const why = beginBranch(root, branch)
  if (why !== null) {
    removeAll(root, free)
    return refused(`Not taken: git made no branch ${branch}: ${why}`)
  }
  const { main, forge = '' } = campaign.records.settings
  const committed = commitRuns(ready)
  const lines = [...fitted.map(shown), `Branch ${branch}.`, ...committed.lines]
  if (!committed.taken) return refused(...lines)
  return taken(...lines, '', ...nextSteps({ branch, on, main, forge, remote: remoteOf(root) }))
}

const repositoryFor = (root: string, commit: boolean): Repository =>
  commit ? repositoryAt(root) : { is: 'none', why: '' }

/** Everything is checked by now; what lies in a place already is the same. */
export const place = (ready: Ready, options: PlaceOptions): Outcome => {
  const { root, parcel, fitted, exists } = ready
  const placements = fitted.map(({ placement }) => placement)
  const paths = placements.map(({ path }) => path)
  const { free } = lookAt(root, placements, exists)
  const repository = repositoryFor(root, options.commit)
  if (repository.is === 'busy') return refused(`Not taken: ${repository.why}`)
  if (free.length === 0 && (repository.is === 'none' || notCommitted(root, paths).length === 0))
    return taken(...paths, 'There already, with the same content: nothing was done.')
  if (repository.is === 'ready')
    return onBranch(ready, free, options.branch ?? branchName(parcel.runs), repository.on)
  const failed = writeAll(root, free)
  if (failed !== null) return refused(failed)
  const without =
    repository.why === '' ? [] : [`Without git there is no branch and no commit: ${repository.why}.`]
  return taken(...fitted.map(shown), ...without, '', ...nextSteps(null))
}
