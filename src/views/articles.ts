/** The thing under test and its parts: what was tested on each, what was changed. */
import type { ArticleRecord } from '../format/types.ts'
import { openAbout } from './items.ts'
import { cell, list, prose, section, table, text, viewOf } from './page.ts'
import { proseOf } from './prose.ts'
import { reworkRows } from './rework.ts'
import { roundsSheet } from './rounds.ts'
import { runsTable } from './runs.ts'
import type { Site } from './site.ts'
import type { Block, Rich, View } from './view.ts'
import { dateWords, joinedStatus } from './words.ts'

/** `a/b` touches `a`, `a/b` and `a/b/c`. */
const touches = (a: string, b: string): boolean => a === b || a.startsWith(`${b}/`) || b.startsWith(`${a}/`)

const articlesTable = (articles: readonly ArticleRecord[], site: Site): Block[] =>
  table(
    'Articles',
    ['article', 'title', 'serial', 'cards'],
    articles.map((article): Rich[] => [
      [site.link(article.id)],
      [article.title],
      [article.serial ?? ''].filter((each) => each !== ''),
      joinedStatus(site.campaign.cards.filter((state) => state.article === article.id)),
    ]),
  )

export const articlesView = (site: Site): View => {
  const articles = Object.values(site.campaign.records.articles).sort((a, b) => (a.id < b.id ? -1 : 1))
  const rows = articlesTable(articles, site)
  return viewOf(site, {
    path: 'articles/',
    kind: 'articles',
    title: 'What is under test?',
    description: 'All articles and their parts.',
    blocks: rows.length > 0 ? rows : [text('No article is described yet.')],
  })
}

export const articleView = (article: ArticleRecord, site: Site): View => {
  const { campaign } = site
  const written = proseOf(article.body, article.source.path, site)
  const states = campaign.cards.filter(
    (state) => touches(state.article, article.id) && state.article.startsWith(article.id),
  )
  const below = Object.values(campaign.records.articles).filter((other) =>
    other.id.startsWith(`${article.id}/`),
  )
  const parent = article.id.includes('/') ? article.id.replace(/\/[^/]*$/, '') : null
  const reworks = campaign.reworks.filter((rework) =>
    rework.changes.some((part) => touches(part, article.id)),
  )
  const runs = campaign.runs.filter((run) => run.article === article.id).reverse()
  const parts = [
    ...article.parts.map((part): Rich => [part]),
    ...below.map((other): Rich => [site.link(other.id), `: ${other.title}`]),
  ]
  const blocks: Block[] = [
    {
      is: 'title-block',
      label: 'Article',
      stamps: [],
      cells: [
        cell('Article', article.id),
        cell('Serial', article.serial ?? 'none'),
        cell('Part of', parent ? [site.link(parent)] : site.title),
        cell(
          'Last changed',
          reworks.length > 0 ? dateWords(reworks.at(-1)?.when.date ?? '') : 'never, by these records',
        ),
      ],
    },
    ...section('cards', 'What is tested on it', roundsSheet(states, site)),
    ...section('items', 'What is open', openAbout([article.id, ...runs.map((run) => run.id)], site)),
    ...section(
      'rework',
      'What was changed',
      table('Rework', ['when', 'rework', 'parts', 'by', 'inspected by'], reworkRows(reworks, site)),
    ),
    ...section('runs', 'Runs', runsTable(runs, site)),
    ...section('parts', 'Parts', list(parts)),
    ...section('about', 'About it', prose(written)),
  ]
  return viewOf(site, {
    path: `articles/${article.id}/`,
    kind: 'article',
    title: article.title,
    description: `${article.title} (${article.id}): tests, rework and open items.`,
    blocks,
    files: written.files,
  })
}
