/** An invented repository in which everything happens to a record that history is there to tell. */
import { mkdirSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { printReviewsFile, REVIEWS_FILE } from '../../src/history/forge/file.ts'
import { digestOf } from '../../src/history/node/digest.ts'
import { BASE, card, rework, run } from '../campaign/small.ts'
import { makeRepository, type Repository } from '../history/repository.ts'

type Files = Readonly<Record<string, string>>

/** Noon of a day, in seconds. */
const at = (day: string): number => Date.parse(`${day}T12:00:00+01:00`) / 1000

/** The same card or run under another name. */
const named = (name: string, files: Files): Files =>
  Object.fromEntries(
    Object.entries(files).map(([path, text]) => [
      path.replaceAll('pull', name),
      text
        .replaceAll('card: pull', `card: ${name}`)
        .replace('Pull on', `${name[0]?.toUpperCase()}${name.slice(1)} on`),
    ]),
  )

const limit = (accept: string): Files => card({ criteria: `{reached: {accept: ${accept}, why: invented}}` })

export const pathOf = (day: string, name = 'pull'): string =>
  `records/runs/${day.slice(0, 7)}/${day}-0900-${name}.md`

const idOf = (path: string): string => path.slice(path.lastIndexOf('/') + 1).replace(/\.md$/, '')

/** A trailer by Cy for the content in HEAD. */
const approve = (repository: Repository, path: string, day: string): void => {
  const digest = digestOf(idOf(path), repository.git('rev-parse', `HEAD:${path}`), undefined)
  const body = `Reviewed-content: ${digest} ${idOf(path)}\nReviewed-by: Cy <cy@example.org>`
  repository.commit(`Approve ${idOf(path)}`, {}, { by: 'Cy', body, at: at(day) })
}

const readings = (first: string): string =>
  `|\n  time  load\n  s     N\n  0     0.0\n  10    ${first}\n  20    112.0\n  30    0.0`

const SETTINGS: Files = {
  'shared/campaign.yaml': (BASE['shared/campaign.yaml'] ?? '').replace(
    '[trailer]',
    '[forge, signed, trailer]',
  ),
  'shared/people.yaml': (BASE['shared/people.yaml'] ?? '').replace('name: Cy', 'name: Cy\n  login: cy-t'),
  'shared/gates/fly.md': (BASE['shared/gates/fly.md'] ?? '').replace('[pull]', '[pull, push, twist]'),
}

/** What CI would have written after asking the forge. */
const forgeApproval = (repository: Repository, path: string): void => {
  const commit = repository.git('rev-parse', 'HEAD')
  const file = join(repository.top, REVIEWS_FILE)
  writeFileSync(join(repository.top, '.git/info/exclude'), `${REVIEWS_FILE}\n`)
  mkdirSync(dirname(file), { recursive: true })
  const pull = {
    number: 7,
    commits: [commit],
    approvals: [{ login: 'cy-t', commit, when: '2026-03-12T09:30:00Z' }],
    files: { [path]: repository.git('rev-parse', `HEAD:${path}`) },
  }
  writeFileSync(file, printReviewsFile({ asked: [commit], pulls: [pull] }))
}

/**
 * The main line: a reviewed run; an amended and reviewed one; one changed silently; one voided after the fact; one
 * whose file is gone; a limit relaxed without and one with a review; a card written with its run; an approval on the
 * forge. The branch `next` has a proposed run, and one lies there that nobody committed.
 */
export const tellingRepository = (): Repository => {
  const repository = makeRepository()
  const commit = (subject: string, files: Files, day: string, by = 'Ann') =>
    repository.commit(subject, files, { by, at: at(day) })
  commit(
    'Begin',
    { ...BASE, ...SETTINGS, ...limit('peak_ratio >= 1.08'), ...named('push', card()) },
    '2026-01-15',
    'Cy',
  )

  repository.branch('reviewed')
  commit('Add the first pull', run('2026-03-01', 110), '2026-03-01')
  approve(repository, pathOf('2026-03-01'), '2026-03-02')
  repository.go('main')
  repository.merge('reviewed', 'Merge the first pull')

  commit('Add a pull', run('2026-03-03', 110, { readings: readings('101.0') }), '2026-03-03')
  const amendment =
    '[{when: 2026-03-05T10:00+01:00, by: ann, at: readings row 2 column load, was: 101.0, why: misread the scale}]'
  commit(
    'Amend it',
    run('2026-03-03', 110, { readings: readings('111.0'), amendments: amendment }),
    '2026-03-05',
  )
  approve(repository, pathOf('2026-03-03'), '2026-03-05')

  commit('Change the hook', rework('2026-03-06'), '2026-03-06')
  commit('Add a pull', run('2026-03-07', 95), '2026-03-07')
  commit('Tidy up', run('2026-03-07', 112, { witness: 'cy' }), '2026-03-08')

  commit('Add a pull', run('2026-03-09', 96), '2026-03-09')
  const withdrawn = { void: '{why: the rope slipped, by: ann, when: 2026-03-10T08:00+01:00}' }
  commit('Void it', run('2026-03-09', 96, withdrawn), '2026-03-10')

  commit('Add a pull', run('2026-03-10', 90), '2026-03-10')
  repository.commit(
    'Clean up',
    { [pathOf('2026-03-10')]: null },
    {
      by: 'Ann',
      at: at('2026-03-11'),
    },
  )

  commit('Add a push', named('push', run('2026-03-11', 104)), '2026-03-11')
  forgeApproval(repository, pathOf('2026-03-11', 'push'))
  commit('Ask for less', limit('peak_ratio >= 1'), '2026-03-13', 'Cy')
  const milder = named('push', card({ criteria: '{reached: {accept: peak_ratio >= 0.9, why: invented}}' }))
  commit('Ask for less of a push', milder, '2026-03-13', 'Cy')
  approve(repository, 'shared/cards/push.md', '2026-03-14')
  commit('Add a pull', run('2026-03-14', 112), '2026-03-14')
  approve(repository, pathOf('2026-03-14'), '2026-03-15')
  commit(
    'Write the card of the twist',
    { ...named('twist', card()), ...named('twist', run('2026-03-16')) },
    '2026-03-16',
  )

  repository.branch('next')
  commit('Add another pull', run('2026-03-18', 111), '2026-03-18')
  for (const [path, text] of Object.entries(run('2026-03-19', 112))) repository.write(path, text)
  return repository
}
