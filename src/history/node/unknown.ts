/** Why nothing is known of the history, and how to get it, in a sentence each. */
import type { UnknownHistory } from '../types.ts'
import type { GitAnswer } from './git.ts'

const WORDS: Readonly<Record<UnknownHistory['why'], readonly [message: string, hint: string]>> = {
  'no-git': ['git is not installed here', 'install git, and run this again in a clone of the repository'],
  'old-git': ['git is too old to tell the history', 'install git 2.31 or later'],
  'not-a-repository': [
    'the folder lies in no git repository',
    'work in a clone of the repository, or begin one with `git init -b main`, `git add .`, `git commit`',
  ],
  'not-trusted': [
    'git does not trust the repository, since it belongs to another user',
    'say that it is safe: `git config --global --add safe.directory <folder>`',
  ],
  bare: [
    'this is a repository without working files',
    'make a clone of it with `git clone`, and run this there',
  ],
  shallow: [
    'this is a shallow clone: the older commits are not here',
    'fetch them with `git fetch --unshallow`; in a workflow, check out with `fetch-depth: 0`',
  ],
  'no-commit': ['nothing has been committed yet', 'commit the records with `git add .` and `git commit`'],
  'no-main': [
    'the main line is not here',
    'fetch it, or set `main` in shared/campaign.yaml to the name of the branch that holds what was agreed',
  ],
  'git-failed': [
    'git could not tell the history',
    'run `git status` and `git fsck` there to see what is wrong',
  ],
  'not-read': ['the history was not read', 'run this without the option that leaves it out'],
}

export const unknown = (why: UnknownHistory['why'], detail?: string): UnknownHistory => {
  const [message, hint] = WORDS[why]
  return { state: 'unknown', why, message: detail === undefined ? message : `${message} (${detail})`, hint }
}

export const gitFailed = (answer: Extract<GitAnswer, { ok: false }>): UnknownHistory => {
  if (answer.missing) return unknown('no-git')
  if (/dubious ownership|unsafe repository/.test(answer.why)) return unknown('not-trusted')
  if (/not a git repository|cannot change to/.test(answer.why)) return unknown('not-a-repository')
  if (/unrecognized argument|unknown option|unknown value/.test(answer.why)) return unknown('old-git')
  return unknown('git-failed', answer.why.replace(/^(fatal|error): /, ''))
}
