/** `look` as people call it, and that what it prints to paste reads the file. */
import { spawnSync } from 'node:child_process'
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { afterAll, describe, expect, it } from 'vitest'
import { readRecords } from '../../src/format/records.ts'
import { campaign, changed, RUN, SCHEMAS } from '../format/base.ts'
import { callWarm } from './warm.ts'

const home = resolve(import.meta.dirname, '../..')
const folder = mkdtempSync(join(tmpdir(), 'look-'))
afterAll(() => rmSync(folder, { recursive: true, force: true }))

const look = (name: string, content: string | Uint8Array, ...more: string[]) => {
  const file = join(folder, name)
  writeFileSync(file, content)
  const { status, stdout, stderr } = callWarm('look', [file, ...more], { ...process.env, NO_COLOR: '1' })
  return { status, out: stdout.replaceAll(`${folder}/`, ''), stderr }
}

const blockOf = (out: string) => out.slice(out.indexOf('readings:\n'))

const LOG = [
  'Datenlogger, erfunden',
  'Kanäle: 2',
  'Zeit;load [N];deflection;Status',
  ';N;mm;',
  ...Array.from({ length: 30 }, (_, row) => {
    const second = row < 20 ? row : row + 5
    return `04.03.2026 09:12:${String(second).padStart(2, '0')};${row * 4},5;${row === 7 ? 'OL' : `${row},25`};ok`
  }),
  '',
].join('\r\n')

describe('look', () => {
  it('says how a file is written, what it holds, and how to read it', () => {
    const { status, out, stderr } = look(
      '2026-03-04-0912-spring-pull.csv',
      Buffer.from(`\uFEFF${LOG}`, 'utf16le'),
    )
    expect(stderr).toBe('')
    expect(status).toBe(0)
    expect(out).toBe(`2026-03-04-0912-spring-pull.csv: UTF-16 LE, 30 rows
delimiter semicolon: it parts 32 of the first 34 lines into 4 cells
decimal sign ,: as in \`0,5\`
names on line 3
units on line 4
times of Zeit: DD.MM.YYYY HH:mm:ss
sampled every 1 s
1 gap; the longest, 6 s, ends on line 25

column  name        holds   unit  first                last                 lowest               highest              missing
1       Zeit        time          04.03.2026 09:12:00  04.03.2026 09:12:34  04.03.2026 09:12:00  04.03.2026 09:12:34
2       load [N]    number  N     0,5                  116,5                0,5                  116,5
3       deflection  number  mm    0,25                 29,25                0,25                 29,25                1
4       Status      words         ok                   ok

Paste into the run, and name the file after it:

readings:
  file: 2026-03-04-0912-spring-pull.csv
  columns:
    time: {from: Zeit, format: "DD.MM.YYYY HH:mm:ss"}
    load: {from: "load [N]", unit: N}
    deflection: {from: deflection, unit: mm}
    status: {from: Status, unit: text}
  decimal: ","
  delimiter: ";"
  skip: 2
  missing: ["OL"]
`)
  })

  it('prints front matter that reads the file', () => {
    const block = blockOf(look('2026-03-04-0912-spring-pull.csv', LOG).out).replace(/ {4}status.*\n/, '')
    const text = campaign().find((file) => file.path === RUN)?.text ?? ''
    const table = text.slice(text.indexOf('readings: |'), text.indexOf('---\n##'))
    const files = campaign({ ...changed(RUN, table, block), [RUN.replace(/md$/, 'csv')]: LOG })
    const { records, problems } = readRecords(files, SCHEMAS)
    expect(problems).toEqual([])
    const { rows, columns } = records.runs['2026-03-04-0912-spring-pull']?.readings ?? {
      rows: 0,
      columns: [],
    }
    expect([rows, ...columns.map(({ name }) => name)]).toEqual([30, 'time', 'load', 'deflection'])
    expect(columns[2]?.missing.reduce((sum, each) => sum + each, 0)).toBe(1)
  })

  it('takes the names of a card, by name and by unit, and says what is left', () => {
    const log = LOG.replace('load [N]', 'Temp.')
      .replace(';N;', ';°C;')
      .replace('deflection', 'P1')
      .replace(';mm;', ';Pa;')
    const { out, status } = look('leak.csv', log, '--card', 'tank-leak')
    expect(status).toBe(0)
    expect(blockOf(out)).toContain(`    time: {from: Zeit, format: "DD.MM.YYYY HH:mm:ss"}
    temperature: {from: Temp., unit: "°C"}
`)
    expect(out).toContain('Not used: P1, Status.')
  })

  it('asks where a file can be read in two ways, with status 1', () => {
    const log = ['Date;Load', 's;N', '03/04/2026 10:00:00;1,234', '03/05/2026 10:00:00;2,345', ''].join('\n')
    const { status, out } = look('doubt.csv', log)
    expect(status).toBe(1)
    expect(out).toContain('can be read as DD/MM/YYYY HH:mm:ss or as MM/DD/YYYY HH:mm:ss: say which')
    expect(out).toContain('doubt.csv:3:21  error  readings/ambiguous')
    expect(blockOf(out)).toContain('format: …')
    expect(blockOf(out)).toContain('decimal: …')
  })

  it('says what stands in the way of reading it', () => {
    const { status, out } = look('broken.csv', LOG.replace('09:12:03', '09:10:03'))
    expect(status).toBe(1)
    expect(out).toContain('broken.csv:8:1  error  readings/time-backwards')
  })

  it('complains about a wrong call, with status 2', () => {
    for (const args of [['--cards', 'x'], ['--card', 'tank-leek'], ['second.csv']]) {
      const { status, stderr } = look('x.csv', LOG, ...args)
      expect(status, args.join(' ')).toBe(2)
      expect(stderr).not.toMatch(/^\s+at /m)
    }
    const { status, stderr } = spawnSync(
      process.execPath,
      ['scripts/run.mjs', 'look', join(folder, 'none.csv')],
      {
        cwd: home,
        encoding: 'utf8',
      },
    )
    expect([status, stderr.includes('cannot be read (ENOENT)')]).toEqual([2, true])
  })
})
