/** Minutes of the meetings on gates, with the results that each decision rested on. */
import type { ReadinessRecord } from '../format/types.ts'
import { cell, code, joined, list, prose, section, table, text, viewOf } from './page.ts'
import { proseOf } from './prose.ts'
import type { Site } from './site.ts'
import type { Block, Rich, View } from './view.ts'
import { dateWords, momentWords, nameWords, plural, stamp } from './words.ts'

const gateTitle = (record: ReadinessRecord, site: Site): string =>
  site.campaign.records.gates[record.gate]?.title ?? record.gate

const decisionStamp = (record: ReadinessRecord) =>
  stamp(
    record.decision,
    record.decision === 'go' ? 'pass' : record.decision === 'no-go' ? 'fail' : 'undetermined',
  )

export const readinessListView = (site: Site): View => {
  const records = Object.values(site.campaign.records.readiness).sort((a, b) => b.when.epoch - a.when.epoch)
  const rows = records.map((record): Rich[] => [
    [site.link(record.id, dateWords(record.when.date))],
    [site.link(record.gate, gateTitle(record, site))],
    [decisionStamp(record)],
    joined(record.present.map(site.person)),
  ])
  const blocks = table('Readiness meetings', ['meeting', 'gate', 'decision', 'present'], rows)
  return viewOf(site, {
    path: 'readiness/',
    kind: 'readiness-list',
    title: 'What was decided at the readiness meetings?',
    description: `${plural(rows.length, 'meeting')}.`,
    blocks: blocks.length > 0 ? blocks : [text('No meeting was held yet.')],
  })
}

const basisRow = (entry: ReadinessRecord['basis'][number], site: Site): Rich[] => {
  const run = site.campaign.runs.find((each) => each.id === entry.run)
  const now = run?.judgements.find((judgement) => judgement.criterion === entry.criterion)?.verdict ?? 'gone'
  return [
    [site.link(entry.run)],
    [nameWords(entry.criterion)],
    [`${entry.value} ± ${entry.U}`],
    [entry.verdict],
    [now === entry.verdict ? now : { is: 'strong', text: now }],
    [
      ...(entry.commit ? [code(entry.commit.slice(0, 12))] : []),
      entry.tool ? ` version ${entry.tool}` : '',
    ].filter((each) => each !== ''),
  ]
}

export const basisTable = (record: ReadinessRecord, site: Site): Block[] =>
  table(
    'Basis, as it was read out and as it is now',
    ['run', 'criterion', '#value then', 'verdict then', 'verdict now', 'computed by'],
    record.basis.map((entry) => basisRow(entry, site)),
  )

export const readinessView = (record: ReadinessRecord, site: Site): View => {
  const written = proseOf(record.body, record.source.path, site)
  const open = new Set(site.campaign.items.map((item) => item.id))
  const conditions = record.conditions.map(
    (id): Rich => [site.link(id), open.has(id) ? ': open' : ': settled'],
  )
  const blocks: Block[] = [
    {
      is: 'title-block',
      label: 'Decision',
      stamps: [decisionStamp(record)],
      cells: [
        cell('Gate', [site.link(record.gate, gateTitle(record, site))]),
        cell('When', momentWords(record.when)),
        cell('Present', joined(record.present.map(site.person)), 'half'),
      ],
    },
    ...section('conditions', 'Conditions', list(conditions)),
    ...section('basis', 'What the decision rested on', basisTable(record, site)),
    ...section('minutes', 'Minutes', prose(written)),
  ]
  const title = `Readiness meeting on ${gateTitle(record, site)}, ${dateWords(record.when.date)}`
  return viewOf(site, {
    path: `readiness/${record.id}/`,
    kind: 'readiness',
    title,
    description: `${title}: ${record.decision}.`,
    blocks,
    files: written.files,
  })
}
