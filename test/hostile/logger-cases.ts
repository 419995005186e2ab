/**
 * Wrong logger files, each with one mistake, and the one place where the problem must point: in the file, or in the
 * run where it says how to read it. Mistakes as loggers and exports make them: common practice, no source.
 */
import { BASE, changed, RUN } from '../format/base.ts'
import type { Case } from './cases.ts'

const FILE = '2026-03-04-0912-spring-pull.csv'
const DATA = RUN.replace(/[^/]*$/, FILE)
const TEXT = BASE[RUN] ?? ''
const TABLE = TEXT.slice(TEXT.indexOf('readings: |'), TEXT.indexOf('---\n##'))

const COLUMNS = [
  '    time: {from: Zeit, format: "DD.MM.YYYY HH:mm:ss"}',
  '    load: {from: Kraft, unit: N}',
  '    deflection: {from: Weg, unit: mm}',
]

const block = (more: readonly string[] = [], columns = COLUMNS) =>
  `${['readings:', `  file: ${FILE}`, '  columns:', ...columns, ...more].join('\n')}\n`

const GOOD = [
  'Logger 7, invented',
  'Zeit;Kraft;Weg',
  ';N;mm',
  '04.03.2026 09:12:00;0,5;0,00',
  '04.03.2026 09:12:01;50,5;11,02',
  '04.03.2026 09:12:02;100,0;21,95',
]

const files = (readings: string, lines: readonly string[]) => ({
  ...changed(RUN, TABLE, readings),
  [DATA]: `${lines.join('\r\n')}\r\n`,
})

/** What is wrong stands in the data file. */
const data = (
  name: string,
  lines: readonly string[],
  code: string,
  line: number,
  column: number,
  readings = block(),
): Case => ({
  name: `logger-${name}`,
  files: files(readings, lines),
  expect: { code: `readings/${code}`, file: DATA, line, column },
})

/** What is wrong stands in the run. */
const asked = (
  name: string,
  readings: string,
  code: string,
  line: number,
  column: number,
  lines: readonly string[] = GOOD,
): Case => ({
  name: `logger-${name}`,
  files: files(readings, lines),
  expect: { code, file: RUN, line, column },
})

const good = (name: string, lines: readonly string[], readings = block()): Case => ({
  name: `logger-${name}`,
  files: files(readings, lines),
  expect: null,
})

/** One line replaced, by its number. */
const at = (line: number, text: string) => GOOD.map((other, index) => (index + 1 === line ? text : other))

const withColumn = (from: string, to: string) => COLUMNS.map((line) => line.replace(from, to))

