/** Arms that cannot be: none in a row, other ones at one point, a balance weight on the hinge. */
import type { Columns, Givens, Method } from '../method.ts'
import { at, select } from './select.ts'

type Finding = ReturnType<NonNullable<Method['validate']>>[number]

/** Beyond this the arm of a point was not measured again but the scale moved. */
const ONE_PLACE = 0.02

export const validate = (columns: Columns, givens: Givens): readonly Finding[] => {
  const findings: Finding[] = []
  for (const { name, rows } of select(columns).points) {
    const bare = rows.find((row) => Number.isNaN(at(columns, 'arm', row)))
    if (bare !== undefined)
      findings.push({
        code: 'mass-balance/no-arm',
        column: 'arm',
        row: bare,
        message: `row ${bare + 1} has a reading and no arm`,
        why: 'a load without its arm has no moment',
        hint: 'write the arm into every row, 0 for a scale under a hinge',
      })
    const first = at(columns, 'arm', rows[0] ?? -1)
    const moved = rows.find((row) => Math.abs(at(columns, 'arm', row) - first) > ONE_PLACE)
    if (moved !== undefined)
      findings.push({
        code: 'mass-balance/moved-point',
        column: 'arm',
        row: moved,
        message: `\`${name}\` has another arm here than in row ${(rows[0] ?? 0) + 1}`,
        why: 'rows of one name are repeats and are averaged, load and arm',
        hint: 'with the scale at another arm, write another run; two scales at once have two names',
      })
  }
  if (givens.numbers.balance_arm === 0)
    findings.push({
      code: 'mass-balance/balance-arm',
      given: 'balance_arm',
      message: 'a balance weight on the hinge line balances nothing',
      hint: 'give its arm from the hinge line, negative ahead of it',
    })
  return findings
}
