/**
 * What pages show of history, over a real repository in which all of it happened. What is expected follows from the
 * design of the records (`judging.md`, History) and from what the repository was made to hold.
 */
import { beforeAll, describe, expect, it } from 'vitest'
import { openCampaign } from '../../src/campaign/node/open.ts'
import type { Campaign } from '../../src/campaign/types.ts'
import { allViews } from '../../src/views/all.ts'
import type { Block, Table, View } from '../../src/views/view.ts'
import { campaignOfStory, review, type Story } from '../campaign/history/story.ts'
import { campaignOf, card, run } from '../campaign/small.ts'
import { temporaryFolder } from '../history/repository.ts'
import { tellingRepository } from './history-repository.ts'

/** The words of a piece of a page, as a reader meets them. */
const words = (value: unknown): string => {
  if (typeof value === 'string') return value
  if (Array.isArray(value)) return value.map(words).join('')
  if (typeof value !== 'object' || value === null) return ''
  if ('is' in value && value.is === 'break') return ' / '
  if ('is' in value && value.is === 'stamp' && 'word' in value) return `[${words(value.word)}]`
  return 'text' in value ? words(value.text) : ''
}

type Pages = readonly View[]

const blocksOf = (blocks: readonly Block[]): Block[] =>
  blocks.flatMap((block) => (block.is === 'section' ? [block, ...blocksOf(block.blocks)] : [block]))

const pageOf = (views: Pages, path: string): Block[] => {
  const view = views.find((each) => each.path === path)
  if (!view) throw new Error(`no page ${path}`)
  return blocksOf(view.data.blocks)
}

const runPage = (views: Pages, id: string): Block[] => pageOf(views, `runs/${id}/`)

const cellsOf = (blocks: readonly Block[]): Record<string, string> =>
  Object.fromEntries(
    blocks.flatMap((block) =>
      block.is === 'title-block' ? block.cells.map(({ label, value }) => [label, words(value)]) : [],
    ),
  )

const stampsOf = (blocks: readonly Block[]): string =>
  blocks.flatMap((block) => (block.is === 'title-block' ? [words(block.stamps)] : [])).join('')

const stripOf = (blocks: readonly Block[], title: string): string[] =>
  blocks.flatMap((block) => (block.is === 'strip' && block.title === title ? block.items.map(words) : []))

const changedOf = (blocks: readonly Block[]): string[] => stripOf(blocks, 'Changed after the test')

const tableOf = (blocks: readonly Block[], caption: string): string[][] => {
  const found = blocks
    .flatMap((block): Table[] => (block.is === 'table' ? [block.table] : []))
    .find((table) => table.caption === caption)
  return (found?.rows ?? []).map((row) => row.cells.map(words))
}

