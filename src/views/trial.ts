import { mkdirSync, writeFileSync } from 'node:fs'
import { openCampaign } from '../campaign/node/open.ts'
import { allViews } from './all.ts'
import { loadHandbook } from './handbook-load.ts'

const root = process.argv[2] ?? '.'
const t = performance.now()
const { campaign } = await openCampaign(root, '0.1.0', '2026-04-20')
console.log('campaign', performance.now() - t, campaign.runs.length, campaign.problems.length)
const hb = await loadHandbook()
const t2 = performance.now()
const views = allViews(campaign, hb)
console.log('views', views.length, performance.now() - t2)
mkdirSync('.cache', { recursive: true })
writeFileSync('.cache/views-f.json', JSON.stringify({ root, views }))
