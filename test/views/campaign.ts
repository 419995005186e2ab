/** The demonstration campaign of this repository, computed once for all tests of views. */
import { openCampaign } from '../../src/campaign/node/open.ts'
import { allViews } from '../../src/views/all.ts'
import { loadHandbook } from '../../src/views/handbook-load.ts'

export const demo = async () => {
  const [{ campaign }, handbook] = await Promise.all([
    openCampaign('.', 'test', '2026-04-20', { history: false }),
    loadHandbook(),
  ])
  return { campaign, handbook, views: allViews(campaign, handbook) }
}
