/** What columns and givens must have between them before anything is computed. */
import type { Columns, Givens, Method } from '../method.ts'
import { at, stationsOf, suffixOf, targetOf } from './readings.ts'

type Finding = ReturnType<NonNullable<Method['validate']>>[number]

const ofTarget = (givens: Givens): Finding[] => {
  const { target, ...rest } = givens.numbers
  const computed = targetOf({ ...givens, numbers: rest })
  const stated = targetOf(givens)
  if (!(Math.abs(stated) > 0))
    return [
      {
        code: 'proof-pressure/no-target',
        given: 'target',
        message: 'There is no pressure to be reached',
        hint: 'give `target`, or `density`, `load_factor` and `column` (and `vent_pressure`) from which it follows',
      },
    ]
  if (target === undefined || !(Math.abs(target) < 0.99 * Math.abs(computed))) return []
  return [
    {
      code: 'proof-pressure/target-below-load',
      severity: 'warning',
      given: 'target',
      message: `The target is ${Math.round((100 * target) / computed)} % of what density, load factor, column and vent pressure come to`,
      why: 'a proof below the load that it stands for proves nothing of it',
      hint: 'let the target follow: `targets: {target: density * load_factor * g0 * column + vent_pressure}`',
    },
  ]
}

const ofColumns = (columns: Columns, givens: Givens): Finding[] => {
  const findings: Finding[] = []
  const { time, pressure } = columns
  const back = Array.from(time?.values ?? []).findIndex((t, row) => row > 0 && t < at(time, row - 1))
  if (back > 0)
    findings.push({
      code: 'proof-pressure/time-order',
      column: 'time',
      row: back,
      message: 'The time does not go on from the row before',
      why: 'the hold is counted along the clock',
      hint: 'keep the rows in the order they were read and mend the time; a clock that was set anew needs a new run',
    })
  const values = Array.from(pressure?.values ?? []).filter(Number.isFinite)
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length
  if (mean * targetOf(givens) < 0)
    findings.push({
      code: 'proof-pressure/other-side',
      column: 'pressure',
      message: 'The readings are on the other side of ambient than the target',
      why: 'the sign is part of the pressure: negative below ambient',
      hint: 'write the minus sign where the structure is under suction, in the readings and in the target',
    })
  const stations = new Set(stationsOf(Object.keys(columns)).map(suffixOf))
  const lone = Object.keys(columns).find(
    (name) => name.startsWith('base_') && !stations.has(name.replace('base_', '')),
  )
  if (lone)
    findings.push({
      code: 'proof-pressure/base-alone',
      column: lone,
      message: `\`${lone}\` belongs to no dial: there is no \`${lone.replace('base_', 'station_')}\``,
      hint: 'name the base after its dial',
    })
  return findings
}

export const validate = (columns: Columns, givens: Givens): readonly Finding[] => [
  ...ofTarget(givens),
  ...ofColumns(columns, givens),
]
