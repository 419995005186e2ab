/** The campaign as it would be after a rework that has not been made. */
import { makeSource } from '../format/source.ts'
import type { Records, ReworkRecord } from '../format/types.ts'
import { type CampaignInput, computeCampaign } from './compute.ts'
import type { Campaign } from './types.ts'

/** Id of the rework that is only thought of; no file can have it. */
export const IMAGINED = 'rework:imagined'

/** After everything that is recorded, whatever day that carries. */
const afterAll = (records: Records): number =>
  Math.max(
    0,
    ...[records.runs, records.reworks, records.readiness].flatMap((kind) =>
      Object.values(kind).map((record) => record.when.epoch),
    ),
  ) + 1

const imagined = ({ records, asOf }: CampaignInput, parts: readonly string[]): ReworkRecord => ({
  kind: 'rework',
  id: IMAGINED,
  source: makeSource('', '', { start: 0, text: '' }),
  body: '',
  title: `a rework of ${parts.join(', ')}`,
  when: { text: `${asOf}T23:59Z`, epoch: afterAll(records), date: asOf, clock: '23:59' },
  by: [],
  changes: parts,
  because: [],
  serials: {},
  unaffected: [],
  removed: [],
  files: [],
})

/** The whole campaign computed anew with one rework more, so that only what a real one would bring about is foretold. */
export const afterRework = (input: CampaignInput, parts: readonly string[]): Campaign => {
  const { records } = input
  const reworks = { ...records.reworks, [IMAGINED]: imagined(input, parts) }
  return computeCampaign({ ...input, records: { ...records, reworks } })
}
