import { describe, expect, it } from 'vitest'
import { correctionAt } from '../../src/campaign/instruments.ts'
import { coveredParts, touches } from '../../src/campaign/parts.ts'
import { splitRounds } from '../../src/campaign/rounds.ts'
import type { Run } from '../../src/campaign/types.ts'

describe('which rework touches which part', () => {
  it('the same part, a part of it, or what it is a part of', () => {
    expect(touches('wing-left/tank', 'wing-left/tank')).toBe(true)
    expect(touches('wing-left/tank/port', 'wing-left/tank')).toBe(true)
    expect(touches('wing-left', 'wing-left/tank')).toBe(true)
  })
  it('not a neighbour, nor one whose name only begins alike', () => {
    expect(touches('wing-right/tank', 'wing-left/tank')).toBe(false)
    expect(touches('wing-left/tank-2', 'wing-left/tank')).toBe(false)
  })
  it('a card without `covers` covers the whole article', () => {
    expect(coveredParts([], 'hull/bay-1')).toEqual(['hull/bay-1'])
    expect(coveredParts(['skin', 'drain'], 'hull/bay-1')).toEqual(['hull/bay-1/skin', 'hull/bay-1/drain'])
  })
})

/** Only the moment of a run matters to the rounds. */
const run = (id: string, epoch: number) => ({ id, record: { when: { epoch } } }) as unknown as Run
const change = (id: string, epoch: number) => ({ id, what: id, when: '', epoch })

describe('rounds', () => {
  const ids = (spans: ReturnType<typeof splitRounds>) =>
    spans.map((span) => [span.begunBy?.id ?? null, ...span.runs.map((each) => each.id)])

  it('a change ends the round; the next is empty until its first run', () => {
    expect(ids(splitRounds([run('a', 1)], [change('rework', 2)]))).toEqual([[null, 'a'], ['rework']])
  })
  it('a change before the first run begins nothing', () => {
    expect(ids(splitRounds([run('a', 3)], [change('rework', 2)]))).toEqual([[null, 'a']])
  })
  it('several changes in a row begin one round, named after the last', () => {
    expect(ids(splitRounds([run('a', 1), run('b', 4)], [change('x', 2), change('y', 3)]))).toEqual([
      [null, 'a'],
      ['y', 'b'],
    ])
  })
  it('a run dated before a rework belongs to the round of its date, whenever it landed', () => {
    expect(ids(splitRounds([run('late', 1), run('b', 5)], [change('x', 2)]))).toEqual([
      [null, 'late'],
      ['x', 'b'],
    ])
  })
  it('a change at the moment of a run comes first', () => {
    expect(ids(splitRounds([run('a', 1), run('b', 2)], [change('x', 2)]))).toEqual([
      [null, 'a'],
      ['x', 'b'],
    ])
  })
})

describe('corrections of a certificate', () => {
  const calibration = {
    on: '',
    due: '',
    by: '',
    certificate: '',
    corrections: [
      { reading: 0, add: 1 },
      { reading: 10, add: 3 },
    ],
  }
  it('lie between its points in proportion and stay beyond them', () => {
    expect(correctionAt(calibration, 5)).toBe(2)
    expect(correctionAt(calibration, -4)).toBe(1)
    expect(correctionAt(calibration, 40)).toBe(3)
    expect(correctionAt(undefined, 40)).toBe(0)
  })
})
