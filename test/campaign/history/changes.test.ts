/** Two states of a run, field by field. Expected addresses follow from the grammar in the design of the records. */
import { describe, expect, it } from 'vitest'
import { changesOf, idleAmendments, withAmendments } from '../../../src/campaign/history/changes.ts'
import type { RunText } from '../../../src/campaign/history/run-text.ts'

const PATH = 'records/runs/2026-03/2026-03-04-0912-leak.md'

const HEAD = `card: leak
when: 2026-03-04T09:12+01:00
by: [ann]
witness: bob
instruments: {pressure: pg-07, baro: ba-01}
given:
  volume: 96.2 ± 0.6 L
fitted: [{id: vent-plug, what: plug in the tip vent}]
deviations:
  - {from: step 4, what: soak shortened, why: late}
readings: |
  time  pressure  baro    remark
  min   Pa        hPa     text
  0     -2653     1009.8
  5     -2651     1009.8  door opened
  10    -2648     1009.9
  190   -2604     1010.1`

const state = (head = HEAD, body = 'Prose.'): RunText => ({
  path: PATH,
  text: `---\n${head}\n---\n${body}\n`,
})
const changes = (head: string) => changesOf(state(), state(head))
const put = (from: string, to: string) => {
  expect(HEAD).toContain(from)
  return changes(HEAD.replace(from, to))
}

describe('no change', () => {
  it.each([
    ['quotes', 'card: leak', 'card: "leak"'],
    ['a list on lines of its own', 'by: [ann]', 'by:\n  - ann'],
    ['a given in braces', 'given:\n  volume: 96.2 ± 0.6 L', 'given: {volume: 96.2 ± 0.6 L}'],
    ['more blanks in a row', '5     -2651     1009.8  door', '5 -2651 1009.8 door'],
    ['a blank line', 'witness: bob', '\nwitness: bob'],
    ['pictures', 'card: leak', 'files: [{file: a.jpg, caption: gauge}]\ncard: leak'],
    ['an amendment', 'card: leak', 'amendments: []\ncard: leak'],
    ['voiding it', 'card: leak', 'void: {why: x, by: ann, when: 2026-03-05T09:00Z}\ncard: leak'],
  ])('%s', (_, from, to) => {
    expect(put(from, to)).toEqual([])
  })
  it('line ends, a byte order mark, order of fields, prose', () => {
    const reordered = HEAD.replace('card: leak\n', '').replace('readings: |', 'card: leak\nreadings: |')
    const now = state(reordered, 'Other prose.')
    expect(changesOf(state(), { ...now, text: `\uFEFF${now.text.replaceAll('\n', '\r\n')}` })).toEqual([])
  })
  it('order of columns', () => {
    const old = state('readings: |\n  time load\n  s N\n  0 1\n  5 2')
    expect(changesOf(old, state('readings: |\n  load time\n  N s\n  1 0\n  2 5'))).toEqual([])
  })
})

describe('a field', () => {
  it.each([
    ['changed', 'witness: bob', 'witness: cy', 'witness', 'bob', 'cy'],
    ['within a field', 'pg-07', 'pg-08', 'instruments pressure', 'pg-07', 'pg-08'],
    ['a given', '96.2', '96.4', 'given volume', '96.2 ± 0.6 L', '96.4 ± 0.6 L'],
    ['with digits alone', '96.2 ±', '96.20 ±', 'given volume', '96.2 ± 0.6 L', '96.20 ± 0.6 L'],
    ['a list of names', '[ann]', '[ann, bob]', 'by', 'ann', 'ann, bob'],
    [
      'an entry by its id',
      'plug in',
      'cap on',
      'fitted vent-plug what',
      'plug in the tip vent',
      'cap on the tip vent',
    ],
    ['an entry by its number', 'why: late', 'why: cold', 'deviations 1 why', 'late', 'cold'],
    ['taken out', 'witness: bob\n', '', 'witness', 'bob', 'nothing'],
    ['the first of a set', 'witness: bob', 'witness: bob\nrig: {id: r-1}', 'rig id', 'nothing', 'r-1'],
    ['added', 'witness: bob', 'witness: bob\nstopped: a bang', 'stopped', 'nothing', 'a bang'],
  ])('%s', (_, from, to, at, before, after) => {
    expect(put(from, to)).toEqual([{ at, before, after }])
  })
  it('one more entry at the front of those with an id is one change', () => {
    expect(put('fitted: [', 'fitted: [{id: clamp, what: a clamp}, ')).toEqual([
      { at: 'fitted clamp', before: 'nothing', after: 'id: clamp, what: a clamp' },
    ])
  })
  it('names that every object has are names', () => {
    const rig = (more: string) => state(`rig: {id: r-1${more}}\nreadings: |\n  a\n  1\n  2`)
    expect(changesOf(rig(''), rig(', constructor: x'))).toEqual([
      { at: 'rig constructor', before: 'nothing', after: 'x' },
    ])
  })
})

