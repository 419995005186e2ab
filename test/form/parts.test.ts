/** The small parts of the form, each with what it must not get wrong. */
import { describe, expect, it } from 'vitest'
import { clockText, dayText, durationText, momentText } from '../../src/form/clock.ts'
import { ticksOf } from '../../src/form/drawing.ts'
import { newFilePage } from '../../src/form/handing.ts'
import { runId, runPath } from '../../src/form/name.ts'
import { isTypedIn, observe, typedIn } from '../../src/form/observed.ts'
import { pasteRows } from '../../src/form/paste.ts'
import { type RunState, withColumn } from '../../src/form/state.ts'
import { alarmOf, beyondStop, seenMark } from '../../src/form/stop.ts'
import { readMoment } from '../../src/format/fields/moment.ts'
import { LEAK, pressureColumn } from './columns.ts'

const run: RunState = { ...LEAK, article: 'wing-left/tank' }

describe('names', () => {
  it('follow time, card and article, and never take one that is there', () => {
    expect(runPath(run)).toBe('records/runs/2026-03/2026-03-04-0912-tank-leak-wing-left-tank.md')
    const id = runId(run)
    expect(runId(run, [id, `${id}-2`])).toBe(`${id}-3`)
  })
})

describe('times', () => {
  // 2026-03-04T08:12:30Z is 09:12:30 in a place one hour east.
  const now = { epoch: Date.UTC(2026, 2, 4, 8, 12, 30), offset: 60 }
  it('are those of the place, with its offset', () => {
    expect(momentText(now)).toBe('2026-03-04T09:12+01:00')
    expect(momentText({ ...now, offset: -210 })).toBe('2026-03-04T04:42-03:30')
    expect(readMoment(momentText(now)).ok).toBe(true)
    expect(dayText({ ...now, offset: 16 * 60 })).toBe('2026-03-05')
    expect(clockText(now, true)).toBe('09:12:30')
  })
  it('that have passed are minutes and seconds', () => {
    expect([0, 65, 3725].map(durationText)).toEqual(['0:00', '1:05', '1:02:05'])
  })
})

describe('observations', () => {
  it('go to the end of their list, prose stays behind it', () => {
    expect(observe('', '11:31 hiss')).toBe('## Observed\n- 11:31 hiss')
    expect(observe('## Observed\n- a\n  goes on\n\nProse.', 'b')).toBe(
      '## Observed\n- a\n  goes on\n- b\n\nProse.',
    )
    expect(observe('Prose.', 'b')).toBe('## Observed\n- b\n\nProse.')
  })
  it('say that a sheet was typed in, once', () => {
    const told = typedIn('## Observed\n- a', '2026-03-05')
    expect(isTypedIn(told)).toBe(true)
    expect(typedIn(told, '2026-03-06').match(/Typed in/g)).toHaveLength(1)
    expect(typedIn(told, null)).toBe('## Observed\n- a')
  })
})

describe('pasted cells', () => {
  it('go by their heads, with a row of units, in any order', () => {
    const { state, notes } = pasteRows(run, 'Pressure\tTime\nPa\tmin\n-2653\t0\n-2651\t5\n')
    expect(state.rows).toEqual([
      ['0', '-2653', ''],
      ['5', '-2651', ''],
    ])
    expect(notes).toContain('the first row named the columns')
  })
  it('go in order without heads, below what is there, with commas understood', () => {
    const before = {
      ...run,
      rows: [
        ['0', '-2700', ''],
        ['', '', ''],
      ],
    }
    const { state, ask } = pasteRows(before, '5\t-2653,5\thiss at the port\n10\t-2651,0')
    expect(state.rows).toEqual([
      ['0', '-2700', ''],
      ['5', '-2653.5', 'hiss at the port'],
      ['10', '-2651.0', ''],
    ])
    expect(ask).toEqual([])
  })
  it('ask what `1,234` is, a column each, and take the answer', () => {
    const text = '0\t1,234\n5\t1,235'
    expect(pasteRows(run, text).ask).toEqual([{ column: 'pressure', cell: '1,234' }])
    expect(pasteRows(run, text, 0, { pressure: true }).state.rows[0]?.[1]).toBe('1.234')
    expect(pasteRows(run, text, 0, { pressure: false }).state.rows[0]?.[1]).toBe('1234')
  })
  it('may be separated by blanks, words at the end together', () => {
    expect(pasteRows(run, '0 -2653  hiss at the port').state.rows).toEqual([
      ['0', '-2653', 'hiss at the port'],
    ])
  })
  it('say what has no place', () => {
    expect(pasteRows(run, '0\t1\tx\ty').notes.join()).toMatch(/1 pasted column has no place/)
  })
})

