/** What awaits a review, in words. */
import type { Campaign, ItemKind } from '../../src/campaign/types.ts'

/** Open items that a review closes; those of a run, and those of something that runs are judged by. */
const OF_A_RUN = new Set<ItemKind>(['not-reviewed', 'amendment-unreviewed', 'voided'])
const OF_OTHERS = new Set<ItemKind>(['limit-moved', 'limit-with-reading', 'off-gate', 'begins'])

const widest = (texts: readonly string[]): number => Math.max(0, ...texts.map((text) => text.length))

export const waitingText = (campaign: Campaign): string => {
  const ids = new Set(campaign.items.filter(({ kind }) => OF_A_RUN.has(kind)).flatMap(({ about }) => about))
  const runs = campaign.runs.filter((run) => ids.has(run.id))
  const others = campaign.items.filter(({ kind }) => OF_OTHERS.has(kind))
  const width = widest(runs.map(({ id }) => id))
  const runLines = runs.map((run) => {
    const { state } = run.provenance
    const where = state === 'uncommitted' ? ', not committed yet' : state === 'proposed' ? ', proposed' : ''
    const verdict = run.verdict ?? 'void'
    return `  ${run.id.padEnd(width)}  ${verdict.padEnd(12)}  recorded by ${run.record.by.join(', ')}${where}`
  })
  // Many runs may rest on one change: it is reviewed once.
  const otherLines = [...Map.groupBy(others, ({ closes }) => closes)].flatMap(
    ([closes, [first, ...more]]) => [
      `  ${first?.title}${more.length > 0 ? `, and ${more.length} more of this kind` : ''}`,
      `    closed by ${closes}`,
    ],
  )
  if (runLines.length + otherLines.length === 0) return 'Nothing awaits a review.\n'
  return [
    ...(runLines.length > 0 ? [`Runs that await a review: ${runLines.length}`, ...runLines] : []),
    ...(otherLines.length > 0 ? ['What they are judged by, changed and not reviewed', ...otherLines] : []),
    '',
  ].join('\n')
}