describe('a repository in which everything happened', () => {
  let campaign: Campaign
  let views: Pages
  let hash: (subject: string) => string
  beforeAll(async () => {
    const repository = tellingRepository()
    ;({ campaign } = await openCampaign(repository.top, 'test', '2026-04-01'))
    views = allViews(campaign)
    hash = (subject) =>
      repository.git('log', '--all', '--format=%H', '--fixed-strings', `--grep=${subject}`).slice(0, 12)
  }, 60_000)

  it('is read without a problem', () => {
    expect(campaign.problems).toEqual([])
  })

  it('a merged run says who recorded it, with which commit it landed, and that its review is a trailer only', () => {
    const cells = cellsOf(runPage(views, '2026-03-01-0900-pull'))
    expect(cells.Recorded).toBe(
      `1 March 2026, 12:00 +01:00 by Ann commit ${hash('Add the first pull')}, not signed`,
    )
    expect(cells.Landed).toMatch(
      new RegExp(`^2 March 2026, 13:00 \\+01:00 commit ${hash('Merge the first pull')}$`),
    )
    expect(cells.Reviewed).toMatch(/^Cy, 2 March 2026, 12:00 \+01:00: trailer only commit [0-9a-f]{12}$/)
    expect(cells.Card).toBe(`pull as landed 15 January 2026, 12:00 +01:00, commit ${hash('Begin')}`)
    expect(changedOf(runPage(views, '2026-03-14-0900-pull'))).toEqual(['nothing'])
  })

  it('an approval on the forge is called one, in the title block and as evidence of the gate', () => {
    expect(cellsOf(runPage(views, '2026-03-11-0900-push')).Reviewed).toMatch(
      /^Cy, 12 March 2026, 10:30 \+01:00: approval on the forge commit /,
    )
    const rows = tableOf(pageOf(views, 'gates/fly/'), 'Cards, serials, dates and signatures')
    expect(rows.find(([name]) => name === 'Push on the hook')?.slice(5)).toEqual([
      '11 March 2026, 12:00 +01:00',
      '11 March 2026, 12:00 +01:00',
      'Cy approval on the forge',
    ])
  })

  it('an amended change stands there with before and after, who, why, and reviewed', () => {
    expect(changedOf(runPage(views, '2026-03-03-0900-pull'))[0]).toBe(
      'readings row 2 column load was 101.0, is now 111.0; amended by Ann, 5 March 2026, 10:00 +01:00: misread the scale; reviewed',
    )
  })

  it('a silent change is told apart, and the worse verdict counts with the reason beside it', () => {
    const page = runPage(views, '2026-03-07-0900-pull')
    expect(stampsOf(page)).toContain('[fail][changed since]')
    expect(changedOf(page).slice(0, 2)).toEqual([
      'witness was bob, is now cy; without an amendment; not reviewed',
      'readings row 2 column load was 95.0, is now 112.0; without an amendment; not reviewed',
    ])
    expect(words(page.find((block) => block.is === 'answer'))).toContain('it counts as fail')
    const [row = []] = tableOf(page, 'The record as it landed and today')
    expect(row[1]).toContain('0.9500')
    expect(row[1]).toContain('[fail]')
    expect(row[2]).toContain('[pass]')
    expect(row[3]).toBe('[fail] / as it landed')
  })

  it('criteria of then stand beside those of today: both limits, both verdicts, which counts and why', () => {
    const page = runPage(views, '2026-03-01-0900-pull')
    const [row = []] = tableOf(page, 'Criteria as run and today')
    expect(row[0]).toBe('reached')
    expect(row[1]).toMatch(/^peak_ratio >= 1\.08 .* to be above 1\.08 .*\[pass\]$/)
    expect(row[2]).toMatch(/^peak_ratio >= 1 .* to be above 1 .*\[pass\]$/)
    expect(row.slice(3)).toEqual(['milder than then', '[pass] / today'])
    expect(page.flatMap((block) => (block.is === 'list' ? block.items.map(words) : []))).toContain(
      'Changed since the test, and not all of it is reviewed: shared/cards/pull.md. Until it is, the worse verdict counts.',
    )
    const reviewed = runPage(views, '2026-03-11-0900-push')
    expect(reviewed.flatMap((block) => (block.is === 'list' ? block.items.map(words) : []))).toContain(
      'Changed since the test, and reviewed: shared/cards/push.md. The criteria of today count.',
    )
    expect(tableOf(runPage(views, '2026-03-14-0900-pull'), 'Criteria as run and today')).toEqual([])
  })

  it('a limit that was written with the reading is said so', () => {
    const page = runPage(views, '2026-03-16-0900-twist')
    expect(changedOf(page).join()).toContain('was written together with the reading')
  })

  it('a void run says when it was withdrawn, and a run that is gone keeps its page', () => {
    expect(changedOf(runPage(views, '2026-03-09-0900-pull'))[0]).toBe(
      'Withdrawn by Ann, 10 March 2026, 08:00 +01:00, after it had landed: the rope slipped; not reviewed',
    )
    const gone = runPage(views, '2026-03-10-0900-pull')
    expect(stampsOf(gone)).toContain('[file gone]')
    expect(changedOf(gone)[0]).toBe(
      `The file was taken away by Ann, 11 March 2026, 12:00 +01:00, commit ${hash('Clean up')}. It is shown as it was last.`,
    )
    expect(tableOf(gone, 'Readings')).toHaveLength(4)
  })

  it('proposed and uncommitted runs are stamped with a word wherever they are listed', () => {
    for (const [id, word] of [
      ['2026-03-18-0900-pull', '[proposed]'],
      ['2026-03-19-0900-pull', '[not committed]'],
      ['2026-03-10-0900-pull', '[file gone]'],
    ] as const) {
      const shown = (path: string): string => (JSON.stringify(pageOf(views, path)).includes(id) ? path : '')
      expect(stampsOf(runPage(views, id))).toContain(word)
      expect(
        tableOf(pageOf(views, 'runs/'), 'Runs')
          .map((row) => row.join(' '))
          .filter((row) => row.includes(word)),
      ).toHaveLength(1)
      const log = pageOf(views, '').flatMap((block) => (block.is === 'log' ? block.days : []))
      expect(words(log.map((day) => day.entries))).toContain(word)
      expect(tableOf(pageOf(views, ''), 'Cards by round')[0]?.join()).toContain(word)
      expect(shown('cards/pull/')).not.toBe('')
    }
    const plot = pageOf(views, 'cards/pull/').flatMap((block) => (block.is === 'plots' ? block.plots : []))[0]
    expect(plot?.table.rows.map((row) => words(row.cells.at(-1)))).toEqual([
      'pass',
      'pass',
      'fail, changed since',
      'void',
      'fail, file gone',
      'pass',
      'pass, proposed',
      'pass, not committed',
    ])
    expect(plot?.series[0]?.hollow).toEqual([false, false, true, false, true, false, true, true])
  })

  it('the trend draws the limit of then as steps that end at the limit of today', () => {
    const plot = pageOf(views, 'cards/pull/').flatMap((block) => (block.is === 'plots' ? block.plots : []))[0]
    const steps = plot?.series.find((series) => series.name === 'limit as run')
    // Runs 1 to 5 were made under 1.08, runs 6 to 8 under 1.
    expect(steps?.points.map(([x, y]) => [x, Math.round(y * 100) / 100])).toEqual([
      ...[1, 2, 3, 4, 5].flatMap((n) => [
        [n - 0.5, 1.08],
        [n + 0.5, 1.08],
      ]),
      ...[6, 7, 8].flatMap((n) => [
        [n - 0.5, 1],
        [n + 0.5, 1],
      ]),
      [8.5, 1],
    ])
    expect(plot?.limits.map((limit) => limit.label)).toEqual(['limit today 1'])
    expect(plot?.alt).toContain('Limit as run, 1 March 2026 to 10 March 2026: 1.08')
    const straight = pageOf(views, 'cards/twist/').flatMap((block) =>
      block.is === 'plots' ? block.plots : [],
    )[0]
    expect(straight?.series).toHaveLength(1)
    expect(straight?.limits.map((limit) => limit.label)).toEqual(['limit 1'])
  })

  it('the history of the file names each commit, and what it changed', () => {
    const rows = (id: string) =>
      tableOf(runPage(views, id), 'History of the file, newest first').map((row) => [row[1], row[2], row[3]])
    expect(rows('2026-03-01-0900-pull')).toEqual([
      ['Ada', 'brought to the main line', 'Merge the first pull'],
      ['Ann', 'added', 'Add the first pull'],
    ])
    expect(rows('2026-03-03-0900-pull')).toEqual([
      ['Ann', 'changed: readings row 2 column load', 'Amend it'],
      ['Ann', 'added', 'Add a pull'],
    ])
    expect(rows('2026-03-10-0900-pull')[0]).toEqual(['Ann', 'taken away', 'Clean up'])
    expect(rows('2026-03-19-0900-pull')).toEqual([])
  })

  it('the card tells its limits over time, each with the runs that were made under it', () => {
    const rows = tableOf(pageOf(views, 'cards/pull/'), 'What it asked for, newest first')
    expect(rows.map((row) => [row[0], row[1], row[2], row[3]])).toEqual([
      ['13 March 2026, 12:00 +01:00', 'Cy', 'reached: peak_ratio >= 1 changed', 'not reviewed'],
      ['15 January 2026, 12:00 +01:00', 'Cy', 'reached: peak_ratio >= 1.08', 'not reviewed'],
    ])
    const dates = (text = '') => [...text.matchAll(/(\d+) March 2026/g)].map(([, day]) => Number(day))
    expect(rows.map((row) => dates(row[4]))).toEqual([
      [19, 18, 14],
      [10, 9, 7, 3, 1],
    ])
    const [now] = tableOf(pageOf(views, 'cards/push/'), 'What it asked for, newest first')
    expect(now?.[3]).toMatch(/^Cy, 14 March 2026, 12:00 \+01:00: trailer only /)
  })

  it('what awaits a review is listed once each, with who may give it', () => {
    const rows = tableOf(pageOf(views, 'items/'), 'What awaits a review')
    expect(rows.map((row) => row[0]?.replace(/ \/ .*/, '')).sort()).toEqual([
      '2026-03-07-0900-pull',
      '2026-03-09-0900-pull',
      '2026-03-16-0900-twist',
      '2026-03-18-0900-pull',
      '2026-03-19-0900-pull',
      'pull',
      'twist',
    ])
    expect(new Set(rows.map((row) => row[3]))).toEqual(new Set(['Cy']))
  })

  it('pages of runs still do not hang on the day of the build', () => {
    const later = new Map(allViews({ ...campaign, asOf: '2027-01-01' }).map((view) => [view.path, view.key]))
    expect(views.filter((view) => view.kind === 'run' && later.get(view.path) !== view.key)).toEqual([])
  })
})

