/** What loggers do besides: clocks, cuts, marks, scales, gaps. Common practice, no source, unless one is named. */
import { describe, expect, test } from 'vitest'
import { decodePieces } from '../../../src/format/logger/decode.ts'
import { readLogger } from '../../../src/format/logger/read.ts'
import type { LoggerColumn, LoggerOptions, UsePoint } from '../../../src/format/logger/types.ts'
import { parseStated } from '../../../src/quantity/quantity-text.ts'

const read = (text: string | Uint8Array, options: LoggerOptions) => {
  const result = readLogger(options, decodePieces([text]))
  if (!result.ok) throw new Error(result.error.map(({ code, message }) => `${code}: ${message}`).join('; '))
  return result.value
}

const faults = (text: string | Uint8Array, options: LoggerOptions) => {
  const result = readLogger(options, decodePieces([text]))
  return result.ok ? [] : result.error.map(({ code }) => code)
}

const time = (format: string): LoggerColumn => ({ from: 't', format })
const x: LoggerColumn = { from: 'x', unit: 'm' }
const log = (rows: readonly string[], head = 't;x') => `${[head, ...rows].join('\n')}\n`
const stated = (text: string) => {
  const quantity = parseStated(text)
  if (!quantity.ok) throw new Error(text)
  return quantity.value
}
const values = (text: string, options: LoggerOptions, name: string) => {
  const column = read(text, options).readings.columns.find((each) => each.name === name)
  return [...(column?.values ?? [])]
}

describe('clocks', () => {
  test('a clock without a date passes midnight, more than once', () => {
    const text = log(['23:00:00;1', '23:59:59;2', '00:00:01;3', '12:30:00;4', '23:00:00;5', '00:10:00;6'])
    const day = 86_400
    expect(values(text, { columns: { time: time('HH:mm:ss'), x } }, 'time')).toEqual([
      82_800,
      86_399,
      day + 1,
      day + 45_000,
      day + 82_800,
      2 * day + 600,
    ])
  })

  test('a date that goes on is no wrap, and 29 February is a day', () => {
    const text = log(['28.02.2028 23:59:59;1', '29.02.2028 00:00:00;2', '01.03.2028 00:00:00,5;3'])
    expect(values(text, { columns: { time: time('DD.MM.YYYY HH:mm:ss'), x } }, 'time')).toEqual([
      86_399, 86_400, 172_800.5,
    ])
  })

  test('where the clock says its offset, summer time is no step', () => {
    // Europe/Oslo went from +01:00 to +02:00 on 2026-03-29 at 02:00 (last Sunday of March, Directive 2000/84/EC).
    const text = log([
      '2026-03-29T01:59:59+01:00;1',
      '2026-03-29T03:00:00+02:00;2',
      '2026-03-29T03:00:01+02:00;3',
    ])
    expect(values(text, { columns: { time: time('ISO'), x } }, 'time')).toEqual([7199, 7200, 7201])
    const back = log(['2026-10-25T02:59:59;1', '2026-10-25T02:00:00;2'])
    expect(faults(back, { columns: { time: time('ISO'), x } })).toEqual(['readings/time-backwards'])
  })

  test('seconds since 1970 count from midnight of their first day', () => {
    const text = log(['1772582399.5;1', '1772582400;2'])
    expect(values(text, { columns: { time: time('epoch s'), x } }, 'time')).toEqual([86_399.5, 86_400])
  })

  test('a day that lies before the rows that are used leaves no trace', () => {
    const text = log(['23:59:58;1', '23:59:59;2', '00:00:00;3', '00:00:01;4'])
    const use = { from: { form: 'clock', seconds: 0 } } as const
    expect(values(text, { columns: { time: time('HH:mm:ss'), x }, use }, 'time')).toEqual([0, 1])
  })
})

