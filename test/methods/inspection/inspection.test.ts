import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { method } from '../../../src/methods/inspection/index.ts'
import { measureRun } from '../../../src/methods/measure.ts'
import type { Columns, Instruments } from '../../../src/methods/method.ts'
import { standardUncertainty } from '../../../src/quantity/quantity.ts'
import type { Quantity } from '../../../src/quantity/types.ts'

const [field] = method.schema.cardFields
const read = field?.read({
  webbing: { text: 'webbing free of cuts' },
  buckle: { text: 'buckle opens' },
  lap_torque: { text: 'lap anchor', low: '22 N·m', high: '27 N·m' },
  strap_angle: { text: 'shoulder strap', high: '30 deg' },
})
if (!read?.ok) throw new Error('the checklist of the test cannot be read')
const fields = { checklist: read.value }
const givens = { numbers: {}, words: {}, fields }

const text = (texts: string[]) => ({
  values: new Float64Array(texts.length).fill(Number.NaN),
  texts,
  dim: [0, 0, 0, 0, 0, 0] as const,
  resolution: 0,
})
const table = (rows: readonly (readonly [string, string, string])[]): Columns => ({
  entry: text(rows.map(([entry]) => entry)),
  as_left: text(rows.map(([, answer]) => answer)),
  unit: text(rows.map(([, , unit]) => unit)),
})
const measured = (columns: Columns, instruments: Instruments = {}) => {
  const schema = method.describe?.(fields, Object.keys(columns)) ?? method.schema
  const input = { runId: 'one', method, schema, columns, instruments, inputs: {}, words: {}, fields }
  const result = measureRun(input)
  if (!result.ok) throw new Error(result.error)
  return result.value.measures
}
const u = (quantity: Quantity | undefined) => quantity && standardUncertainty(quantity)

const rows = [
  ['webbing', 'ok', '-'],
  ['buckle', 'n/a', '-'],
  ['lap_torque', '24.0', 'N·m'],
  ['strap_angle', '12', 'deg'],
] as const

describe('values', () => {
  test('carry the digit that was written: 0.1 N·m/√12, 1°/√12 (GUM F.2.2.1)', () => {
    const measures = measured(table(rows))
    expect(measures.lap_torque?.value).toBe(24)
    expect(u(measures.lap_torque)).toBeCloseTo(0.1 / Math.sqrt(12), 12)
    expect(u(measures.strap_angle)).toBeCloseTo(Math.PI / 180 / Math.sqrt(12), 12)
    expect(measures.strap_angle?.dim).toEqual([0, 0, 0, 0, 0, 1])
  })

  test('and the instrument that the run names: 4 % of reading as limits is 24 · 0.04/√3', () => {
    const wrench = {
      id: 'tw',
      label: 'wrench',
      resolution: 0.1,
      gain: 0.04 / Math.sqrt(3),
      offset: 0,
      linearity: 0,
      hysteresis: 0,
      drift: 0,
      shape: 'rectangular' as const,
    }
    const expected = Math.hypot(0.1 / Math.sqrt(12), (24 * 0.04) / Math.sqrt(3))
    expect(u(measured(table(rows), { lap_torque: wrench }).lap_torque)).toBeCloseTo(expected, 12)
    const unknown = measured(table(rows), { lap_torque: { ...wrench, gain: null, offset: null } })
    expect(unknown.lap_torque?.parts).toBeNull()
  })
})

