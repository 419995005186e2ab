/** The history of a file: its commits, newest first, with who, when, and what each changed. */
import type { FileCommit } from '../campaign/history/types.ts'
import type { Run } from '../campaign/types.ts'
import { shortCommit } from './history-title.ts'
import { code, joined, lineBreak, small, table } from './page.ts'
import type { Site } from './site.ts'
import type { Block, Rich } from './view.ts'
import { plural, SIGNATURE_WORDS } from './words.ts'

const MOST_FIELDS = 4

const changedWords = ({ did, path, changes }: FileCommit): Rich => {
  if (did === 'renamed') return ['renamed to ', code(path)]
  if (did === 'landed') return ['brought to the main line']
  if (did !== 'changed') return [did]
  if (changes === null) return ['changed, on its branch']
  if (changes.length === 0) return ['changed: prose, pictures or layout only']
  const shown = changes.slice(0, MOST_FIELDS).map(({ at }) => at)
  const more = changes.length - shown.length
  return [`changed: ${shown.join(', ')}${more > 0 ? ` and ${plural(more, 'more field')}` : ''}`]
}

export const commitsTable = ({ provenance }: Run, site: Site): Block[] =>
  table(
    'History of the file, newest first',
    ['when', 'who', 'what', 'message', 'commit'],
    [...(provenance.commits ?? [])]
      .reverse()
      .map((commit) => [
        [site.at(commit.when)],
        [site.person(commit.by)],
        changedWords(commit),
        [commit.subject],
        joined(
          [
            [shortCommit(commit.commit)],
            [small(commit.onMainLine ? 'on the main line' : 'on a branch')],
            ...(commit.signature === 'none' ? [] : [[small(SIGNATURE_WORDS[commit.signature])]]),
          ],
          lineBreak,
        ),
      ]),
    { titled: true },
  )
