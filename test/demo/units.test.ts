/**
 * A run read in US units and the same in SI give the same measures and the same verdict. The factors are written out
 * here from their definitions (NIST SP 811, appendix B), so that our table of units is not compared with itself.
 */
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { openCampaign } from '../../src/campaign/node/open.ts'
import type { Campaign, Run } from '../../src/campaign/types.ts'
import { standardUncertainty } from '../../src/quantity/quantity.ts'
import { campaign as asWritten, expected, root } from './harness.ts'

type Change = { readonly from: string; readonly to: string; readonly by: (value: number) => number }

const LBF = 4.4482216152605

/** Unit as it stands in the table → the same in the other system. */
const CHANGES: readonly Change[] = [
  { from: 'Pa', to: 'inH2O', by: (x) => x / 249.08891 },
  { from: 'hPa', to: 'inHg', by: (x) => (x * 100) / 3386.388640341 },
  { from: '°C', to: '°F', by: (x) => x * 1.8 + 32 },
  { from: 'min', to: 's', by: (x) => x * 60 },
  { from: 'N', to: 'lbf', by: (x) => x / LBF },
  { from: 'mm', to: 'in', by: (x) => x / 25.4 },
  { from: 'lbf', to: 'N', by: (x) => x * LBF },
  { from: 'g', to: 'lb', by: (x) => x / 453.59237 },
  { from: 'ft', to: 'm', by: (x) => x * 0.3048 },
  { from: 'in', to: 'mm', by: (x) => x * 25.4 },
]

const RUNS = [
  '2026-02/2026-02-19-0910-tank-leak-left',
  '2026-02/2026-02-24-1330-elevator-stiffness',
  '2026-03/2026-03-11-0915-aileron-stiffness-right',
  '2026-02/2026-02-25-1030-elevator-gust-load',
  '2026-02/2026-02-16-1000-tank-vent-flow-left',
  '2026-02/2026-02-26-1330-tank-structure-proof-left',
  '2026-03/2026-03-04-1400-elevator-balance',
  '2026-04/2026-04-02-1430-rudder-travel',
  '2026-04/2026-04-08-1330-static-line-leak',
]

/** The table of a run in the other units, with twelve figures so that nothing is lost in writing. */
const rewritten = (text: string): string => {
  const lines = text.split('\n')
  const start = lines.findIndex((line) => line.startsWith('readings: |'))
  const end = lines.findIndex((line, index) => index > start && !line.startsWith('  '))
  const units = (lines[start + 2] ?? '').trim().split(/\s+/)
  const changes = units.map((unit) => CHANGES.find((change) => change.from === unit))
  const table = lines.slice(start + 3, end).map((line) => {
    const cells = line.trim().split(/\s+/)
    const shown = cells.map((cell, column) => {
      const change = changes[column]
      return change && cell !== '-' ? change.by(Number(cell)).toPrecision(12) : cell
    })
    return `  ${shown.join('  ')}`
  })
  const head = `  ${units.map((unit, column) => changes[column]?.to ?? unit).join('  ')}`
  return [...lines.slice(0, start + 2), head, ...table, ...lines.slice(end)].join('\n')
}

const folder = mkdtempSync(join(tmpdir(), 'units-'))
let inOtherUnits: Campaign

const runIn = (campaign: Campaign, id: string): Run => {
  const run = campaign.runs.find((each) => each.id === id)
  if (!run) throw new Error(`no run ${id}`)
  return run
}

beforeAll(async () => {
  for (const name of ['records', 'shared']) cpSync(join(root, name), join(folder, name), { recursive: true })
  for (const run of RUNS) {
    const file = join(folder, 'records/runs', `${run}.md`)
    writeFileSync(file, rewritten(readFileSync(file, 'utf8')))
  }
  inOtherUnits = (await openCampaign(folder, 'test', expected.asOf)).campaign
})

afterAll(() => rmSync(folder, { recursive: true, force: true }))

describe.each(RUNS.map((run) => run.slice(8)))('%s', (id) => {
  it('has the same verdict', () => {
    const other = runIn(inOtherUnits, id)
    expect(other.record.readings.columns.map((column) => column.unit)).not.toEqual(
      runIn(asWritten, id).record.readings.columns.map((column) => column.unit),
    )
    expect(other.verdict).toBe(runIn(asWritten, id).verdict)
  })
  it('has the same measures and uncertainties', () => {
    const here = runIn(asWritten, id).computed?.measures ?? {}
    const there = runIn(inOtherUnits, id).computed?.measures ?? {}
    expect(Object.keys(there)).toEqual(Object.keys(here))
    expect(Object.keys(here).length).toBeGreaterThan(4)
    for (const [name, quantity] of Object.entries(here)) {
      const u = standardUncertainty(quantity) ?? 0
      const other = there[name]
      expect(Math.abs((other?.value ?? Number.NaN) - quantity.value), name).toBeLessThanOrEqual(
        1e-6 * (Math.abs(quantity.value) + u),
      )
      const ratio = other && u > 0 ? (standardUncertainty(other) ?? Number.NaN) / u : 1
      expect(Math.abs(ratio - 1), `u of ${name}`).toBeLessThan(1e-3)
    }
  })
})
