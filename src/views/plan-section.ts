/** Planning on the page of a card: what to reach, what to expect, whether the instruments asked for can decide. */
import type { CardState, Target } from '../campaign/types.ts'
import { code, list, section, strong, table } from './page.ts'
import { type Gauges, gaugesOf, planColumn, planHead, planSentence } from './planning.ts'
import { sheetPath } from './sheet.ts'
import { numberText, targetText, unitText } from './show.ts'
import type { Site } from './site.ts'
import type { Block, Rich } from './view.ts'
import { nameWords } from './words.ts'

/** Values with their formulas worked out in numbers. */
const workedRows = (worked: Readonly<Record<string, Target>>): Rich[][] =>
  Object.entries(worked).map(([name, target]) => [
    [nameWords(name)],
    [strong(targetText(target))],
    [code(target.formula)],
    [target.worked],
  ])

const decidableRows = (state: CardState): Rich[][] =>
  state.decidable.map((each) => [
    [nameWords(each.criterion)],
    [each.verdict],
    each.U === null ? ['not known'] : [`${numberText(each.U, 2)} ${unitText(each.unit)}`],
    [each.text],
  ])

export const stepsOf = (state: CardState, gauges: Gauges): Block[] => {
  const steps = state.plan?.steps
  if (!steps) return []
  const heads = ['#step', ...steps.columns.map((column) => `#${planHead(column, gauges)}`)]
  const columns = steps.columns.map((_, at) => planColumn(steps, at, gauges))
  const rows = steps.rows.map((_, row): Rich[] => [
    [String(row + 1)],
    ...columns.map((texts): Rich => [texts[row] || 'not known']),
  ])
  return table(`Steps on ${state.article}`, heads, rows)
}

const HEADS = ['#value', 'formula', 'worked out']

export const planSection = (state: CardState, site: Site): Block[] => {
  const gauges = gaugesOf(state, site)
  const { article } = state
  const name = article.replaceAll('/', '-')
  return section(`planning-${name}`, 'Planning', [
    ...table(`Targets on ${article}`, ['target', ...HEADS], workedRows(state.targets)),
    ...table(`Expected on ${article}`, ['expected', ...HEADS], workedRows(state.expected)),
    ...list([
      ...(state.plan?.text ?? []).map((text) => planSentence(text, gauges, site)),
      [{ is: 'link', text: `Sheet to print for ${article}`, to: sheetPath(state) }],
    ]),
    ...stepsOf(state, gauges),
    ...section(
      `decide-${name}`,
      'Can the instruments asked for decide it?',
      table(
        `Expected at the limit on ${article}`,
        ['criterion', 'decides', '#U expected', 'in words'],
        decidableRows(state),
      ),
    ),
  ])
}
