/** Each measure that a criterion uses, over the rounds. */
import { list, section, text, viewOf } from './page.ts'
import type { Site } from './site.ts'
import { gainWords, trendPlot } from './trend-plot.ts'
import type { Block, View } from './view.ts'

export const trendsView = (site: Site): View => {
  const { campaign } = site
  const sections = campaign.cards.flatMap((state) => {
    const trends = campaign.trends.filter(
      (trend) => trend.card === state.id && trend.article === state.article && trend.points.length > 0,
    )
    if (trends.length === 0) return []
    const id = `${state.id}-${state.article.replaceAll('/', '-')}`
    const reworks =
      trends[0]?.reworks.map((rework) => [
        `Before round ${rework.beforeRound}: `,
        site.link(rework.id, rework.title),
      ]) ?? []
    return section(id, `${state.card.title}, ${state.article}`, [
      text(site.link(state.id, 'The card'), ', ', site.link(state.article, 'the article')),
      { is: 'plots', plots: trends.map((trend) => trendPlot(trend, site)) },
      ...list([...reworks, ...(trends.length === 1 && trends[0] ? gainWords(trends[0]) : [])]),
    ])
  })
  const blocks: Block[] = sections.length > 0 ? sections : [text('No run has given a result yet.')]
  return viewOf(site, {
    path: 'trends/',
    kind: 'trends',
    title: 'What did each rework gain?',
    description: 'Every judged measure over the rounds, with its uncertainty and limit.',
    blocks,
  })
}
