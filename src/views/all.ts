/** Every page of the site as a view. Pure: Campaign and handbook in, plain objects out. */
import type { Campaign } from '../campaign/types.ts'
import { articlesView, articleView } from './articles.ts'
import { cardsView, cardView } from './cards.ts'
import { frontView } from './front.ts'
import { gatesView, gateView } from './gates.ts'
import { EMPTY_HANDBOOK, type Handbook, handbookViews } from './handbook.ts'
import { instrumentsView, instrumentView } from './instruments.ts'
import { itemsView, itemView } from './items.ts'
import { peopleView } from './people.ts'
import { readinessListView, readinessView } from './readiness.ts'
import { recordsView, recordView } from './record.ts'
import { gateReportView } from './report-gate.ts'
import { runReportView } from './report-run.ts'
import { reworksView, reworkView } from './rework.ts'
import { runView } from './run.ts'
import { runsViews } from './runs.ts'
import { sheetView } from './sheet.ts'
import { siteOf } from './site.ts'
import { trendsView } from './trends.ts'
import type { View } from './view.ts'

export const allViews = (campaign: Campaign, handbook: Handbook = EMPTY_HANDBOOK): View[] => {
  const site = siteOf(
    campaign,
    handbook.methods.map(({ method }) => method.id),
  )
  const { records } = campaign
  return [
    frontView(site),
    gatesView(site),
    ...campaign.gates.flatMap((gate) => [gateView(gate, site), gateReportView(gate, site)]),
    cardsView(site),
    ...Object.values(records.cards).map((card) => cardView(card, site)),
    ...campaign.cards.map((state) => sheetView(state, site)),
    recordsView(site),
    ...Object.values(records.cards).flatMap((card) => recordView(card, site)),
    articlesView(site),
    ...Object.values(records.articles).map((article) => articleView(article, site)),
    ...runsViews(site),
    // Side by side: they share their figures.
    ...campaign.runs.flatMap((run) => [runView(run, site), runReportView(run, site)]),
    trendsView(site),
    itemsView(site),
    ...Object.values(records.items).map((item) => itemView(item, site)),
    reworksView(site),
    ...campaign.reworks.map((rework) => reworkView(rework, site)),
    readinessListView(site),
    ...Object.values(records.readiness).map((record) => readinessView(record, site)),
    instrumentsView(site),
    ...Object.values(records.instruments).map((instrument) => instrumentView(instrument, site)),
    peopleView(site),
    ...handbookViews(handbook, site),
  ]
}
