/**
 * A circuit that does not come back: by hand, with two cycles and a slip d after the positive half of the first one,
 * the positive lines stand at (0 + d)/2 on the mean and the negative ones at d, so that the play comes out wrong by d/2.
 */
import { describe, expect, test } from 'vitest'
import method from '../../../src/methods/circuit-stiffness/index.ts'
import { loopOf } from '../../../src/methods/circuit-stiffness/loop.ts'
import type { Columns } from '../../../src/methods/method.ts'
import { normal, random } from '../../../src/quantity/random.ts'
import { type Bench, bars, column, gauge, given, measured } from './bench.ts'

const PLAY = 0.002
const bench: Bench = {
  inputs: { limit_load: given(100, 'moment') },
  instruments: {
    load: gauge('cell', { resolution: 0.1, gain: 0.003 }),
    deflection: gauge('level', { resolution: 1e-5, gain: 0.001 }),
  },
}
const quarter = [20, 40, 60, 80, 100, 110, 100, 80, 60, 40, 20, 0]
const cycle = [...quarter, ...quarter.map((load) => -load)]

/** `moved` is added to the deflection of each row. */
const run = (moved: (row: number) => number, seed = 1, cycles = 2): Columns => {
  const loads = [0, ...Array.from({ length: cycles }, () => cycle).flat()]
  const generator = random(seed)
  const shown = loopOf({ compliance: 1 / 4000, freePlay: PLAY, friction: 3 }, loads).map(
    (angle, row) => Math.round((angle + moved(row) + 2e-5 * normal(generator)) / 1e-5) * 1e-5,
  )
  return { load: column('moment', loads, 0.1), deflection: column('angle', shown, 1e-5) }
}
const still = () => 0
/** After the positive half of the first cycle. */
const slip = (by: number) => (row: number) => (row > quarter.length ? by : 0)
const said = (columns: Columns) => bars(bench, columns, measured(bench, columns)).join(' ')
const remarks = (columns: Columns) => {
  const { measures, givens, selection } = measured(bench, columns)
  return method.conditions(measures, columns, givens, selection, 0.95)
}
const notes = (columns: Columns) =>
  remarks(columns)
    .filter(({ effect }) => effect === 'note')
    .map(({ text }) => text)
    .join(' ')
const play = (columns: Columns) => measured(bench, columns).measures.free_play?.value ?? Number.NaN

describe('a clamp that slips', () => {
  test('hides half of the slip from the play, and the run says so', () => {
    const columns = run(slip(PLAY))
    expect(play(columns) / PLAY).toBeCloseTo(0.5, 1)
    expect(said(columns)).toContain('does not come back')
  })
  test('the other way it adds as much', () => {
    const columns = run(slip(-PLAY))
    expect(play(columns) / PLAY).toBeCloseTo(1.5, 1)
    expect(said(columns)).toContain('does not come back')
  })
  test('between the cycles, and a dial that walks all the time', () => {
    expect(said(run((row) => (row > cycle.length ? PLAY : 0)))).toContain('does not come back')
    expect(said(run((row) => (PLAY * row) / cycle.length))).toContain('does not come back')
  })
  test('bars play and friction, not the slopes', () => {
    const columns = run(slip(PLAY))
    const barred = remarks(columns).find(({ text }) => text.includes('does not come back'))?.measures
    expect(barred).toContain('free_play')
    expect(barred).toContain('friction')
    expect(barred).not.toContain('stiffness')
  })
})

describe('a circuit that comes back', () => {
  test('is barred in at most 2 of 100 runs', () => {
    const count = 300
    const alarms = Array.from({ length: count }, (_, seed) => said(run(still, seed + 1))).filter((text) =>
      text.includes('does not come back'),
    )
    expect(alarms.length / count).toBeLessThanOrEqual(0.02)
  })
  test('a slip of a twentieth of the play is of no account', () => {
    expect(said(run(slip(PLAY / 20)))).not.toContain('does not come back')
  })
  test('one cycle shows nothing, and the run says so', () => {
    const columns = run(slip(PLAY), 1, 1)
    expect(said(columns)).not.toContain('does not come back')
    expect(notes(columns)).toContain('one cycle alone')
    expect(notes(run(still))).not.toContain('one cycle alone')
  })
})
