/** What is wrong with the next commit. */
import type { Problem } from '../../src/problems/types.ts'
import { gitLine } from '../git.ts'
import { stagedPaths } from './staged.ts'

export type Found =
  | { readonly kind: 'nothing-staged' }
  | { readonly kind: 'cannot'; readonly why: string }
  | {
      readonly kind: 'checked'
      readonly problems: readonly Problem[]
      readonly textOf: (file: string) => string | undefined
    }

/** @param root holds `records/` and `shared/`; @param asOf `YYYY-MM-DD` */
export const stagedProblems = async (root: string, asOf: string, tool: string): Promise<Found> => {
  const cannot = (why: string): Found => ({ kind: 'cannot', why })
  if (gitLine(root, ['rev-parse', '--show-prefix']) === null)
    return cannot('There is no git repository here.')
  const staged = stagedPaths(root)
  if (typeof staged === 'string') return cannot(`git: ${staged}`)
  if (staged.changed.length + staged.removed.length === 0) return { kind: 'nothing-staged' }
  const { readStaged } = await import('./content.ts')
  const content = readStaged(root, staged)
  if (typeof content === 'string') return cannot(`git: ${content}`)
  const { checkStaged } = await import('./check.ts')
  return { kind: 'checked', ...(await checkStaged({ ...content, asOf, tool })) }
}
