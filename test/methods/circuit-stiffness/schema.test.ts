/** The schema for one card and run, and the checks of what is written. Expectations follow from the design's words. */
import { expect, describe as group, test } from 'vitest'
import method from '../../../src/methods/circuit-stiffness/index.ts'
import { describe, schema } from '../../../src/methods/circuit-stiffness/schema.ts'
import { KINDS, type Kind } from '../../../src/quantity/kinds.ts'
import { type Bench, column, given, givensFor, measured } from './bench.ts'

const names = (fields: readonly { readonly name: string }[]) => fields.map((field) => field.name)

test('stations bring their columns, ratios, compliances and shares, from load to fixture', () => {
  const own = describe({ stations: ['horn', 'stick'] })
  expect(names(own.columns)).toEqual(expect.arrayContaining(['at_horn', 'at_stick', 'at_fixture']))
  expect(names(own.givens)).toEqual(expect.arrayContaining(['ratio_horn', 'ratio_stick', 'ratio_fixture']))
  expect(names(own.measures)).toEqual(
    expect.arrayContaining(['compliance_load_horn', 'compliance_horn_stick', 'share_stick_fixture']),
  )
  expect(own.columns.find((field) => field.name === 'at_horn')?.required).toBe(true)
  expect(names(schema.columns)).toContain('at_<station>')
})

group('one kind for each measure once the readings are known', () => {
  const dims = (load: Kind, deflection: Kind) => ({
    load: KINDS[load].dim,
    deflection: KINDS[deflection].dim,
  })
  const playOf = (own: ReturnType<typeof describe>) =>
    own.measures.find((field) => field.name === 'free_play')
  test('force and length without an arm: lengths, and no angular stiffness', () => {
    const own = describe({}, [], dims('force', 'length'), [])
    expect(playOf(own)?.kind).toBe('length')
    expect(names(own.measures)).not.toContain('surface_stiffness')
  })
  test('with an arm, or a moment with an angle: angles', () => {
    expect(playOf(describe({}, [], dims('force', 'length'), ['arm']))?.kind).toBe('angle')
    expect(playOf(describe({}, [], dims('moment', 'angle')))?.kind).toBe('angle')
  })
  test('not known yet: both', () => {
    expect(playOf(describe({}, [], dims('force', 'length')))?.or).toEqual(['length'])
  })
})

test.each([
  ['no list', 'horn'],
  ['an empty list', []],
  ['a capital letter', ['Horn']],
  ['the name of an end', ['load']],
  ['a name twice', ['horn', 'horn']],
])('stations that are %s are refused', (_, raw) => {
  const result = schema.cardFields[0]?.read(raw)
  expect(result?.ok).toBe(false)
  expect(!result?.ok && result?.error[0]?.code).toBe('circuit-stiffness/stations')
})

group('what cannot be combined is an error, never a guess', () => {
  const load = [10, 20, 30, 20, 10]
  const codes = (
    loadKind: Kind,
    motionKind: Kind,
    inputs: Bench['inputs'],
    values = load.map((x) => x * 1e-4),
  ) =>
    (
      method.validate?.(
        { load: column(loadKind, load), deflection: column(motionKind, values) },
        givensFor({ inputs: { limit_load: given(30, loadKind), ...inputs }, instruments: {} }),
      ) ?? []
    ).map((fault) => fault.code)

  test('force and angle without an arm', () => {
    expect(codes('force', 'angle', {})).toEqual(['circuit-stiffness/arm-needed'])
    expect(codes('force', 'angle', { arm: given(0.4, 'length') })).toEqual([])
  })
  test('moment and length without an arm', () => {
    expect(codes('moment', 'length', {})).toEqual(['circuit-stiffness/arm-needed'])
  })
  test('a travel in degrees beside lengths without an arm', () => {
    expect(codes('force', 'length', { full_travel: given(0.4, 'angle') })).toEqual([
      'circuit-stiffness/kinds-mixed',
    ])
    expect(codes('force', 'length', { full_travel: given(0.4, 'angle'), arm: given(0.4, 'length') })).toEqual(
      [],
    )
  })
  test('a deflection as long as the arm', () => {
    expect(codes('force', 'length', { arm: given(0.002, 'length') })).toEqual([
      'circuit-stiffness/beyond-arm',
    ])
  })
  test('a load without a deflection is left out with a warning, and the rest computed', () => {
    expect(codes('moment', 'angle', {}, [1e-3, 2e-3, Number.NaN, 2e-3, 1e-3])).toEqual([
      'circuit-stiffness/half-a-reading',
    ])
  })
  test('a deflection against the load is refused in words', () => {
    const columns = {
      load: column('moment', load),
      deflection: column(
        'angle',
        load.map((x) => -x * 1e-4),
      ),
    }
    expect(() => measured({ inputs: { limit_load: given(30, 'moment') }, instruments: {} }, columns)).toThrow(
      'the deflection falls while the load rises',
    )
  })
  test('no readings, one reading, one load: a sentence, no number', () => {
    for (const values of [[], [5], [5, 5, 5]]) {
      const columns = { load: column('moment', values), deflection: column('angle', values) }
      expect(() =>
        measured({ inputs: { limit_load: given(30, 'moment') }, instruments: {} }, columns),
      ).toThrow('no branch has two readings')
    }
  })
})

test('a travel in degrees beside lengths with an arm is compared as angles', () => {
  const load = [0, 10, 20, 30, 20, 10, 0, -10, -20, -30, -20, -10, 0]
  const columns = {
    load: column('force', load),
    deflection: column(
      'length',
      load.map((x) => x * 1e-3),
    ),
  }
  const inputs = {
    limit_load: given(30, 'force'),
    arm: given(0.5, 'length'),
    full_travel: given(0.4, 'angle'),
  }
  // By hand: asin(0.03/0.5)/0.4.
  expect(measured({ inputs, instruments: {} }, columns).measures.travel_lost?.value).toBeCloseTo(
    Math.asin(0.06) / 0.4,
    12,
  )
})

test('figures: the loop with limit loads and one line a branch, axes with their kind', () => {
  const load = [0, 10, 20, 30, 20, 10, 0, -10, -20, -30, -20, -10, 0]
  const columns = {
    load: column('moment', load),
    deflection: column(
      'angle',
      load.map((x) => x * 1e-3),
    ),
  }
  const bench: Bench = { inputs: { limit_load: given(30, 'moment') }, instruments: {} }
  const of = measured(bench, columns)
  const [loop, rest] = method.figures(of.measures, columns, givensFor(bench), of.selection)
  expect(loop?.x.kind).toBe('moment')
  expect(loop?.limits.map((limit) => limit.at)).toEqual([30, -30])
  expect(loop?.series.filter((series) => series.mark === 'line').length).toBe(4)
  expect(rest?.y.kind).toBe('angle')
})