describe('reviews are told apart', () => {
  const made = run('2026-03-01')
  const path = 'records/runs/2026-03/2026-03-01-0900-pull.md'
  const reviewed = (by: string, more: Partial<Story['steps'][number]> = {}) => {
    const steps = [
      { day: '2026-01-15' },
      { day: '2026-03-02', files: made },
      review('2026-03-03', by, { [path]: made[path] ?? '' }, more),
    ]
    return cellsOf(runPage(allViews(campaignOfStory({ steps })), '2026-03-01-0900-pull')).Reviewed
  }
  it('a good signature of the reviewer is a signed commit', () => {
    expect(reviewed('cy', { signature: 'good', signer: 'cy@example.org' })).toContain(': signed commit ')
  })
  it('one that does not count is named with its reason', () => {
    expect(reviewed('bob')).toBe(
      'not yet / the review by Bob (trailer only) does not count: without the role review',
    )
  })
})

describe('what awaits a review beside runs', () => {
  it('a gate that asks for less, under the name of the gate', () => {
    const gate = (cards: string) => ({
      'shared/gates/fly.md': `---\ntitle: Fly\norder: 1\ncards: ${cards}\n---\nInvented.\n`,
    })
    const steps = [
      { day: '2026-01-15', files: gate('[pull]') },
      { day: '2026-02-01', files: gate('[]') },
    ]
    const rows = tableOf(pageOf(allViews(campaignOfStory({ steps })), 'items/'), 'What awaits a review')
    expect(rows.map((row) => row[0])).toEqual(['fly'])
  })
})