describe('counts', () => {
  test('are exact, and open entries bar a pass', () => {
    const columns = table([rows[0], ['lap_torque', '27.5', 'N·m'], ['buckle', '-', '-']])
    const measures = measured(columns)
    expect(measures.not_ok).toMatchObject({ value: 1, parts: {} })
    expect(measures.open?.value).toBe(2)
    const remarks = method.conditions(measures, columns, givens, {}, 0.95)
    expect(remarks[0]).toMatchObject({ effect: 'bars-pass', text: expect.stringContaining('2 of 4 entries') })
    expect(method.openItems?.(measures, columns, givens).map(({ id }) => id)).toEqual([
      'buckle',
      'strap-angle',
    ])
  })

  test('a value on its limit is inside, one beyond is not; the limit in other units is the same', () => {
    expect(measured(table([['lap_torque', '27', 'N·m']])).not_ok?.value).toBe(0)
    expect(measured(table([['lap_torque', '27.01', 'N·m']])).not_ok?.value).toBe(1)
    // 27 N·m = 238.97 lbf·in (1 lbf·in = 0.1129848 N·m)
    expect(measured(table([['lap_torque', '238.9', 'lbf·in']])).not_ok?.value).toBe(0)
    expect(measured(table([['lap_torque', '239.0', 'lbf·in']])).not_ok?.value).toBe(1)
  })

  test('for any answers every entry is ok, not ok, not applicable or open, and never two of them', () => {
    const answer = fc.constantFrom('ok', 'not-ok', 'n/a', '-', '', 'yes', '12', 'OK')
    fc.assert(
      fc.property(fc.array(answer, { minLength: 2, maxLength: 2 }), ([webbing = '', buckle = '']) => {
        const measures = measured(
          table([['webbing', webbing, '-'], ['buckle', buckle, '-'], rows[2], rows[3]]),
        )
        const good = [webbing, buckle].filter((one) => one === 'ok' || one === 'n/a').length
        expect((measures.not_ok?.value ?? 0) + (measures.open?.value ?? 0) + good).toBe(2)
      }),
    )
  })
})

describe('what cannot be read', () => {
  const codes = (...given: (readonly [string, string, string])[]) =>
    method.validate?.(table(given), givens).map(({ code }) => code)

  test('an unknown entry, an entry twice, ok for a value, a value without unit or of another kind', () => {
    expect(codes(['webing', 'ok', '-'])).toEqual(['inspection/unknown-entry'])
    expect(codes(rows[0], rows[0])).toEqual(['inspection/twice'])
    expect(codes(['lap_torque', 'ok', '-'])).toEqual(['inspection/answer'])
    expect(codes(['lap_torque', '24', '-'])).toEqual(['inspection/answer'])
    expect(codes(['lap_torque', '24', 'kg'])).toEqual(['inspection/answer'])
    expect(codes(['webbing', '3', 'mm'])).toEqual(['inspection/answer'])
    expect(codes(...rows)).toEqual([])
  })

  test.each([
    [{}, 'names its entries'],
    [{ open: { text: 'door' } }, 'uses itself'],
    [{ 'Lap-1': { text: 'lap' } }, 'cannot be the name'],
    [{ lap: { low: '1 N·m' } }, 'needs a `text`'],
    [{ lap: { text: 'lap', min: '1 N·m' } }, 'has no `min`'],
    [{ lap: { text: 'lap', low: '27 N·m', high: '22 N·m' } }, 'not above'],
    [{ lap: { text: 'lap', low: '22 N·m', high: '27 N' } }, 'different kinds'],
  ])('checklist %j', (raw, words) => {
    const result = field?.read(raw)
    expect(result?.ok).toBe(false)
    if (result && !result.ok) expect(result.error[0]?.message).toContain(words)
  })
})

test('a rehearsed inspection is in order, and its faults are counted', () => {
  const good = measured(method.rehearse(givens, {}, {}, 1))
  expect([good.not_ok?.value, good.open?.value]).toEqual([0, 0])
  const bad = measured(method.rehearse(givens, { not_ok: 1, open: 1, lap_torque: 40 }, {}, 1))
  expect([bad.not_ok?.value, bad.open?.value]).toEqual([2, 1])
})

describe('advice', () => {
  const said = (columns: Columns) =>
    (method.advise?.(measured(columns), [], givens, columns) ?? []).map(({ text }) => text).join('\n')
  test('names what is open, what to mend, and by how much a value is off', () => {
    const text = said(
      table([
        ['webbing', 'not-ok', '-'],
        ['buckle', '-', '-'],
        ['lap_torque', '27.5', 'N·m'],
        ['strap_angle', '12', 'deg'],
      ]),
    )
    expect(text).toMatch(/Still to be looked at[^\n]*`buckle` \(buckle opens\)\./)
    expect(text).toMatch(/To be mended[^\n]*`webbing` \(webbing free of cuts\)/)
    expect(text).toMatch(/`lap_torque` was left at 27.5 N·m, 0.5 N·m above its limit of 27 N·m/)
    expect(text).not.toMatch(/strap_angle/)
  })
  test('says nothing of a list that is done', () => {
    expect(said(table(rows))).toBe('')
  })
})