describe('a part of a log', () => {
  const text = log(['10:00:00;1', '10:00:30;2', '10:01:00;3', '10:02:00;4', '10:05:00;5'])
  const used = (from?: UsePoint, to?: UsePoint) =>
    values(text, { columns: { time: time('HH:mm:ss'), x }, use: { from, to } }, 'x')
  const elapsed = (seconds: number): UsePoint => ({ form: 'elapsed', seconds })
  const clock = (seconds: number): UsePoint => ({ form: 'clock', seconds })
  const line = (number: number): UsePoint => ({ form: 'line', line: number })

  test('by time since the first sample, both ends taken in', () => {
    expect(used(elapsed(30), elapsed(120))).toEqual([2, 3, 4])
    expect(used(undefined, elapsed(0))).toEqual([1])
    expect(used(elapsed(31))).toEqual([3, 4, 5])
  })

  test('by the time of day', () => {
    expect(used(clock(36_060), clock(36_120))).toEqual([3, 4])
    expect(used(undefined, clock(36_059))).toEqual([1, 2])
  })

  test('by line, counted as an editor counts', () => {
    expect(used(line(3), line(4))).toEqual([2, 3])
    expect(used(line(5), undefined)).toEqual([4, 5])
    expect(used(line(4), elapsed(60))).toEqual([3, 4])
  })

  test('what is cut away is not judged: a clock that was set, a word at the end', () => {
    const wild = log(['12:00:00;1', '09:00:00;2', '09:00:01;3', '09:00:02;4', 'end of log'])
    const columns = { time: time('HH:mm:ss'), x }
    expect(faults(wild, { columns })).toEqual(['readings/row-too-short', 'readings/time-backwards'])
    expect(values(wild, { columns, use: { from: line(3), to: line(5) } }, 'x')).toEqual([2, 3, 4])
    expect(values(wild, { columns, use: { from: line(3), to: elapsed(1) } }, 'x')).toEqual([2, 3])
  })

  test('the rows that are left keep their lines and cells', () => {
    const { readings, lineOf, placeOf } = read(text, {
      columns: { time: time('HH:mm:ss'), x },
      use: { from: elapsed(60) },
    })
    expect(lineOf(0)).toBe(4)
    expect(readings.columns[0]?.cell?.(0)).toBe('10:01:00')
    const place = placeOf(1, 1)
    expect(place.in === 'data' && text.slice(place.start, place.end)).toBe('4')
  })
})

describe('columns', () => {
  test('a scale and an offset, to SI, with the digit of what was read', () => {
    const volts: LoggerColumn = { from: 'U', unit: 'kPa', scale: 2.5, offset: stated('-10 Pa') }
    const { readings } = read('t;U\n0;4,00\n1;-0,02\n', {
      columns: { time: { from: 't', unit: 's' }, pressure: volts },
    })
    expect([...(readings.columns[1]?.values ?? [])]).toEqual([9990, -60])
    expect(readings.columns[1]?.digit).toBeCloseTo(25, 10)
  })

  test('a temperature is shifted by a difference', () => {
    const columns = { temperature: { from: 'T', unit: '°C', offset: stated('0.5 K') } }
    expect(values('T\n20.0\n', { columns, delimiter: ';' }, 'temperature')[0]).toBeCloseTo(293.65, 10)
    const wrong = { temperature: { from: 'T', unit: '°C', offset: stated('0.5 °C') } }
    expect(faults('T\n20.0\n', { columns: wrong, delimiter: ';' })).toEqual(['unit/temperature'])
  })

  test('by number, without a line of names, behind any line of units', () => {
    const text = 'Channel set 4\nA;mV DC;Deg\n0;1.5;2\n1;2.5;3\n'
    const columns = { time: { from: '1', unit: 's' }, x: { from: '2', unit: 'mm' } }
    expect(values(text, { columns, skip: 2 }, 'x')).toEqual([0.0015, 0.0025])
  })

  test('one column of the file may serve two of the readings', () => {
    const columns = { x, y: { from: 'x', unit: 'm', scale: -1 } }
    expect(values(log(['0;1', '1;2']), { columns }, 'y')).toEqual([-1, -2])
  })

  test('a file in the words of the method needs no option, also in another dialect', () => {
    const own = 'time;pressure;remark\nmin;mbar;text\n0;1,5;\n1;2,5;door opened, for a minute\n'
    const { readings } = read(own, {})
    expect(readings.columns.map(({ name, unit }) => [name, unit])).toEqual([
      ['time', 'min'],
      ['pressure', 'mbar'],
      ['remark', 'text'],
    ])
    expect([...(readings.columns[1]?.values ?? [])]).toEqual([150, 250])
    expect(readings.columns[2]?.cells).toEqual(['', 'door opened, for a minute'])
  })

  test('numbers in quotes, with the delimiter inside', () => {
    const text = '"t","x"\n"0","1,5"\n"1","2,75"\n'
    expect(values(text, { columns: { time: { from: 't', unit: 's' }, x } }, 'x')).toEqual([1.5, 2.75])
  })

  test('a name over two lines', () => {
    const text = 't;"x\nchannel ""2"""\n0;1,5\n1;2,25\n'
    const columns = { time: { from: 't', unit: 's' }, x: { from: 'x\nchannel "2"', unit: 'm' } }
    expect(values(text, { columns }, 'x')).toEqual([1.5, 2.25])
  })
})

