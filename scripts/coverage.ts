import { writeFileSync } from 'node:fs'
import { join } from 'node:path'
import {
  type CoverageRow,
  coverageOf,
  notShown,
  SHARES,
  type StoredCoverage,
  shareOf,
  verdictOf,
} from '../src/methods/coverage.ts'
import { loadCoverages, loadMethods } from '../src/methods/registry.ts'
import { prepareFormulas } from '../src/quantity/formula/index.ts'
import { complain, home, readArguments } from './command.ts'

const HELP = `npm run coverage -- [options]     in how many simulated runs the 95 % interval holds the truth

  --method ID       of one method only
  --runs N          simulated runs of each set-up (1000)
  --seed N          where the random numbers begin (1)
  --write           keep the figures for the handbook, in src/methods/<id>/coverage.json
  --help            this text
`

const line = (row: CoverageRow): string =>
  [
    `  ${row.measure.padEnd(28)}`,
    `${(100 * shareOf(row)).toFixed(1)} %`.padStart(8),
    `${row.inside} of ${row.runs}`.padStart(16),
    `  U ${row.U} ${row.unit}  `.padEnd(30),
    verdictOf(row) === 'within' ? '' : verdictOf(row),
  ]
    .join('')
    .trimEnd()

const whole = (text: string | undefined, otherwise: number): number => {
  const number = Number(text ?? otherwise)
  return Number.isInteger(number) && number > 0 ? number : Number.NaN
}

const main = async (): Promise<void> => {
  const text = { type: 'string' } as const
  const parsed = readArguments({ method: text, runs: text, seed: text, write: { type: 'boolean' } }, HELP)
  if (!parsed) return
  const { method: only, runs: runsText, seed: seedText, write } = parsed.values
  const [runs, seed] = [whole(runsText, 1000), whole(seedText, 1)]
  if (Number.isNaN(runs) || Number.isNaN(seed))
    return complain('--runs and --seed are whole numbers from 1 on.')
  await prepareFormulas()
  const [methods, coverages] = await Promise.all([loadMethods(), loadCoverages()])
  const ids = Object.keys(coverages).filter((id) => only === undefined || id === only)
  if (ids.length === 0) return complain(`--method ${only} is none of ${Object.keys(coverages).join(', ')}.`)
  let outside = 0
  for (const id of ids) {
    const [method, coverage] = [methods[id], coverages[id]]
    if (!method || !coverage) continue
    const rows = coverage.setups.flatMap((setup) => {
      process.stdout.write(`${id}: ${setup.title} (${setup.readings} readings)\n`)
      const own = coverageOf(method, setup, runs, seed)
      process.stdout.write(`${own.map(line).join('\n')}\n`)
      return own
    })
    outside += rows.filter((row) => verdictOf(row) === 'outside').length
    if (write) {
      const made = 'made by `npm run coverage -- --write`; do not edit'
      const path = join(home, 'src/methods', id, 'coverage.json')
      const stored: StoredCoverage = { made, runs, seed, rows, not: notShown(coverage) }
      writeFileSync(path, `${JSON.stringify(stored, null, 2)}\n`)
    }
  }
  const bounds = `${100 * SHARES.least} to ${100 * SHARES.most} %`
  process.stdout.write(
    outside === 0
      ? `All within ${bounds}, or beyond for a reason that the handbook states.\n`
      : `${outside} outside ${bounds}.\n`,
  )
  if (outside > 0) process.exitCode = 1
}

await main()
