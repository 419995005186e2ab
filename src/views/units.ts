/** The units that may be written and what each is in SI. */
import { dimensionUnit, sameDimension } from '../quantity/dimension.ts'
import { KINDS } from '../quantity/kinds.ts'
import { UNITS, type UnitEntry } from '../quantity/units.ts'
import { code, joined, prose, section, table, viewOf } from './page.ts'
import { proseOf } from './prose.ts'
import { numberText } from './show.ts'
import type { Site } from './site.ts'
import type { Rich, View } from './view.ts'

const RULES = `Units are joined with \`·\`, \`*\` or a blank and divided with \`/\`: \`lbf·in/deg\`, \`cm^3/min\`, \`kg/m³\`, \`rad/(N·m)\`. In a table of
readings they are written without blanks. A difference of temperatures is written in \`K\` or \`delta degC\`; \`°C\` is a point on a scale.
A bare number where a unit is needed is an error.`

/** The kind of quantity that a unit is of; a unit of resistance, for one, is of none that the records know. */
const kindOf = (unit: UnitEntry) =>
  Object.entries(KINDS).find(([name, kind]) => name !== 'text' && sameDimension(kind.dim, unit.dim))?.[1]

const kindName = (unit: UnitEntry): string => kindOf(unit)?.name ?? 'other'

const factorText = (unit: UnitEntry): string => {
  const digits = numberText(unit.factor, 13)
    .replace(/(\.\d*?)0+(?=$|·)/, '$1')
    .replace(/\.(?=$|·)/, '')
  const si = kindOf(unit)?.unit ?? dimensionUnit(unit.dim)
  if (unit.offset === 0) return si === '1' ? digits : `${digits} ${si}`
  return `${digits} K per degree, zero at ${numberText(unit.offset, 7)} K`
}

const unitRow = (unit: UnitEntry): Rich[] => [
  joined(unit.names.map(code)),
  [unit.prefixes.join(' ')].filter((each) => each !== ''),
  [factorText(unit)],
]

export const unitsView = (site: Site): View => {
  const kinds = [...new Set(UNITS.map(kindName))]
  const sections = kinds.map((kind) => ({
    kind,
    rows: UNITS.filter((unit) => kindName(unit) === kind).map(unitRow),
  }))
  return viewOf(site, {
    path: 'handbook/units/',
    kind: 'units',
    title: 'Which units may be written?',
    description: 'Every unit and what it is in SI.',
    blocks: [
      ...prose(proseOf(RULES, '', site)),
      ...sections.flatMap(({ kind, rows }, index) =>
        section(
          `kind-${index + 1}`,
          kind[0]?.toUpperCase() + kind.slice(1),
          table(`Units of ${kind}`, ['written', 'prefixes', '#one is, in SI'], rows),
        ),
      ),
    ],
  })
}