describe('missing values', () => {
  const missing = (marks: readonly string[], cells: readonly string[]) => {
    const { readings } = read(log(cells.map((cell, row) => `${row};${cell}`)), {
      columns: { time: { from: 't', unit: 's' }, x },
      decimal: '.',
      missing: marks,
    })
    return [...(readings.columns[1]?.missing ?? [])]
  }

  test('marks that are words, blank, or numbers', () => {
    expect(missing(['', 'OL', '----'], ['1', 'OL', '', '----', '2'])).toEqual([0, 1, 1, 1, 0])
    expect(missing(['-9999'], ['1', '-9999', '-9999.0', '2'])).toEqual([0, 1, 0, 0])
    // 9.9E37 and 9.91E37 stand for a value beyond the range and for none: SCPI-1999, volume 1, 7.2.1 (from memory).
    expect(missing(['+9.90000000E+37', '9.91E37'], ['1.0', '+9.90000000E+37', '9.91E37'])).toEqual([0, 1, 1])
  })

  test('a mark of overload that is not listed is refused', () => {
    const columns = { time: { from: 't', unit: 's' }, x }
    expect(faults(log(['0;1.0', '1;9.9E37', '2;-9.9E37']), { columns })).toEqual(['readings/overload'])
  })
})

describe('what is worth knowing', () => {
  const notes = (rows: readonly string[]) =>
    read(log(rows), { columns: { time: { from: 't', unit: 's' }, x } }).readings.notes ?? []

  test('gaps in an even log, with the line at which the longest ends', () => {
    const rows = Array.from({ length: 40 }, (_, row) => row).filter((row) => ![7, 20, 21, 22].includes(row))
    expect(notes(rows.map((row) => `${row};1`))).toEqual([
      'samples are missing 2 times in a log of one every 1 s: the longest gap, 4 s, ends on line 21',
    ])
  })

  test('doubled times are kept and said', () => {
    const rows = ['0;1', '0;2', '1;3', '1;4', '2;5']
    expect(notes(rows)).toEqual(['2 rows have the time of the row above; all are kept'])
    expect(values(log(rows), { columns: { time: { from: 't', unit: 's' }, x } }, 'x')).toHaveLength(5)
  })

  test('an uneven log has no gaps, and a whole one no notes', () => {
    expect(notes(['0;1', '5;2', '6;3', '60;4', '61;5'])).toEqual([])
    expect(notes(Array.from({ length: 30 }, (_, row) => `${row / 10};1`))).toEqual([])
  })

  test('bytes that are not UTF-8 are Windows-1252, and that is said', () => {
    const latin = Uint8Array.from('t;x;Temp. °C\n0;1,5;2\n', (sign) => sign.charCodeAt(0))
    const { readings } = read(latin, { columns: { temperature: { from: 'Temp. °C', unit: '°C' }, x } })
    expect(readings.notes).toEqual([
      'the data file is not valid UTF-8 and was read as Windows-1252; figures are not touched by that',
    ])
  })
})

describe('files that are hardly any', () => {
  const columns = { time: { from: 't', unit: 's' }, x }
  test.each([
    ['', ['readings/no-table']],
    ['\uFEFF\r\n\r\n', ['readings/no-table']],
    ['t;x', []],
    ['t;x\n0;1', []],
    ['0;1\n', ['readings/file-column', 'readings/file-column']],
    ['"t;x\n0;1\n', ['readings/file-column', 'readings/file-column']],
    ['\0\0\0', ['readings/not-text']],
    ['t;x\n0;"1\n', ['readings/quote']],
    ['t;x\n0;1;2;3\n', ['readings/row-too-long']],
  ])('%j', (text, codes) => expect(faults(text, { columns })).toEqual(codes))

  test('UTF-16 that was cut off in the middle of a sign', () => {
    const whole = new Uint8Array(2 * 8)
    Array.from('t;x\n0;1\n', (sign, at) => whole.set([sign.charCodeAt(0), 0], 2 * at))
    expect(faults(whole, { columns })).toEqual([])
    expect(faults(whole.subarray(0, 13), { columns })).toEqual(['readings/not-text'])
  })

  test('nothing is ever thrown, whatever the bytes', async () => {
    const fc = await import('fast-check')
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 300 }), fc.constantFrom(undefined, 0, 1, 5), (bytes, skip) => {
        const source = decodePieces([bytes])
        for (const options of [{}, { columns, skip }, { columns: { x: { from: '2', unit: 'm' } }, skip }])
          readLogger(options, source)
      }),
      { numRuns: 500 },
    )
    const text = fc.string({
      unit: fc.constantFrom('t', 'x', ';', ',', '\n', '\r', '"', '0', '1', '.', ' ', '\t', '\0'),
      maxLength: 80,
    })
    fc.assert(
      fc.property(text, (each) => {
        for (const options of [{}, { columns }, { columns: { x: { from: '2', unit: 'm' } } }])
          readLogger(options, each)
      }),
      { numRuns: 1000 },
    )
  })
})
