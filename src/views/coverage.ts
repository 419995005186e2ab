/** How often the interval that is shown held the truth in simulated runs of a method. */
import { type CoverageRow, SHARES, type StoredCoverage, shareOf, verdictOf } from '../methods/coverage.ts'
import { code, list, table, text } from './page.ts'
import { numberText, unitText } from './show.ts'
import type { Block, Rich } from './view.ts'
import { nameWords } from './words.ts'

const percent = (share: number): string => numberText(100 * share, 3)

const remarkOf = (row: CoverageRow): Rich => {
  const verdict = verdictOf(row)
  if (verdict === 'within') return []
  if (verdict === 'wide') return [`wide: ${row.wide}`]
  if (verdict === 'narrow') return [`a little narrow: ${row.narrow}`]
  return [{ is: 'strong', text: 'outside' }]
}

const rowOf = (row: CoverageRow): Rich[] => [
  [nameWords(row.measure)],
  [`${percent(shareOf(row))} %`],
  [row.unit === '1' ? numberText(row.U, 2) : `${numberText(row.U, 2)} ${unitText(row.unit)}`],
  remarkOf(row),
]

export const coverageBlocks = (stored: StoredCoverage | null): Block[] => {
  if (!stored) return []
  const { runs, seed, rows, not } = stored
  const setups = [...new Set(rows.map(({ setup }) => setup))]
  return [
    text(
      `In ${runs} simulated runs of each set-up the article, the knowns and the errors of the instruments were drawn as uncertain as they are stated. The share is that of runs whose 95 % interval, with the factor from the effective degrees of freedom, held the true value; ${percent(SHARES.least)} to ${percent(SHARES.most)} % is asked for. `,
      code('npm run coverage'),
      ` works it out anew (random numbers from ${seed}).`,
    ),
    ...setups.flatMap((setup) =>
      table(
        setup,
        ['measure', '#held the truth', '#mean U', 'remark'],
        rows.filter((row) => row.setup === setup).map(rowOf),
        { titled: true },
      ),
    ),
    ...list(Object.entries(not).map(([name, why]): Rich => [`${nameWords(name)}: ${why}.`])),
  ]
}
