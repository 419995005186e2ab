/** What `take` says and writes into the commit. */
import type { Run } from '../../src/campaign/types.ts'

const verdictOf = (run: Run): string =>
  run.verdict ?? (run.record.void ? `void, would be ${run.wouldBe}` : 'no verdict')

/** `2026-03-04-0912-tank-leak: pass (leak pass, drop undetermined)` */
export const runLine = (id: string, run: Run | undefined): string => {
  if (!run) return `${id}: cannot be judged yet.`
  const criteria = run.judgements.map((each) => `${each.criterion} ${each.verdict}`).join(', ')
  return `${id}: ${verdictOf(run)}${criteria === '' ? '' : ` (${criteria})`}`
}

export const takenMessage = (id: string, run: Run | undefined, from: string): string => {
  const by = run ? ` by ${run.record.by.join(', ')}` : ''
  const what = run ? `Card ${run.card.id} on ${run.article}${by}: ${verdictOf(run)}.` : 'It has errors still.'
  return `Take in run ${id}\n\n${what}\nHanded in as ${from}.\n`
}

type Made = {
  readonly branch: string
  /** Where HEAD was before; null: no branch. */
  readonly on: string | null
  readonly main: string
  readonly forge: string
  readonly remote: string | null
}

/** What remains to be done by hand. */
export const nextSteps = (made: Made | null): string[] => {
  if (made === null) return ['Next: npm run check, then commit the files.']
  const { branch, on, main, forge, remote } = made
  const onto =
    on !== null && on !== main
      ? [`The branch begins at ${on}, not at ${main}: what is only on ${on} goes along with it.`]
      : []
  const push = remote
    ? `  git push -u ${remote} ${branch}`
    : '  name a remote (git remote add origin <address>), then: git push -u origin <branch>'
  const open = `  open a pull request from ${branch} into ${main}${forge === '' ? '' : ` at ${forge}`}`
  const back = on === null ? [] : [`  git switch ${on}     to go back`]
  return [...onto, 'Next:', push, open, ...back]
}
