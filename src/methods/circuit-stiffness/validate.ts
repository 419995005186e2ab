/** Checks that need columns and givens together. */
import type { Columns, Givens, Method } from '../method.ts'
import { cockpitLoaded, formOf, isKind, referredDimension, stationsOf } from './motion.ts'

type Faults = ReturnType<NonNullable<Method['validate']>>
type Fault = Faults[number]

export const validate = (columns: Columns, givens: Givens): Faults => {
  const { load, deflection } = columns
  if (!load || !deflection) return []
  const { numbers, dims } = givens
  const form = formOf(columns, givens)
  const faults: Fault[] = []
  if (form === null)
    faults.push({
      code: 'circuit-stiffness/arm-needed',
      message: isKind(load.dim, 'force')
        ? 'a force with an angle needs the arm from the load line to the pivot'
        : 'a moment with a length needs the arm from the load line to the pivot',
      why: 'a stiffness is moment per angle, or force per length; nothing else joins the two',
      hint: 'add `arm` with its uncertainty to the givens, as in `arm: 420 ± 1 mm`',
      given: 'arm',
    })
  if (columns.at_fixture && numbers.fixture_compliance !== undefined)
    faults.push({
      code: 'circuit-stiffness/fixture-twice',
      message: 'the fixture motion is given twice, as a column and as `fixture_compliance`',
      why: 'it would be taken off once or twice, and the circuit would look stiffer than it is',
      hint: 'keep the column `at_fixture`, which was measured in this run, and leave `fixture_compliance` out',
      given: 'fixture_compliance',
    })
  faults.push(...armFaults(columns, givens), ...stationFaults(columns, givens))
  for (const [name, kind] of [
    ['limit_load', 'moment'],
    ['full_travel', 'angle'],
  ] as const) {
    const dim = dims?.[name]
    const mixed = dim && numbers.arm === undefined && isKind(dim, kind) !== (form === 'angular')
    if (form !== null && mixed)
      faults.push({
        code: 'circuit-stiffness/kinds-mixed',
        message: `\`${name}\` is ${isKind(dim, kind) ? `given as ${kind}` : `not given as ${kind}`}, the readings are ${form === 'angular' ? 'moment and angle' : 'force and length'}`,
        why: 'without an arm the two cannot be compared',
        hint: `give \`${name}\` in the terms of the readings, or add \`arm\``,
        given: name,
      })
  }
  load.values.forEach((value, row) => {
    if (Number.isFinite(value) === Number.isFinite(deflection.values[row])) return
    faults.push({
      code: 'circuit-stiffness/half-a-reading',
      severity: 'warning',
      message: `row ${row + 1} has ${Number.isFinite(value) ? 'a load without a deflection' : 'a deflection without a load'} and is left out`,
      column: Number.isFinite(value) ? 'deflection' : 'load',
      row,
    })
  })
  return faults
}

/** A sine beyond 1 is no angle. */
export const armFaults = (columns: Columns, { numbers }: Givens): Fault[] => {
  const { deflection } = columns
  const { arm } = numbers
  if (!deflection || arm === undefined || !isKind(deflection.dim, 'length')) return []
  const row = deflection.values.findIndex((value) => Math.abs(value) >= arm)
  if (row < 0) return []
  return [
    {
      code: 'circuit-stiffness/beyond-arm',
      message: 'the deflection is as long as the arm: no angle belongs to it',
      hint: 'look at the units of `deflection` and `arm`; the deflection is read on the load line, at the arm',
      column: 'deflection',
      row,
    },
  ]
}

const stationFaults = (columns: Columns, givens: Givens): Fault[] => {
  const stations = stationsOf(givens)
  if (stations.length === 0) return []
  const form = formOf(columns, givens)
  const cockpit = cockpitLoaded(givens)
  if (cockpit && (givens.numbers.gearing === undefined || form === 'linear'))
    return [
      {
        code: 'circuit-stiffness/gearing-needed',
        message: 'stations with the cockpit loaded need the gearing, and moment and angle at the cockpit',
        why: 'the motion at the stations is given per motion of the surface; the gearing leads from it to the loaded end',
        hint: 'add `gearing` (surface angle per cockpit angle) and, where force and length were read, `arm`',
        given: 'gearing',
      },
    ]
  return stations.flatMap((name): Fault[] => {
    const column = columns[`at_${name}`]
    if (!column || form === null) return []
    const dim = referredDimension(column, givens.dims?.[`ratio_${name}`])
    const length = isKind(dim, 'length')
    // A length of the surface turns into an angle only where the arm is the surface's.
    const fits =
      form === 'linear'
        ? length
        : isKind(dim, 'angle') || (length && !cockpit && givens.numbers.arm !== undefined)
    if (fits) return []
    return [
      {
        code: 'circuit-stiffness/kinds-mixed',
        message: `\`at_${name}\` over \`ratio_${name}\` gives no motion of the surface in the terms of the readings`,
        why: 'the ratio is motion of the station per motion of the surface',
        hint:
          form === 'linear'
            ? 'read the station as a length, with a pure number as ratio'
            : 'give the ratio as length per angle (mm/deg) for a station read as a length',
        given: `ratio_${name}`,
      },
    ]
  })
}