describe('stop-at', () => {
  const pressure = pressureColumn({ stop: { text: '-4 kPa', value: -4000 } })
  const at = (unit: string, cell: string): number => {
    const columns = [{ name: 'pressure', unit }]
    return beyondStop({ ...run, columns, rows: [[cell]] }, [pressure]).length
  }
  it.each([
    ['Pa', '-4001', 1],
    ['Pa', '-4000', 0],
    ['Pa', '4001', 1],
    // 4000 Pa is 40 mbar and 16.06 inH2O (NIST SP 811: 1 inH2O at 4 °C is 249.082 Pa).
    ['mbar', '-40,1', 1],
    ['mbar', '-39.9', 0],
    ['inH2O', '-16.2', 1],
    ['inH2O', '-15.9', 0],
    ['Pa', '4,001', 1],
    ['Pa', '-', 0],
    ['Pa', '', 0],
  ])('in %s at %s: %d', (unit, cell, count) => {
    expect(at(unit, cell)).toBe(count)
  })
  it('of each reading is announced, also after an earlier one was seen, and not at every digit', () => {
    const columns = [{ name: 'pressure', unit: 'Pa' }]
    const beyond = (...cells: string[]) =>
      beyondStop({ ...run, columns, rows: cells.map((cell) => [cell]) }, [pressure])
    const first = beyond('-4001')
    expect(alarmOf(first, new Set(), [])).toEqual({ open: first, isNew: true })
    const longer = beyond('-40012')
    expect(alarmOf(longer, new Set(), first)).toEqual({ open: longer, isNew: false })
    const seen = new Set(longer.map(seenMark))
    expect(alarmOf(longer, seen, [])).toEqual({ open: [], isNew: false })
    const second = alarmOf(beyond('-40012', '-4100'), seen, [])
    expect(second.open.map(({ row }) => row)).toEqual([1])
    expect(second.isNew).toBe(true)
    expect(alarmOf(beyond('-4500'), seen, []).isNew).toBe(true)
  })
})

describe('the new-file page of a forge', () => {
  const forge = { forge: 'https://forge.example/team/tests/', main: 'main' }
  it('has name, place and text', () => {
    const page = newFilePage(forge, run, 'r', 'a: ± 1\n')
    expect(page).toEqual({
      ok: true,
      address:
        'https://forge.example/team/tests/new/main/records/runs/2026-03?filename=r.md&value=a%3A%20%C2%B1%201%0A',
    })
  })
  it.each([
    [{ ...forge, forge: '' }, run, '', 'no forge'],
    [forge, { ...run, files: [{ file: 'a.jpg', caption: '' }] }, '', 'photos'],
    [forge, run, 'x'.repeat(8000), 'too long'],
  ])('is refused with a reason', (where, state, text, why) => {
    const page = newFilePage(where, state, 'r', text)
    expect(page.ok ? '' : page.why).toContain(why)
  })
})

it('a column more goes before the remark, and every row with it', () => {
  const more = withColumn({ ...run, rows: [['0', '1', 'r']] }, { name: 'baro', unit: 'hPa' })
  expect(more.columns.map(({ name }) => name)).toEqual(['time', 'pressure', 'baro', 'remark'])
  expect(more.rows).toEqual([['0', '1', '', 'r']])
})

it('ticks are round and lie within', () => {
  expect(ticksOf(-2660, -2600)).toEqual([-2660, -2650, -2640, -2630, -2620, -2610, -2600])
  expect(ticksOf(0, 1)).toEqual([0, 0.2, 0.4, 0.6, 0.8, 1])
})
