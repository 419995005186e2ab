/** What is typed must not shift, vanish or change its meaning on the way into the file. The readers are those of `check`. */
import { describe, expect, it } from 'vitest'
import type { RunState } from '../../src/form/state.ts'
import { runText } from '../../src/form/write.ts'
import { splitFrontMatter } from '../../src/format/front-matter.ts'
import { readReadings } from '../../src/format/readings.ts'
import { readTable } from '../../src/format/table.ts'
import { readYaml } from '../../src/format/yaml.ts'
import { LEAK as run } from './columns.ts'

const fieldsOf = (state: RunState) => {
  const parts = splitFrontMatter(runText(state))
  return parts.ok ? readYaml(parts.value.yaml) : null
}

const readingsOf = (state: RunState) => {
  const read = fieldsOf(state)
  const table = read?.ok && typeof read.value.readings === 'string' ? read.value.readings : ''
  return readReadings(readTable(table))
}

describe('a cell with a blank in it', () => {
  it('stays one cell, so that half a number is never a value and the rest never a remark', () => {
    const read = readingsOf({ ...run, rows: [['5', '-22 60', '']] })
    expect(read.ok).toBe(false)
    expect(read.ok ? [] : read.error.map(({ code, row, column }) => ({ code, row, column }))).toEqual([
      { code: 'readings/not-a-number', row: 0, column: 1 },
    ])
  })
  it('of words keeps its words together before the last column', () => {
    const columns = [
      { name: 'entry', unit: 'text' },
      { name: 'as_left', unit: '1' },
      { name: 'remark', unit: 'text' },
    ]
    const read = readingsOf({ ...run, columns, rows: [['lock wire', '3', 'new wire']] })
    expect(read.ok && read.value.columns.map(({ cells }) => cells)).toEqual([
      ['lock_wire'],
      ['3'],
      ['new wire'],
    ])
  })
  it('in the name of a column does not move the names beside it', () => {
    const columns = [{ name: 'at 3', unit: 'mm' }, ...run.columns]
    const read = readingsOf({ ...run, columns, rows: [['1', '0', '-2260', '']] })
    expect(read.ok && read.value.columns.map(({ name, unit }) => [name, unit])).toEqual([
      ['at_3', 'mm'],
      ['time', 'min'],
      ['pressure', 'Pa'],
      ['remark', 'text'],
    ])
  })
})

describe('details of the rig', () => {
  it('of one name are both in the file, and the reader says that the name stands twice', () => {
    const rig = [
      { name: 'relief', value: 'opens at 5 kPa' },
      { name: 'relief', value: 'opens at 6 kPa' },
    ]
    expect(runText({ ...run, rig })).toMatch(/opens at 5 kPa[\s\S]*opens at 6 kPa/)
    const read = fieldsOf({ ...run, rig })
    expect(read?.ok).toBe(false)
    expect(read?.ok ? '' : read?.error[0]?.message).toContain('relief')
  })
  it('half filled in are not dropped', () => {
    const rig = [
      { name: '', value: 'opens at 5 kPa' },
      { name: 'hose', value: '' },
    ]
    const text = runText({ ...run, rig })
    expect(text).toContain('opens at 5 kPa')
    expect(text).toContain('hose')
  })
})
