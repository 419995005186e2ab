import { describe, expect, test } from 'vitest'
import { makeProblem } from '../../src/problems/make.ts'
import { printAnnotation } from '../../src/problems/printers/annotation.ts'
import { problemJson } from '../../src/problems/printers/json.ts'
import { printLine } from '../../src/problems/printers/line.ts'
import { printTerminal } from '../../src/problems/printers/terminal.ts'
import { countProblems, sortProblems } from '../../src/problems/sort.ts'
import type { Place, Problem } from '../../src/problems/types.ts'

const at = (file: string, line: number, column: number, width = 1): Place => ({
  file,
  line,
  column,
  endLine: line,
  endColumn: column + width,
  part: 'value',
})

const mass: Problem = makeProblem({
  code: 'unit/wrong-dimension',
  message: '`volume` is given as a mass',
  at: at('records/runs/2026-03/a,b.md', 2, 17, 13),
  why: 'the leak rate is computed from the enclosed volume; a mass cannot stand for it',
  hint: 'give L, m³ or US gal, as in `96.4 ± 0.6 L`: 100 % sure',
  see: ['handbook: pressure-decay, givens'],
})
const text = 'instruments: {pressure: pg-07}\ngiven: {volume: 96.4 ± 0.6 kg}\n'

test('the terminal prints place, message, lines with a marker, why, hint and pages', () => {
  expect(printTerminal(mass, () => text)).toBe(`records/runs/2026-03/a,b.md:2:17  error  unit/wrong-dimension
  \`volume\` is given as a mass
    1 | instruments: {pressure: pg-07}
  > 2 | given: {volume: 96.4 ± 0.6 kg}
      |                 ^^^^^^^^^^^^^
  why   the leak rate is computed from the enclosed volume; a mass cannot stand for it
  hint  give L, m³ or US gal, as in \`96.4 ± 0.6 L\`: 100 % sure
  see   handbook: pressure-decay, givens · problems: unit/wrong-dimension`)
})

describe('the terminal', () => {
  test('has no colour unless it is asked for', () => {
    expect(printTerminal(mass, () => text)).not.toContain('\u001b')
    expect(printTerminal(mass, () => text, { colour: true })).toContain('\u001b[31merror')
  })

  test('lets no control character of a file through', () => {
    expect(printTerminal({ ...mass, at: at('a', 1, 1) }, () => 'x\u001b[31m\ty')).toContain('> 1 | x�[31m→y')
  })

  test('keeps the marker under the fault in a long line', () => {
    const long = `${'x'.repeat(500)}FAULT${'y'.repeat(500)}`
    const lines = printTerminal({ ...mass, at: at('a', 1, 501, 5) }, () => long).split('\n')
    const shown = lines.find((line) => line.includes('FAULT')) ?? ''
    const marker = lines.find((line) => line.includes('^')) ?? ''
    expect(shown.length).toBeLessThan(125)
    expect(marker.indexOf('^')).toBe(shown.indexOf('FAULT'))
    expect(marker.endsWith('^^^^^')).toBe(true)
  })

  test('prints without lines where the text is not at hand', () => {
    expect(printTerminal(mass, () => undefined).split('\n')).toHaveLength(5)
  })
})

// The escapes are those of `escapeData` and `escapeProperty` in the toolkit of GitHub Actions (from memory).
test('annotations are escaped', () => {
  expect(printAnnotation({ ...mass, message: 'two\nlines' })).toBe(
    '::error file=records/runs/2026-03/a%2Cb.md,line=2,col=17,endColumn=30,title=unit/wrong-dimension::' +
      'two%0Alines%0Athe leak rate is computed from the enclosed volume; a mass cannot stand for it%0A' +
      'give L, m³ or US gal, as in `96.4 ± 0.6 L`: 100 %25 sure',
  )
})

test('one line stays one line', () => expect(printLine({ ...mass, message: 'a\n  b' })).not.toContain('\n'))

test('JSON has the fields of the public interface, and a hint even where there is none', () => {
  const { hint: _, ...bare } = mass
  expect(Object.keys(problemJson(bare))).toEqual([
    'severity',
    'code',
    'message',
    'hint',
    'file',
    'line',
    'column',
  ])
  expect(problemJson(bare).hint).toBe('')
})

test('problems are sorted by file, line and column, and counted in a sentence', () => {
  const list = [at('b', 1, 1), at('a', 10, 1), at('a', 2, 5), at('a', 2, 1)].map((place) => ({
    ...mass,
    at: place,
  }))
  expect(sortProblems(list).map(({ at }) => `${at.file}${at.line}.${at.column}`)).toEqual([
    'a2.1',
    'a2.5',
    'a10.1',
    'b1.1',
  ])
  expect(countProblems(list, 7)).toBe('4 errors in 2 files; 7 files were read')
  expect(countProblems([{ ...mass, severity: 'warning' }], 1)).toBe('1 warning in 1 file; 1 file was read')
  expect(countProblems([], 7)).toBe('no problems; 7 files were read')
})
