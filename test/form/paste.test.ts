/** Units of pasted columns: a value in millibar must never stand under pascal. 1 mbar is 100 Pa by definition (SI). */
import { describe, expect, it } from 'vitest'
import { pasteRows } from '../../src/form/paste.ts'
import type { RunState } from '../../src/form/state.ts'
import { LEAK as run } from './columns.ts'

const filled: RunState = { ...run, rows: [['0', '-2260', '']] }
const unitOf = (state: RunState): string | undefined => state.columns[1]?.unit

describe.each([
  ['a line of units', 'time\tpressure\nmin\tmbar\n0\t-22.6\n'],
  ['a line of units in brackets', 'Time\tPressure\n[min]\t[mbar]\n0\t-22.6\n'],
  ['a head with the unit in brackets', 'Time (min)\tPressure (mbar)\n0\t-22.6\n'],
  ['a head with the unit behind a comma', 'Time, min\tPressure, mbar\n0\t-22.6\n'],
  ['units that are all other than those of the table', 'time\tpressure\ns\tmbar\n0\t-22.6\n'],
])('%s', (_, text) => {
  it('is taken over where nothing was read yet', () => {
    const { state, notes, refused } = pasteRows(run, text)
    expect(refused).toEqual([])
    expect([unitOf(state), state.rows]).toEqual(['mbar', [['0', '-22.6', '']]])
    expect(notes.join()).toContain('pressure: in mbar, as pasted')
  })
  it('is refused where readings of another unit are there already', () => {
    const { refused } = pasteRows(filled, text)
    expect(refused.join()).toContain('pressure is pasted in mbar and stands in Pa in the table')
  })
})

describe('units that are the same', () => {
  it.each(['time\tpressure\nmin\tPa\n5\t-2259', 'Time (min)\tPressure [Pa]\n5\t-2259'])(
    'are taken: %j',
    (text) => {
      const { state, refused } = pasteRows(filled, text)
      expect(refused).toEqual([])
      expect(state.rows).toEqual([...filled.rows, ['5', '-2259', '']])
    },
  )
})

describe('what is no unit of that column', () => {
  it('in a head is said', () => {
    const { state, notes } = pasteRows(run, 'Time\tPressure (gauge 2)\n0\t-2260')
    expect(unitOf(state)).toBe('Pa')
    expect(notes.join()).toContain('pressure: `gauge 2` in its head is no unit; read as Pa')
  })
  it('of another dimension is refused', () => {
    expect(pasteRows(run, 'time\tpressure\nmin\t°C\n0\t20').refused.join()).toContain('°C')
  })
})

it('a column that stands twice is told of', () => {
  expect(pasteRows(run, 'time\tpressure\tpressure\n0\t-2260\t-2261').notes.join()).toMatch(/1 pasted column/)
})
