/**
 * Wrong files, each with one mistake, and where exactly the one problem must point. What is printed for each is
 * stored beside this file. Mistakes of the kind that hands make: common practice, no source, unless one is named.
 */
import { BASE, changed, RUN } from '../format/base.ts'

export type Case = {
  readonly name: string
  readonly files: Readonly<Record<string, string | null>>
  /** Code, file, line and column of the only problem; null: a good file without any. */
  readonly expect: {
    readonly code: string
    readonly file: string
    readonly line: number
    readonly column: number
  } | null
}

const CARD = 'shared/cards/spring-pull.md'
const PROOF = 'shared/cards/spring-proof.md'
const GAUGE = 'shared/instruments/fg-01.md'
const ITEM = 'records/items/horn-play.md'
const REWORK = 'records/rework/2026-03-05-horn.md'
const READINESS = 'records/readiness/2026-03-06-taxi.md'
const PEOPLE = 'shared/people.yaml'

const one = (
  path: string,
  name: string,
  from: string,
  to: string,
  code: string,
  line: number,
  column: number,
): Case => ({
  name,
  files: changed(path, from, to),
  expect: { code, file: path, line, column },
})

const run = (name: string, from: string, to: string, code: string, line: number, column: number) =>
  one(RUN, name, from, to, code, line, column)

const whole = (name: string, text: string, code: string, line: number, column: number): Case => ({
  name,
  files: { [RUN]: text, [REWORK]: null, [ITEM]: null, [READINESS]: null },
  expect: { code, file: RUN, line, column },
})

const good = (name: string, files: Record<string, string>): Case => ({ name, files, expect: null })

const TEXT = BASE[RUN] ?? ''
const TABLE = TEXT.slice(TEXT.indexOf('readings: |'), TEXT.indexOf('---\n##'))
const SECOND = TEXT.replace('fitted: [{id: pin, what: rigging pin}]\n', '')

/** A run whose given is the result of another. */
const linked = (clock: string, from: string) =>
  TEXT.replace('T09:12', `T${clock}`)
    .replace('fitted: [{id: pin, what: rigging pin}]\n', '')
    .replace(
      '{drift_error: 0.3 K (u)}',
      `{drift_error: 0.3 K (u), stiffness: {from: ${from}, measure: stiffness}}`,
    )
    .replace(
      'readings: |',
      'deviations: [{from: stiffness, what: stiffness from a run, why: invented}]\nreadings: |',
    )

