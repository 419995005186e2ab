/** The page of one method: what somebody wrote about it, its fields from the schema, and its check values computed anew. */
import type { CardField, ColumnField, Field, Given, MeasureField } from '../methods/method.ts'
import { KINDS } from '../quantity/kinds.ts'
import { checkRows } from './check-values.ts'
import { coverageBlocks } from './coverage.ts'
import { functionTable } from './formulas.ts'
import type { MethodEntry } from './handbook.ts'
import { cell, joined, lineBreak, list, prose, section, small, strong, table, viewOf } from './page.ts'
import { proseOf } from './prose.ts'
import type { Site } from './site.ts'
import type { Block, Rich, View } from './view.ts'

const kindWords = (field: Field): string =>
  [field.kind, ...(field.or ?? [])].map((kind) => KINDS[kind].name).join(' or ')

const meaning = (field: Field): Rich => [
  field.meaning,
  ...(field.source ? [lineBreak, small(field.source)] : []),
]

const nameCell = (field: Field): Rich => [
  { is: 'code', text: field.name },
  ...(field.symbol ? [' ', small(field.symbol)] : []),
]

const ROLES: Readonly<Record<Given['role'], string>> = {
  setpoint: 'setpoint, exact',
  known: 'known: needs ± or (exact)',
  choice: 'one of a list',
  words: 'in words',
}

const givenRow = (given: Given): Rich[] => [
  nameCell(given),
  meaning(given),
  [given.role === 'choice' ? (given.choices ?? []).join(', ') : kindWords(given)],
  [ROLES[given.role]],
  [given.required ? 'required' : given.default ? `else ${given.default}` : 'may be left out'],
]

const columnRow = (column: ColumnField): Rich[] => [
  nameCell(column),
  meaning(column),
  [column.kind === 'text' ? (column.choices ?? ['words']).join(', ') : kindWords(column)],
  [column.instrument === 'none' ? 'none' : column.instrument],
  [column.required ? 'required' : 'may be left out'],
]

const measureRow = (measure: MeasureField): Rich[] => [
  nameCell(measure),
  meaning(measure),
  [kindWords(measure)],
  [
    [measure.positive ? 'cannot be negative' : '', measure.exact ? 'exact count' : '']
      .filter((each) => each !== '')
      .join(', '),
  ].filter((each) => each !== ''),
]

const cardFieldRow = (field: CardField): Rich[] => [
  [{ is: 'code', text: field.name }],
  [field.meaning],
  [field.required ? 'required' : 'may be left out'],
]

const checkBlocks = (entry: MethodEntry): Block[] => {
  const rows = checkRows(entry.method, entry.checks)
  const sources = entry.checks.map(
    (check): Rich => [strong(check.title), ` (${check.origin}): ${check.source}`],
  )
  return rows.length > 0
    ? [
        ...table(
          'Expected against computed',
          ['case', 'measure', '#expected', '#computed', '#difference', '#may differ by', 'so'],
          rows,
        ),
        ...list(sources),
      ]
    : []
}

export const methodView = (entry: MethodEntry, site: Site): View => {
  const { method, handbook } = entry
  const { schema } = method
  const cards = Object.values(site.campaign.records.cards).filter((card) => card.method === method.id)
  const written = proseOf(
    handbook.replace(/^\s*# .*\n/, ''),
    `src/methods/${method.id}/handbook.md`,
    site,
    0,
    true,
  )
  const functions = Object.values(method.functions ?? {})
  const blocks: Block[] = [
    { is: 'answer', text: [method.question] },
    ...(method.cautions.length > 0
      ? [{ is: 'cautions', items: method.cautions.map(site.linked) } as const]
      : []),
    {
      is: 'title-block',
      label: 'Method',
      stamps: [],
      cells: [
        cell('Name on a card', method.id, 'half'),
        cell(
          'Cards here',
          cards.length > 0 ? joined(cards.map((card) => site.link(card.id, card.title))) : 'none yet',
          'half',
        ),
      ],
    },
    ...prose(written),
    ...section('fields', 'Fields', [
      ...table('Givens', ['name', 'meaning', 'quantity', 'role', 'needed'], schema.givens.map(givenRow), {
        titled: true,
      }),
      ...table(
        'Columns of readings',
        ['name', 'meaning', 'quantity', 'instrument', 'needed'],
        schema.columns.map(columnRow),
        { titled: true },
      ),
      ...table('Measures', ['name', 'meaning', 'quantity', 'remark'], schema.measures.map(measureRow), {
        titled: true,
      }),
      ...table(
        'Further fields of the card',
        ['name', 'meaning', 'needed'],
        schema.cardFields.map(cardFieldRow),
        { titled: true },
      ),
    ]),
    ...section('functions', 'Functions for formulas', functionTable(functions)),
    ...section('checks', 'Published against computed', checkBlocks(entry)),
    ...section('coverage', 'Does ± hold the truth?', coverageBlocks(entry.coverage)),
  ]
  return viewOf(site, {
    path: `handbook/methods/${method.id}/`,
    kind: 'method',
    title: method.title,
    description: method.question,
    blocks,
    files: written.files,
  })
}