describe('readings', () => {
  it.each([
    ['a cell', '10    -2648', '10    -2650', 'readings row 3 column pressure', '-2648', '-2650'],
    ['a digit less', '1009.9', '1009.90', 'readings row 3 column baro', '1009.9', '1009.90'],
    ['a remark', 'door opened', 'door shut', 'readings row 2 column remark', 'door opened', 'door shut'],
    ['a remark taken out', '  door opened', '', 'readings row 2 column remark', 'door opened', 'nothing'],
    ['a unit', 'Pa  ', 'hPa ', 'readings unit of pressure', 'Pa', 'hPa'],
    ['a row taken out', '  10    -2648     1009.9\n', '', 'readings row 3', '10 -2648 1009.9', 'nothing'],
    [
      'a row added',
      '  190 ',
      '  60    -2640     1010.0\n  190 ',
      'readings row 4',
      'nothing',
      '60 -2640 1010.0',
    ],
  ])('%s', (_, from, to, at, before, after) => {
    expect(put(from, to)).toEqual([{ at, before, after }])
  })
  it('a column added is one change', () => {
    const old = state('readings: |\n  time load\n  s N\n  0 1\n  5 2')
    const now = state('readings: |\n  time load zero\n  s N N\n  0 1 0\n  5 2 0')
    expect(changesOf(old, now)).toEqual([{ at: 'readings column zero', before: 'nothing', after: 'N: 0 0' }])
  })
  it('a row taken out and another changed are told apart', () => {
    const now = HEAD.replace('  0     -2653     1009.8\n', '').replace('-2604', '-2600')
    expect(changes(now)).toEqual([
      { at: 'readings row 1', before: '0 -2653 1009.8', after: 'nothing' },
      { at: 'readings row 4 column pressure', before: '-2604', after: '-2600' },
    ])
  })
  it('a long table is compared in little time', () => {
    const table = (rows: number, odd: number) =>
      state(
        `readings: |\n  time  load\n  s     N\n${Array.from({ length: rows }, (_, n) => `  ${n}  ${n === odd ? 7 : n % 5}.0`).join('\n')}`,
      )
    const began = performance.now()
    expect(changesOf(table(20_000, -1), table(20_000, 11_111))).toEqual([
      { at: 'readings row 11112 column load', before: '1.0', after: '7.0' },
    ])
    expect(changesOf(table(20_000, -1), table(19_999, 3)).length).toBeGreaterThan(1)
    expect(performance.now() - began).toBeLessThan(5000)
  })
})

describe('a data file', () => {
  const named = `${HEAD.slice(0, HEAD.indexOf('readings:'))}readings: {file: 2026-03-04-0912-leak.csv}`
  const data = PATH.replace('.md', '.csv')
  const csv = 'time,pressure\nmin,Pa\n0,-2653\n5,-2651\n10,-2648\n'
  const logged = (text: string): RunText => ({ ...state(named), data: { path: data, text } })

  it('is compared cell by cell', () => {
    expect(changesOf(logged(csv), logged(csv.replace('-2651', '-2650')))).toEqual([
      { at: 'readings row 2 column pressure', before: '-2651', after: '-2650' },
    ])
  })
  it('its line ends say nothing of the readings', () => {
    expect(changesOf(logged(csv), logged(csv.replaceAll('\n', '\r\n')))).toEqual([])
  })
  it('one that is kept elsewhere cannot be taken apart, and still is another', () => {
    const pointer = 'version https://git-lfs.github.com/spec/v1\noid sha256:0\nsize 1\n'
    expect(changesOf(logged(pointer), logged(csv))).toEqual([
      { at: 'readings file', before: 'the file as it landed', after: 'another content' },
    ])
  })
})

describe('what cannot be read', () => {
  it('is one field', () => {
    expect(changesOf(state('by: [ann'), state())).toEqual([
      { at: 'front matter', before: 'cannot be read', after: 'fields' },
    ])
    expect(changesOf(state('by: [ann'), state('by: [bob'))).toEqual([])
  })
})

describe('amendments', () => {
  const amendment = (at: string, was: string) => ({
    when: '2026-03-05T09:00Z',
    by: 'ann',
    at,
    was,
    why: 'misread',
  })
  const found = put('10    -2648', '10    -2650')
  it.each([
    ['readings row 3 column pressure', '-2648', true],
    ['Readings  row 3, column PRESSURE', ' -2648 ', true],
    ['readings row 3 column pressure', '-2650', false],
    ['readings row 4 column pressure', '-2648', false],
  ])('%s was %s: %s', (at, was, amended) => {
    expect(withAmendments(found, [amendment(at, was)]).map((change) => change.amended)).toEqual([amended])
  })
  it('the first of two at one place says what landed', () => {
    const place = 'readings row 3 column pressure'
    const both = [amendment(place, '-2648'), amendment(place, '-2649')]
    expect(withAmendments(found, both)[0]?.amended).toBe(true)
    expect(idleAmendments(found, both)).toEqual([])
  })
  it('one that names nothing that changed is idle', () => {
    expect(idleAmendments(found, [amendment('given volume', '96.2 ± 0.6 L')])).toEqual([0])
  })
})