export const LOGGER_CASES: readonly Case[] = [
  good('good', GOOD),
  good(
    'good-all-said',
    GOOD,
    block(['  decimal: ","', '  delimiter: ";"', '  skip: 1', '  use: {from: 0 s, to: 2 s}']),
  ),
  good('trailing-delimiters', [...GOOD, ';;', '']),
  good('words-listed', at(5, '04.03.2026 09:12:01;OL;----'), block(['  missing: [OL, "----"]'])),
  good(
    'by-number',
    GOOD.slice(3),
    block(
      [],
      [
        '    time: {from: "1", format: "DD.MM.YYYY HH:mm:ss"}',
        '    load: {from: "2", unit: N}',
        '    deflection: {from: "3", unit: mm}',
      ],
    ),
  ),

  // The file as a whole
  data('empty', [''], 'no-table', 1, 1),
  data('workbook', ['PK\u0003\u0004\u0014\0\0\0'], 'not-text', 1, 1),
  data('binary', ['\0\0\u0001\0\0\0;\0\0\0'], 'not-text', 1, 1),

  // Two ways to read it
  data(
    'thousand-or-decimal',
    ['Zeit;Kraft;Weg', '04.03.2026 09:12:00;1,234;2,345', '04.03.2026 09:12:01;2,345;3,456'],
    'ambiguous',
    2,
    21,
  ),
  data('mixed-decimals', at(5, '04.03.2026 09:12:01;50.5;11,02'), 'ambiguous', 5, 21),
  data(
    'comma-parts-or-decimal',
    ['Zeit,Kraft', '0,5,1', '1,6,2'],
    'ambiguous',
    2,
    1,
    block(
      [],
      [
        '    time: {from: Zeit, unit: s}',
        '    load: {from: Kraft, unit: N}',
        '    deflection: {from: Kraft, unit: mm}',
      ],
    ),
  ),
  data('decimal-said-wrong', GOOD, 'decimal-comma', 4, 21, block(['  decimal: "."'])),
  data('thousands', at(6, "04.03.2026 09:12:02;1'100,0;21,95"), 'thousands', 6, 21),
  data('thousands-blank', at(6, '04.03.2026 09:12:02;1\u202f100,0;21,95'), 'thousands', 6, 21),

  // Cells
  data('word', at(5, '04.03.2026 09:12:01;OL;11,02'), 'not-a-number', 5, 21),
  data('empty-cell', at(5, '04.03.2026 09:12:01;;11,02'), 'empty-cell', 5, 21),
  data('overload', at(5, '04.03.2026 09:12:01;9,9E37;11,02'), 'overload', 5, 21),
  data('unit-in-cell', at(5, '04.03.2026 09:12:01;50,5 N;11,02'), 'not-a-number', 5, 21),
  data('zero-bytes', at(6, '04.03.2026 09:12:02;100,0;\0\0\0\0'), 'not-text', 6, 27),
  data('open-quote', at(5, '04.03.2026 09:12:01;"50,5;11,02'), 'quote', 5, 21),
  data('behind-quote', at(5, '04.03.2026 09:12:01;"50,5" N;11,02'), 'quote', 5, 28),

  // Lines
  data('row-short', at(6, '04.03.2026 09:12:02;100,0'), 'row-too-short', 6, 1),
  data('row-long', at(5, '04.03.2026 09:12:01;50,5;11,02;7'), 'row-too-long', 5, 32),
  data(
    'comma-for-two',
    ['Zeit,Kraft,Weg', '0,0.5,0.0', '1,50,5,11.02', '2,100.0,21.95'],
    'row-too-long',
    3,
    8,
    block(
      [],
      [
        '    time: {from: Zeit, unit: s}',
        '    load: {from: Kraft, unit: N}',
        '    deflection: {from: Weg, unit: mm}',
      ],
    ),
  ),
  data('names-again', [...GOOD, 'Zeit;Kraft;Weg', ...GOOD.slice(3)], 'names-again', 7, 1),
  data('end-of-log', [...GOOD, '*** end of log ***'], 'row-too-short', 7, 1),

  // Times
  data('clock-back', [...GOOD, '04.03.2026 09:11:59;100,0;21,95'], 'time-backwards', 7, 1),
  data('impossible-day', at(5, '31.02.2026 09:12:01;50,5;11,02'), 'not-a-time', 5, 1),
  data('spreadsheet-day', at(5, '46085,38334;50,5;11,02'), 'not-a-time', 5, 1),
  data(
    'month-first',
    GOOD.map((line) => line.replace('04.03.2026', '03/04/2026')),
    'not-a-time',
    4,
    1,
  ),
  data(
    'number-back',
    ['Zeit;Kraft;Weg', 's;N;mm', '0,0;0,5;0,00', '1,0;50,5;11,02', '0,0;100,0;21,95'],
    'time-backwards',
    5,
    1,
    block([], withColumn(', format: "DD.MM.YYYY HH:mm:ss"', '')),
  ),

  // What the run says
  asked('option-unknown', block(['  decimals: ","']), 'field/unknown', 18, 3),
  asked('delimiter-unknown', block(['  delimiter: ":"']), 'field/choice', 18, 15),
  asked('skip-word', block(['  skip: two']), 'field/number', 18, 9),
  asked('use-word', block(['  use: {from: start}']), 'readings/use', 18, 15),
  asked('use-nothing', block(['  use: {from: 1 h}']), 'readings/use', 18, 8),
  asked(
    'use-clock-of-counter',
    block(['  use: {from: "10:00"}'], withColumn(', format: "DD.MM.YYYY HH:mm:ss"', ', unit: s')),
    'readings/use',
    18,
    16,
    ['Zeit;Kraft;Weg', 's;N;mm', '0,0;0,5;0,00', '1,0;50,5;11,02'],
  ),
  asked('from-misspelt', block([], withColumn('Kraft', 'Krafft')), 'readings/file-column', 16, 18),
  asked(
    'from-twice',
    block(),
    'readings/file-column',
    17,
    24,
    at(2, 'Zeit;Weg;Weg;Kraft').slice(0, 3).concat(['04.03.2026 09:12:00;0,5;0,00;1,5']),
  ),
  asked('from-beyond', block([], withColumn('Kraft', '"9"')), 'readings/file-column', 16, 19),
  asked('skip-beyond-names', block(['  skip: 3']), 'readings/file-column', 18, 9),
  asked(
    'unit-unsaid',
    block([], withColumn('from: Kraft, unit: N', 'from: Kraft')),
    'readings/column-unit',
    16,
    5,
    GOOD.filter((_, index) => index !== 2),
  ),
  asked('unit-differs', block([], withColumn('unit: N', 'unit: lbf')), 'readings/unit-differs', 16, 31),
  asked('unit-unknown', block([], withColumn('unit: N', 'unit: Newtons')), 'unit/unknown', 16, 31),
  asked(
    'unit-of-other-kind',
    block([], withColumn('from: Weg, unit: mm', 'from: Weg, unit: kPa')),
    'unit/wrong-dimension',
    17,
    35,
    at(3, ';N;kPa'),
  ),
  asked(
    'format-lower-case',
    block([], withColumn('DD.MM.YYYY', 'dd.MM.yyyy')),
    'readings/time-format',
    15,
    33,
  ),
  asked(
    'format-and-unit',
    block([], withColumn('format: "DD.MM.YYYY HH:mm:ss"', 'format: ISO, unit: s')),
    'readings/time-format',
    15,
    43,
  ),
  asked('scale-zero', block([], withColumn('unit: N', 'unit: N, scale: 0')), 'field/number', 16, 41),
  asked(
    'offset-of-other-kind',
    block([], withColumn('unit: N', 'unit: N, offset: 2 mm')),
    'unit/wrong-dimension',
    16,
    42,
  ),
  asked(
    'offset-uncertain',
    block([], withColumn('unit: N', 'unit: N, offset: 2 N ± 0.1 N')),
    'quantity/uncertainty',
    16,
    42,
  ),
  asked('column-unknown', block([], withColumn('load:', 'loads:')), 'readings/unknown-column', 16, 5),
  asked('file-of-other-ending', block().replace('.csv', '.xlsx'), 'readings/file', 13, 9),
  asked('only-names', block(), 'readings/no-rows', 14, 3, GOOD.slice(0, 3)),
]
