/** The engine on a method made for the purpose: a slope of y on time, and a mean, both over a factor. */
import { describe, expect, it } from 'vitest'
import { IDEAL } from '../../src/methods/as-shown.ts'
import { type MeasureInput, measureRun } from '../../src/methods/measure.ts'
import type { ColumnField, InstrumentModel, Method, Schema } from '../../src/methods/method.ts'
import { simulateMeasures } from '../../src/methods/monte-carlo.ts'
import { fitLine } from '../../src/quantity/fit.ts'
import { correlation, effectiveDof, exact, standardUncertainty } from '../../src/quantity/quantity.ts'
import { normal, random } from '../../src/quantity/random.ts'
import type { Dimension, Quantity } from '../../src/quantity/types.ts'

const LENGTH: Dimension = [1, 0, 0, 0, 0, 0]
const TIME: Dimension = [0, 0, 1, 0, 0, 0]

const column = (name: string, more: Partial<ColumnField>): ColumnField => ({
  name,
  meaning: name,
  kind: 'length',
  required: true,
  ramp: 'time',
  hold: false,
  instrument: 'optional',
  ...more,
})

const schemaWith = (more: Partial<ColumnField>): Schema => ({
  givens: [],
  columns: [column('time', { kind: 'time', ramp: 'none', instrument: 'none' }), column('y', more)],
  measures: [
    { name: 'slope', meaning: 'slope', kind: 'speed' },
    { name: 'middle', meaning: 'mean', kind: 'length' },
  ],
  cardFields: [],
})

const method = (schema: Schema): Method => ({
  id: 'made-up',
  title: 'made up',
  question: 'how steep?',
  cautions: [],
  schema,
  select: () => ({}),
  estimate: (columns, givens) => {
    const fit = fitLine(columns.time?.values ?? [], columns.y?.values ?? [])
    const factor = givens.numbers.factor ?? 1
    const part = (u: number) => ({ u: u * factor, dof: fit.dof, pool: 'line', shape: 't' as const })
    return {
      ok: true,
      value: {
        values: { slope: fit.slope * factor, middle: fit.atMean * factor },
        scatter: { slope: { slope: part(fit.uSlope) }, middle: { level: part(fit.uMean) } },
        residual: { y: fit.residual },
      },
    }
  },
  conditions: () => [],
  rehearse: () => ({}),
  figures: () => [],
})

const gauge = (more: Partial<InstrumentModel>): InstrumentModel => ({
  ...IDEAL,
  id: 'dial@2026-01-01',
  label: 'dial',
  shape: 'rectangular',
  ...more,
})

type Case = {
  y: number[]
  model?: Partial<InstrumentModel>
  field?: Partial<ColumnField>
  resolution?: number
  factor?: Quantity
}

const inputFor = ({ y, model, field, resolution = 0, factor }: Case): MeasureInput => {
  const schema = schemaWith(field ?? {})
  return {
    runId: 'run',
    method: method(schema),
    schema,
    columns: {
      time: { values: Float64Array.from(y, (_, row) => row * 10), dim: TIME, resolution: 0 },
      y: { values: Float64Array.from(y), dim: LENGTH, resolution },
    },
    instruments: model ? { y: gauge(model) } : {},
    inputs: factor ? { factor } : {},
    words: {},
    fields: {},
  }
}

const measure = (each: Case) => {
  const result = measureRun(inputFor(each))
  if (!result.ok) throw new Error(result.error)
  return result.value.measures as { slope: Quantity; middle: Quantity }
}

const u = (quantity: Quantity): number => standardUncertainty(quantity) ?? Number.NaN

const straight = Array.from({ length: 11 }, (_, row) => 1 + row / 10)
const flat = Array.from({ length: 11 }, () => 5)

describe('what an instrument contributes', () => {
  it('a gain scales the slope, an offset moves the mean only', () => {
    const gained = measure({ y: straight, model: { gain: 0.01 } })
    expect(u(gained.slope)).toBeCloseTo(0.01 * 0.01, 12)
    const shifted = measure({ y: straight, model: { offset: 0.2 }, field: { ramp: 'time' } })
    expect(u(shifted.middle)).toBeCloseTo(0.2, 12)
    expect(u(shifted.slope)).toBeCloseTo(0, 12)
  })
  it('a span figure without linearity puts a·√(2/3) over the range on a slope over the own range (design, judging)', () => {
    const a = 0.3
    const result = measure({
      y: straight,
      model: { offset: a / Math.sqrt(3), linearity: null },
      field: { ramp: 'own' },
    })
    // The ramp runs over the whole range of y, 1 to 2, in 100 s.
    expect(u(result.slope)).toBeCloseTo((a * Math.sqrt(2 / 3)) / 100, 12)
  })
  it('non-linearity that is stated apart moves a mean as well as a slope', () => {
    const apart = measure({ y: flat, model: { linearity: 0.2 }, field: { ramp: 'own' } })
    expect(u(apart.middle)).toBeCloseTo(0.2, 12)
    expect(u(apart.slope)).toBeCloseTo(0, 12)
  })
  it('drift is a ramp in time', () => {
    expect(u(measure({ y: flat, model: { drift: 2e-4 } }).slope)).toBeCloseTo(2e-4, 14)
  })
  it('what is not stated makes not known only what depends on it', () => {
    const result = measure({ y: flat, model: { drift: null }, field: { hold: true } })
    expect(result.slope.parts).toBeNull()
    expect(result.slope.why).toEqual(['dial states no drift'])
    const offset = measure({ y: flat, model: { offset: null } })
    expect(offset.slope.parts).not.toBeNull()
    expect(offset.middle.parts).toBeNull()
  })
})

