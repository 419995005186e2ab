import { appendFileSync, cpSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { computeCampaign } from '../src/campaign/compute.ts'
import { loadRecords } from '../src/format/node/load.ts'
import { FUNCTIONS } from '../src/functions/index.ts'
import { loadMethods } from '../src/methods/registry.ts'
import { prepareFormulas } from '../src/quantity/formula/index.ts'
import { home, tool } from './command.ts'

/** A run of the demo that a logger made; it is given so many samples instead of its own. */
const RUN = '2026-03/2026-03-03-0840-tank-leak-left'

const BLOCK = 10_000

/** A hold of three hours, sampled as fast as it takes, with a digit that flickers; written block by block. */
const writeLog = (file: string, samples: number): void => {
  writeFileSync(file, 'time,pressure,temperature,baro\ns,Pa,°C,hPa\n')
  for (let from = 0; from < samples; from += BLOCK) {
    let block = ''
    for (let row = from; row < Math.min(from + BLOCK, samples); row += 1) {
      const share = row / samples
      const pressure = -2650 + 45 * share + ((row * 7919) % 13) / 10 - 0.6
      block += `${(10_800 * share).toFixed(4)},${pressure.toFixed(1)},${(18.4 + 0.3 * share).toFixed(2)},1009.8\n`
    }
    appendFileSync(file, block)
  }
}

type Timed = <T>(name: string, work: () => T | Promise<T>) => Promise<T>

/** How long one run with so many samples takes to read, compute and draw, in a campaign of its own below `root`. */
export const benchSamples = async (root: string, samples: number, timed: Timed): Promise<void> => {
  cpSync(join(home, 'shared'), join(root, 'shared'), { recursive: true })
  mkdirSync(join(root, 'records/runs', RUN.slice(0, 7)), { recursive: true })
  const text = readFileSync(join(home, 'records/runs', `${RUN}.md`), 'utf8')
  writeFileSync(join(root, 'records/runs', `${RUN}.md`), text.replace(/^removed:.*\n/m, ''))
  writeLog(join(root, 'records/runs', `${RUN}.csv`), samples)
  const [methods] = await Promise.all([loadMethods(), prepareFormulas()])
  await timed('one log', async () => {
    const { records, problems } = await timed('read', () => loadRecords(root, methods))
    const campaign = await timed('compute', () =>
      computeCampaign({ records, problems, methods, functions: FUNCTIONS, asOf: '2026-04-15', tool }),
    )
    const [run] = campaign.runs
    await timed('figures', () => run?.computed?.figures)
    process.stdout.write(
      `${run?.record.readings.rows ?? 0} samples of ${run?.record.readings.columns.length ?? 0} columns: ${run?.verdict ?? 'no run'}\n`,
    )
  })
}
