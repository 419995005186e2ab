/** What columns and givens must have between them before anything is computed. */
import type { Columns, Givens, Method } from '../method.ts'

type Finding = ReturnType<NonNullable<Method['validate']>>[number]

const ofGivens = ({ numbers }: Givens): Finding[] => {
  const rate = ['climb_rate', 'descent_rate'].find((name) => (numbers[name] ?? 0) > 0)
  const lacking = ['ullage', 'altitude'].filter((name) => numbers[name] === undefined)
  const [first] = lacking
  if (!rate || !first) return []
  return [
    {
      code: 'flow-resistance/requirement-incomplete',
      given: first,
      message: `\`${rate}\` is given, and \`${lacking.join('` and `')}\` is missing: what the vent must pass cannot be worked out`,
      why: 'the flow is the ullage times its expansion in the air of that altitude',
      hint: 'give `ullage` (the whole volume of the empty tank) and `altitude` (the highest of that climb or descent)',
    },
  ]
}

const ofRows = ({ flow, pressure_drop, direction }: Columns): Finding[] => {
  const findings: Finding[] = []
  const resolution = pressure_drop?.resolution ?? 0
  const rows = Array.from(flow?.values ?? [], (_, row) => row)
  const drop = (row: number) => pressure_drop?.values[row] ?? Number.NaN
  const highest = Math.max(0, ...rows.map((row) => Math.abs(drop(row)) || 0))
  const wrong = rows.find((row) => drop(row) < -Math.max(3 * resolution, 0.05 * highest))
  if (wrong !== undefined)
    findings.push({
      code: 'flow-resistance/drop-sign',
      column: 'pressure_drop',
      row: wrong,
      message: 'The drop is negative: it is counted positive both ways, along the flow',
      hint: 'write the drop without its sign and say the way under `direction`: in or out',
    })
  const unsaid = rows.find((row) => direction && !['in', 'out'].includes(direction.texts?.[row] ?? ''))
  if (unsaid !== undefined)
    findings.push({
      code: 'flow-resistance/direction-missing',
      column: 'direction',
      row: unsaid,
      message: 'This row does not say which way it flowed',
      why: 'in and out are fitted apart, and a row without a way belongs to neither',
      hint: 'write `in` (into the tank) or `out`, or leave the whole column out',
    })
  return findings
}

export const validate = (columns: Columns, givens: Givens): readonly Finding[] => [
  ...ofGivens(givens),
  ...ofRows(columns),
]
