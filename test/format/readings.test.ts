import { describe, expect, test } from 'vitest'
import { readReadings } from '../../src/format/readings.ts'
import { readTable } from '../../src/format/table.ts'

const column = (text: string, name: string, missing: string[] = []) => {
  const read = readReadings(readTable(text), missing)
  if (!read.ok) throw new Error(read.error.map((fault) => fault.message).join())
  const found = read.value.columns.find((column) => column.name === name)
  if (!found) throw new Error(`no column ${name}`)
  return found
}

const codes = (text: string) => {
  const read = readReadings(readTable(text))
  return read.ok ? [] : read.error.map((fault) => fault.code)
}

describe('values in SI', () => {
  // 1 in = 25.4 mm and 1 lbf = 4.448 221 615 260 5 N exactly: NIST SP 811 (2008), appendix B.
  test('units are converted exactly', () => {
    expect([...column('x  f\nin  lbf\n1.5  10\n', 'x').values]).toEqual([0.0381])
    expect(column('x  f\nin  lbf\n1.5  10\n', 'f').values[0]).toBeCloseTo(44.482216152605, 12)
    expect(column('T\n°F\n212\n', 'T').values[0]).toBeCloseTo(373.15, 12)
  })

  test('the digit is that of the finest cell, also of a temperature', () => {
    expect(column('x\nmm\n27.50\n3\n', 'x').digit).toBeCloseTo(1e-5, 15)
    expect(column('x\nmm\n100\n', 'x').digit).toBeCloseTo(1e-3, 15)
    expect(column('x\nm\n3e2\n', 'x').digit).toBe(100)
    expect(column('T\n°C\n18.4\n', 'T').digit).toBeCloseTo(0.1, 15)
  })

  test('missing, n/a and 0 are three things, and cells stay as read', () => {
    const read = column('x\nmm\n-\nn/a\n0\n0.00\nOL\n', 'x', ['OL'])
    expect([...read.missing]).toEqual([1, 1, 0, 0, 1])
    expect([...read.values]).toEqual([Number.NaN, Number.NaN, 0, 0, Number.NaN])
    expect(read.cells).toEqual(['-', 'n/a', '0', '0.00', 'OL'])
  })

  test('clock times go on past midnight', () => {
    expect([...column('time\nhh:mm\n23:58\n00:02\n', 'time').values]).toEqual([86_280, 86_520])
    expect([...column('time\nhh:mm:ss\n12:30:00\n12:30:01\n', 'time').values]).toEqual([45_000, 45_001])
    expect([...column('time\nhh:mm\n23:00\n01:00\n23:00\n01:00\n', 'time').values]).toEqual([
      82_800, 90_000, 169_200, 176_400,
    ])
  })

  test('rows keep their order', () => {
    expect([...column('x\nm\n3\n1\n2\n', 'x').values]).toEqual([3, 1, 2])
  })
})

describe('cells', () => {
  test('only the last column holds blanks, and a remark may be empty', () => {
    expect(column('x  remark\nm  text\n1\n2  a b  c\n', 'remark').cells).toEqual(['', 'a b  c'])
  })

  test.each(['1,5', '1.2.3', '1e', '--1', '0x10', '1_000', 'Infinity', 'NaN', '1e999', '5%'])(
    '%s is no number',
    (cell) => {
      expect(codes(`x\nm\n${cell}\n`)).toHaveLength(1)
    },
  )

  test('a column full of one mistake gives one problem', () => {
    expect(codes('x\nm\n1,5\n1,6\n1,7\n')).toEqual(['readings/decimal-comma'])
  })
})
