/** What may stand in a formula, and every function with its source and an example. */
import type { FormulaFunction } from '../quantity/formula/types.ts'
import { KINDS } from '../quantity/kinds.ts'
import type { Handbook } from './handbook.ts'
import { code, lineBreak, prose, section, small, table, viewOf } from './page.ts'
import { proseOf } from './prose.ts'
import type { Site } from './site.ts'
import type { Block, Rich, View } from './view.ts'

const LANGUAGE = `Numbers with units (\`6 cm^3/min\`, \`2.5 kPa\`, \`95 %\`), names of givens and measures, \`+ - * / ^\`, comparisons
\`<\`, \`<=\`, \`>\`, \`>=\` (also \`a <= b <= c\`), \`and\`. Functions: \`abs min max sqrt exp log log10 sin cos tan asin acos atan atan2\`;
\`g0\` is 9.80665 m/s². Units are checked: adding or comparing different dimensions is an error that names both. Nothing else is
read: no assignment, no text, no lists.`

const kindWords = (kind: FormulaFunction['parameters'][number]['kind']): string =>
  kind === 'any' ? 'any' : KINDS[kind].name

const parameterWords = (parameter: FormulaFunction['parameters'][number]): string =>
  `${parameter.name}: ${parameter.meaning} (${parameter.words ? parameter.words.join(', ') : kindWords(parameter.kind)})`

const functionRow = (entry: FormulaFunction): { id: string; cells: Rich[] } => ({
  id: `function-${entry.name}`,
  cells: [
    [code(`${entry.name}(${entry.parameters.map((parameter) => parameter.name).join(', ')})`)],
    [
      entry.meaning,
      ...entry.parameters.flatMap((parameter): Rich => [lineBreak, small(parameterWords(parameter))]),
    ],
    [entry.result === 'same-as-first' ? 'as the first' : KINDS[entry.result].name],
    [code(entry.example.formula), ` = ${entry.example.value}`, lineBreak, small(entry.example.source)],
    [entry.source],
  ],
})

export const functionTable = (functions: readonly FormulaFunction[]): Block[] =>
  table('Functions', ['function', 'meaning', 'gives', 'example', 'source'], functions.map(functionRow))

export const formulasView = (handbook: Handbook, site: Site): View => {
  const methods = handbook.methods.flatMap(({ method }) => {
    const functions = Object.values(method.functions ?? {})
    return section(`of-${method.id}`, `Of the method ${method.title}`, functionTable(functions))
  })
  return viewOf(site, {
    path: 'handbook/formulas/',
    kind: 'formulas',
    title: 'What may a formula say?',
    description: 'The language of criteria, targets and derived values, and its functions.',
    blocks: [
      ...prose(proseOf(LANGUAGE, '', site)),
      ...section('general', 'For every card', functionTable(handbook.functions)),
      ...methods,
    ],
  })
}