describe('resolution', () => {
  it('identical readings never give zero uncertainty: r/(√6·span) on a slope, r/√12 on a mean (GUM F.2.2.1)', () => {
    const result = measure({ y: flat, resolution: 0.1 })
    expect(u(result.slope)).toBeCloseTo(0.1 / Math.sqrt(6) / 100, 12)
    expect(u(result.middle)).toBeCloseTo(0.1 / Math.sqrt(12), 12)
  })
  it('averages out only where the readings scatter by half a digit or more', () => {
    const gaussian = random(3)
    const noisy = Array.from({ length: 40 }, () => 5 + 0.2 * normal(gaussian))
    const sources = (y: number[]) => Object.keys(measure({ y, resolution: 0.1 }).slope.parts ?? {})
    expect(sources(noisy).some((source) => source.startsWith('resolution:'))).toBe(false)
    expect(sources(flat).some((source) => source.startsWith('resolution:'))).toBe(true)
  })
})

describe('sources', () => {
  const factor: Quantity = {
    value: 2,
    dim: [0, 0, 0, 0, 0, 0],
    parts: { 'given:card:c/factor': { u: 0.1, dof: 4, pool: 'given:card:c/factor', shape: 'normal' } },
    why: [],
  }
  it('a given acts on all that it enters, and correlates it', () => {
    const { slope, middle } = measure({ y: straight, factor })
    expect(u(slope)).toBeCloseTo(0.01 * 0.1, 10)
    expect(correlation(slope, middle)).toBeCloseTo(1, 6)
    expect(effectiveDof(slope)).toBeCloseTo(4, 6)
  })
  it('a given without uncertainty makes the measures not known', () => {
    const unknown: Quantity = {
      value: 2,
      dim: [0, 0, 0, 0, 0, 0],
      parts: null,
      why: ['factor is given without ±'],
    }
    expect(measure({ y: straight, factor: unknown }).slope).toMatchObject({
      parts: null,
      why: ['factor is given without ±'],
    })
  })
  it('an exact given adds nothing', () => {
    expect(u(measure({ y: straight, factor: exact(2, [0, 0, 0, 0, 0, 0]) }).slope)).toBeCloseTo(0, 12)
  })
  it('the scatter of a fit is its standard error with n − 2 degrees of freedom', () => {
    const gaussian = random(8)
    const y = straight.map((value) => value + 0.05 * normal(gaussian))
    const fit = fitLine(
      y.map((_, row) => row * 10),
      y,
    )
    const { slope } = measure({ y })
    expect(u(slope)).toBeCloseTo(fit.uSlope, 12)
    expect(effectiveDof(slope)).toBeCloseTo(9, 9)
  })
})

describe('Monte Carlo on the same function (JCGM 101)', () => {
  it('agrees with first order for a nearly linear measure', () => {
    const factor: Quantity = {
      value: 2,
      dim: [0, 0, 0, 0, 0, 0],
      parts: { f: { u: 0.05, dof: Number.POSITIVE_INFINITY, pool: 'f', shape: 'normal' } },
      why: [],
    }
    const input = inputFor({
      y: straight,
      model: { gain: 0.02, offset: 0.05, drift: 1e-4 },
      resolution: 0.1,
      factor,
    })
    const first = measureRun(input)
    if (!first.ok) throw new Error(first.error)
    const simulated = simulateMeasures(input, first.value, 20_000, 5)
    for (const name of ['slope', 'middle']) {
      const quantity = first.value.measures[name] as Quantity
      expect(Math.abs((simulated[name]?.u ?? 0) / u(quantity) - 1)).toBeLessThan(0.03)
      expect(Math.abs((simulated[name]?.mean ?? 0) - quantity.value)).toBeLessThan(0.05 * u(quantity))
    }
  })
})