export const CASES: readonly Case[] = [
  // The fence
  whole('file-empty', '', 'file/empty', 1, 1),
  whole('fence-language', TEXT.replace('---', '---js'), 'front-matter/fence', 1, 1),
  whole('fence-four-dashes', TEXT.replace('---', '----'), 'front-matter/fence', 1, 1),
  whole('fence-blank-line-first', `\n${TEXT}`, 'front-matter/missing', 1, 1),
  whole('fence-missing', TEXT.slice(4), 'front-matter/missing', 1, 1),
  whole('fence-not-closed', TEXT.replace('---\n## Observed\n', ''), 'front-matter/not-closed', 1, 1),
  whole(
    'fence-value-behind',
    TEXT.replace('---\n## Observed', '--- ## Observed'),
    'front-matter/fence',
    18,
    1,
  ),
  whole('front-matter-without-fields', '---\n---\nProse\n', 'yaml/no-fields', 2, 1),
  whole('not-utf-8', TEXT.replace('°', '\uFFFD'), 'file/encoding', 10, 27),
  good('good-bom-and-crlf', { [RUN]: `\uFEFF${TEXT.replaceAll('\n', '\r\n')}` }),
  good('good-tabs-in-table', { [RUN]: TEXT.replace('09:12  0     0.00', '09:12\t0\t0.00') }),
  good('good-clock-with-seconds', {
    [RUN]: TEXT.replace('hh:mm  N', 'hh:mm:ss  N').replace(/ (09:1\d) /g, ' $1:00 '),
  }),
  good('good-past-midnight', { [RUN]: TEXT.replace('09:13', '23:59').replace('09:14', '00:01') }),
  good('good-missing-value', { [RUN]: TEXT.replace('50.5  11.02', '-  n/a') }),
  good('good-listed-word', {
    [RUN]: TEXT.replace('50.5', 'OL').replace('readings: |', 'missing: [OL]\nreadings: |'),
  }),
  // YAML
  run('tab-in-indentation', 'by: [moduya]', 'by:\n\t- moduya', 'yaml/tab', 6, 1),
  run('tab-behind-colon', 'by: [moduya]', 'by:\t[moduya]', 'yaml/tab', 5, 4),
  run(
    'comment-behind-value',
    'card: spring-pull',
    'card: spring-pull #2',
    'yaml/comment-behind-value',
    2,
    19,
  ),
  run('comment-behind-list', '[moduya]', '[moduya]  # the builder', 'yaml/comment-behind-value', 5, 15),
  run('duplicate-key', 'by: [moduya]', 'by: [moduya]\ncard: spring-pull', 'yaml/duplicate-key', 6, 1),
  run('anchor', 'card: spring-pull', 'card: &c spring-pull', 'yaml/reference', 2, 7),
  run('merge-key', 'rig: {id: rig-03', 'rig: {<<: {a: b}, id: rig-03', 'yaml/reference', 9, 7),
  run('tag', 'card: spring-pull', 'card: !card spring-pull', 'yaml/tag', 2, 7),
  run('empty-value', 'witness: [rlind]', 'witness:', 'yaml/empty-value', 6, 1),
  run('empty-value-in-flow', '{id: rig-03,', '{id:,', 'yaml/empty-value', 9, 7),
  run('no-blank-after-colon', 'card: spring-pull', 'card:spring-pull', 'yaml/missing-blank', 2, 1),
  run(
    'no-blank-after-colon-in-flow',
    '{temperature: 12 °C,',
    '{temperature:12 °C,',
    'yaml/empty-value',
    10,
    11,
  ),
  run('bracket-not-closed', '[moduya]', '[moduya', 'yaml/not-closed', 5, 5),
  run('quote-not-closed', '"door shut"', '"door shut', 'yaml/not-closed', 10, 37),
  run('colon-in-text', 'card: spring-pull', 'card: spring-pull: left', 'yaml/colon', 2, 18),
  run('text-needs-quotes', 'witness: [rlind]', 'witness: @rlind', 'yaml/needs-quotes', 6, 10),
  run('readings-not-indented', '  09:13  50.5', '09:13  50.5', 'yaml/indentation', 16, 1),
  run('field-indented', 'witness:', ' witness:', 'yaml/indentation', 6, 2),
  run('readings-without-bar', 'readings: |', 'readings:', 'readings/no-table', 12, 1),
  one(
    CARD,
    'entry-became-fields',
    'every: 1 min',
    'every: 1 min\ncautions:\n  - stand clear\n  - note: the spring jumps',
    'yaml/entry-became-fields',
    21,
    5,
  ),
  // Fields
  run('field-misspelt', 'witness:', 'witnes:', 'field/unknown', 6, 1),
  run('field-misspelt-and-missing', 'card: spring-pull', 'crad: spring-pull', 'field/unknown', 2, 1),
  run('field-missing', 'by: [moduya]\n', '', 'field/missing', 1, 1),
  run('field-missing-inside', '{id: pin, what: rigging pin}', '{id: pin}', 'field/missing', 11, 10),
  run('text-instead-of-list', 'by: [moduya]', 'by: moduya', 'field/shape', 5, 5),
  run('list-instead-of-text', 'card: spring-pull', 'card: [spring-pull]', 'field/shape', 2, 7),
  run('name-with-capital', '{load: fg-01,', '{Load: fg-01,', 'field/name', 7, 15),
  one(ITEM, 'kind-misspelt', 'kind: discrepancy', 'kind: discrepency', 'field/choice', 3, 7),
  one(CARD, 'rule-misspelt', 'rule: guarded 95 %', 'rule: guarded 95', 'rule/syntax', 22, 11),
  one(CARD, 'rule-of-half', 'rule: guarded 95 %', 'rule: guarded 50 %', 'rule/syntax', 22, 11),
  // Time
  run('date-without-time', '2026-03-04T09:12+01:00', '2026-03-04', 'time/bare-date', 4, 7),
  run('time-without-offset', '2026-03-04T09:12+01:00', '2026-03-04T09:12', 'time/no-offset', 4, 7),
  run('day-impossible', '2026-03-04T09:12+01:00', '2025-13-45T09:12+01:00', 'time/impossible', 4, 7),
  run('day-not-leap', '2026-03-04T09:12+01:00', '2026-02-29T09:12+01:00', 'time/impossible', 4, 7),
  run('hour-impossible', '2026-03-04T09:12+01:00', '2026-03-04T25:12+01:00', 'time/impossible', 4, 18),
  run('offset-impossible', '2026-03-04T09:12+01:00', '2026-03-04T09:12+15:00', 'time/impossible', 4, 23),
  run('time-differs-from-name', '2026-03-04T09:12+01:00', '2026-03-04T10:12+01:00', 'run/name', 4, 7),
  // Quantities
  one(CARD, 'unit-missing', 'limit_load: 100 N', 'limit_load: 100', 'unit/missing', 15, 15),
  one(CARD, 'unit-unknown', '120.0 ± 0.5 mm', '120.0 ± 0.5 mmm', 'unit/unknown', 6, 32),
  one(CARD, 'mass-for-force', 'limit_load: 100 N', 'limit_load: 100 kg', 'unit/wrong-dimension', 15, 15),
  one(CARD, 'energy-for-moment', 'limit_load: 100 N', 'limit_load: 100 J', 'unit/meaning', 15, 15),
  {
    name: 'given-not-asked',
    files: changed(CARD, '[drift_error]', '[]'),
    expect: { code: 'given/not-asked', file: RUN, line: 8, column: 9 },
  },
  run('celsius-for-difference', '0.3 K (u)', '0.3 °C (u)', 'unit/meaning', 8, 22),
  one(CARD, 'plus-minus-without-number', '120.0 ± 0.5 mm', '120.0 ± mm', 'quantity/syntax', 6, 28),
  one(CARD, 'decimal-comma-in-quantity', '120.0 ± 0.5 mm', '120,0 ± 0.5 mm', 'quantity/decimal-comma', 6, 20),
  one(CARD, 'known-without-uncertainty', '120.0 ± 0.5 mm', '120.0 mm', 'given/no-uncertainty', 6, 20),
  one(CARD, 'range-out-of-method', '120.0 ± 0.5 mm', '-120.0 ± 0.5 mm', 'value/out-of-range', 6, 20),
  one(CARD, 'stop-of-other-kind', '{load: 120 N}', '{load: 120 kg}', 'unit/wrong-dimension', 10, 17),
  one(
    CARD,
    'instrument-range-of-other-kind',
    '0 N .. 200 N',
    '0 kg .. 200 kg',
    'unit/wrong-dimension',
    12,
    17,
  ),
  one(CARD, 'drift-not-per-time', '<= 1 N/h', '<= 1 N', 'unit/wrong-dimension', 12, 81),
  one(CARD, 'range-upside-down', '0 N .. 200 N', '200 N .. 0 N', 'quantity/range', 12, 17),
  one(GAUGE, 'accuracy-of-nothing', '0.2 % reading', '0.2 %', 'quantity/accuracy', 7, 14),
  one(GAUGE, 'correction-missing', '250      0.3', '250      -', 'instrument/corrections', 19, 7),
  // Readings
  run('decimal-comma', '11.02', '11,02', 'readings/decimal-comma', 16, 16),
  run('not-a-number', '11.02', 'fifty', 'readings/not-a-number', 16, 16),
  run('unit-in-cell', '11.02', '11.02mm', 'readings/not-a-number', 16, 16),
  run('row-too-short', '09:14  100   21.95       down', '09:14  100', 'readings/row-too-short', 17, 3),
  {
    name: 'row-too-long',
    files: changed(
      RUN,
      TABLE,
      'readings: |\n  load  deflection\n  N     mm\n  0     0.00\n  50.5  11.02  11.03\n',
    ),
    expect: { code: 'readings/row-too-long', file: RUN, line: 16, column: 16 },
  },
  run('names-and-units-differ', 'hh:mm  N     mm', 'hh:mm  lbf in     mm', 'readings/units-count', 14, 3),
  run('units-forgotten', '  hh:mm  N     mm          text    text\n', '', 'readings/no-units', 14, 3),
  run('unit-unknown-in-table', 'hh:mm  N     mm', 'hh:mm  Nn    mm', 'unit/unknown', 14, 10),
  run('column-of-other-kind', 'hh:mm  N     mm', 'hh:mm  kg    mm', 'unit/wrong-dimension', 14, 10),
  run('column-without-unit', 'hh:mm  N     mm', 'hh:mm  1     mm', 'unit/missing', 14, 10),
  run(
    'column-unknown',
    'time   load  deflection',
    'tme    load  deflection',
    'readings/unknown-column',
    13,
    3,
  ),
  run('column-missing', 'time   load  deflection', 'time   load  at_horn', 'readings/missing-column', 13, 3),
  run('column-twice', 'time   load', 'load   load', 'readings/double-column', 13, 10),
  run('column-choice', '21.95       down', '21.95       dwn', 'readings/choice', 17, 28),
  run('clock-backwards', '09:14', '09:11', 'readings/time-backwards', 17, 3),
  run('clock-impossible', '09:14', '09:61', 'readings/not-a-time', 17, 3),
  run(
    'required-column-all-missing',
    '09:12  0     0.00        up\n  09:13  50.5  11.02       up      a creak at 40 N\n  09:14  100   21.95',
    '09:12  0     -        up\n  09:14  100   -    ',
    'readings/all-missing',
    13,
    16,
  ),
  run(
    'table-without-rows',
    '  09:12  0     0.00        up\n  09:13  50.5  11.02       up      a creak at 40 N\n  09:14  100   21.95       down\n',
    '',
    'readings/no-rows',
    14,
    3,
  ),
  // References
  run('card-unknown', 'card: spring-pull', 'card: spring-pul', 'reference/unknown', 2, 7),
  run('card-is-a-gate', 'card: spring-pull', 'card: taxi', 'reference/unknown', 2, 7),
  run('article-missing', 'article: wing-left\n', '', 'run/article', 2, 7),
  run('article-not-served', 'article: wing-left', 'article: wing-lft', 'run/article', 3, 10),
  run('person-unknown', '[moduya]', '[mduya]', 'reference/unknown', 5, 6),
  run('instrument-unknown', 'load: fg-01', 'load: fg-1', 'reference/unknown', 7, 21),
  run('instrument-not-named', 'load: fg-01, ', '', 'instrument/missing', 13, 10),
  run('instrument-of-other-kind', 'load: fg-01', 'load: dg-02', 'unit/wrong-dimension', 7, 21),
  run(
    'instrument-without-column',
    'load: fg-01',
    'load: fg-01, temperature: fg-01',
    'instrument/unused',
    7,
    28,
  ),
  run('given-misspelt', 'drift_error', 'drft_error', 'given/unknown', 8, 9),
  run('given-not-measured', 'given: {drift_error: 0.3 K (u)}\n', '', 'given/missing', 1, 1),
  one(CARD, 'given-missing', '  loaded_end: surface\n', '', 'given/missing', 14, 1),
  one(CARD, 'given-choice', 'loaded_end: surface', 'loaded_end: surfce', 'given/choice', 16, 15),
  one(CARD, 'ask-unknown', '[drift_error]', '[drift_eror]', 'given/unknown', 17, 7),
  one(CARD, 'method-unknown', 'method: spring', 'method: sprig', 'reference/unknown', 3, 9),
  one(CARD, 'covers-unknown', 'covers: [spring]', 'covers: [sprng]', 'reference/unknown', 8, 10),
  one(CARD, 'owner-unknown', 'owner: moduya', 'owner: m.oduya', 'reference/unknown', 4, 8),
  one(PROOF, 'after-unknown', 'after: [spring-pull]', 'after: [spring-push]', 'reference/unknown', 8, 9),
  one(
    REWORK,
    'part-unknown',
    'changes: [wing-left/horn]',
    'changes: [wing-left/hron]',
    'reference/unknown',
    6,
    11,
  ),
  one(REWORK, 'removed-unknown', 'pull#pin', 'pull#pn', 'reference/unknown', 10, 12),
  one(REWORK, 'removed-without-what', 'pull#pin', 'pull', 'reference/removed', 10, 12),
  one(ITEM, 'about-unknown', 'wing-left/horn]', 'wing-left/hrn]', 'reference/unknown', 5, 38),
  one(ITEM, 'concession-incomplete', 'kind: discrepancy', 'kind: concession', 'item/concession', 3, 7),
  one(READINESS, 'gate-unknown', 'gate: taxi', 'gate: taxy', 'reference/unknown', 2, 7),
  one(PEOPLE, 'role-unknown', 'roles: [record]', 'roles: [recorder]', 'field/choice', 4, 11),
  {
    name: 'two-runs-of-one-id',
    files: {
      'records/runs/2026-04/2026-03-04-0912-spring-pull.md': SECOND.replace('09:12+01:00', '09:12+01:00'),
    },
    expect: {
      code: 'file/double-id',
      file: 'records/runs/2026-04/2026-03-04-0912-spring-pull.md',
      line: 1,
      column: 1,
    },
  },
  {
    name: 'name-with-capitals',
    files: {
      'shared/gates/First-Flight.md': '---\ntitle: First flight\norder: 3\ncards: [spring-pull]\n---\n',
    },
    expect: { code: 'file/place', file: 'shared/gates/First-Flight.md', line: 1, column: 1 },
  },
  {
    name: 'run-outside-month-folder',
    files: { 'records/runs/2026-03-07-0800-spring-pull.md': SECOND },
    expect: { code: 'file/place', file: 'records/runs/2026-03-07-0800-spring-pull.md', line: 1, column: 1 },
  },
  {
    name: 'runs-in-a-ring',
    files: {
      'records/runs/2026-03/2026-03-07-0800-spring-pull.md': linked(
        '08:00',
        '2026-03-07-0900-spring-pull',
      ).replace('2026-03-04T', '2026-03-07T'),
      'records/runs/2026-03/2026-03-07-0900-spring-pull.md': linked(
        '09:00',
        '2026-03-07-0800-spring-pull',
      ).replace('2026-03-04T', '2026-03-07T'),
    },
    expect: {
      code: 'reference/cycle',
      file: 'records/runs/2026-03/2026-03-07-0800-spring-pull.md',
      line: 8,
      column: 51,
    },
  },
  {
    name: 'gates-in-a-ring',
    files: changed('shared/gates/taxi.md', 'needs: []', 'needs: [taxi]'),
    expect: { code: 'reference/cycle', file: 'shared/gates/taxi.md', line: 7, column: 9 },
  },
  run('picture-not-there', '- Nothing.', '![The gauge](gauge.jpg)', 'file/not-there', 20, 14),
  run(
    'data-file-not-there',
    TABLE,
    'readings: {file: 2026-03-04-0912-spring-pull.csv}\n',
    'readings/file',
    12,
    18,
  ),
  run('data-file-of-other-name', TABLE, 'readings: {file: log.csv}\n', 'readings/file', 12, 18),
  {
    name: 'data-file-cell',
    files: {
      ...changed(RUN, TABLE, 'readings: {file: 2026-03-04-0912-spring-pull.csv}\n'),
      'records/runs/2026-03/2026-03-04-0912-spring-pull.csv':
        'time,load,deflection\nmin,N,mm\n0,0,0\n1,fifty,11\n',
    },
    expect: {
      code: 'readings/not-a-number',
      file: 'records/runs/2026-03/2026-03-04-0912-spring-pull.csv',
      line: 4,
      column: 3,
    },
  },
  {
    name: 'people-missing',
    files: { [PEOPLE]: null },
    expect: { code: 'file/not-there', file: PEOPLE, line: 1, column: 1 },
  },
  one(PEOPLE, 'person-field-misspelt', 'emails:', 'email:', 'field/unknown', 3, 3),
]