describe('an earlier limit', () => {
  const limit = (accept: string) => card({ criteria: `{reached: {accept: ${accept}, why: invented}}` })
  it('that was reviewed while it was in force stays so; prose between changes no limit', () => {
    const first = limit('peak_ratio >= 1.2')
    const told = Object.fromEntries(
      Object.entries(first).map(([path, text]) => [path, text.replace('Invented.', 'Invented, at length.')]),
    )
    const steps = [
      { day: '2026-01-15', by: 'cy', files: first },
      review('2026-01-16', 'cy', first),
      { day: '2026-02-01', files: told },
      { day: '2026-02-10', files: limit('peak_ratio >= 1.1') },
    ]
    const views = allViews(
      campaignOfStory({ steps: [...steps, { day: '2026-02-20', files: run('2026-02-05') }] }),
    )
    const rows = tableOf(pageOf(views, 'cards/pull/'), 'What it asked for, newest first')
    expect(rows.map((row) => row[2])).toEqual([
      'reached: peak_ratio >= 1.1 changed',
      'reached: peak_ratio >= 1.2',
    ])
    expect(rows[0]?.[3]).toBe('not reviewed')
    expect(rows[1]?.[3]).toMatch(/^Cy, 16 January 2026, 12:00 \+01:00: trailer only/)
    // Made when only the prose had changed: under the first limit.
    expect(rows[1]?.[4]).toContain('5 February 2026')
  })
})

describe('where history is not known', () => {
  it('the front page says so once, with what to do, and runs claim nothing', async () => {
    const folder = temporaryFolder()
    const { cpSync } = await import('node:fs')
    for (const part of ['records', 'shared']) cpSync(part, `${folder}/${part}`, { recursive: true })
    const { campaign } = await openCampaign(folder, 'test', '2026-04-20')
    const views = allViews(campaign)
    const said = stripOf(pageOf(views, ''), 'History not known')
    expect(said[0]).toMatch(
      /^The folder lies in no git repository\. So nobody can say here who recorded a run/,
    )
    expect(said[1]).toContain('git init')
    const [first] = campaign.runs
    const page = runPage(views, first?.id ?? '')
    expect(cellsOf(page)['Recorded, landed, reviewed']).toBe('not known: the history is not at hand')
    expect(Object.keys(cellsOf(page))).not.toContain('Reviewed')
    expect(words(page.map((block) => ('items' in block ? block.items : '')))).not.toMatch(/\breviewed\b(?!:)/)
    expect(stampsOf(page)).not.toMatch(/proposed|committed|gone/)
  }, 60_000)
  it('nothing is said of it where nobody asked', () => {
    expect(stripOf(pageOf(allViews(campaignOf(run('2026-03-01'))), ''), 'History not known')).toEqual([])
  })
})
