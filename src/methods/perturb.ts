/**
 * The sources of uncertainty of one run, each as a way to move the inputs by z standard uncertainties.
 * One source may act on several columns and givens at once: what shares a source moves together, so
 * correlation is right without anyone thinking of it (JCGM 100, 5.2 and F.1.2.3).
 */
import type { Quantity, Shape } from '../quantity/types.ts'
import type { Column, ColumnField, Columns, Givens, InstrumentModel } from './method.ts'

export type Inputs = { readonly columns: Columns; readonly givens: Givens }

/** Moves the inputs by z; several actions under one source name are applied together. */
export type Action = {
  readonly source: string
  readonly shape: Shape
  readonly dof: number
  readonly pool: string
  /** Set where the size is not known: the action is then only a probe that shows which measures depend on it. */
  readonly unknown?: string
  readonly apply: (inputs: Inputs, z: number) => Inputs
}

const SQRT2 = Math.SQRT2
/** Resolution r: a mean carries r/√12, the difference of two ends r/√6 (GUM F.2.2.1, twice). */
const RESOLUTION_OFFSET = 1 / Math.sqrt(12)
const RESOLUTION_RAMP = 1 / Math.sqrt(6)

export const moveColumn = (
  inputs: Inputs,
  name: string,
  by: (value: number, row: number) => number,
): Inputs => {
  const column = inputs.columns[name]
  if (!column) return inputs
  const values = column.values.map((value, row) => value + by(value, row))
  return { ...inputs, columns: { ...inputs.columns, [name]: { ...column, values } } }
}

const moveGiven = (inputs: Inputs, name: string, by: number): Inputs => ({
  ...inputs,
  givens: {
    ...inputs.givens,
    numbers: { ...inputs.givens.numbers, [name]: (inputs.givens.numbers[name] ?? Number.NaN) + by },
  },
})

/** −½ … +½ over the span of `along`; 0 everywhere where the span is empty. */
export const rampAlong = (along: ArrayLike<number>): ((row: number) => number) => {
  let low = Number.POSITIVE_INFINITY
  let high = Number.NEGATIVE_INFINITY
  for (let row = 0; row < along.length; row += 1) {
    const x = along[row] as number
    if (x < low) low = x
    if (x > high) high = x
  }
  const span = high - low
  if (!(span > 0)) return () => 0
  const middle = (low + high) / 2
  return (row) => {
    const x = along[row] as number
    return Number.isNaN(x) ? 0 : (x - middle) / span
  }
}

const timeOf = (columns: Columns): Float64Array | undefined => columns.time?.values

/** The abscissa along which a fit over this column runs: time, the column itself, or the row number. */
const abscissa = (field: ColumnField, column: Column, columns: Columns): ArrayLike<number> | null => {
  if (field.ramp === 'none') return null
  if (field.ramp === 'own') return column.values
  return timeOf(columns) ?? Float64Array.from(column.values, (_, row) => row)
}

/** +1 where the reading rises towards this row, −1 where it falls, as the last real movement was. */
const directions = (values: Float64Array): Int8Array => {
  const direction = new Int8Array(values.length)
  let last: -1 | 0 | 1 = 0
  for (let row = 1; row < values.length; row += 1) {
    const step = (values[row] as number) - (values[row - 1] as number)
    if (step > 0) last = 1
    else if (step < 0) last = -1
    direction[row] = last
  }
  if (direction.length > 1) direction[0] = direction[1] as number
  return direction
}

/** A percentage of a temperature reading is one of degrees Celsius, not of kelvins. */
const readingZero = (field: ColumnField): number => (field.kind === 'temperature' ? 273.15 : 0)

const instrumentActions = (
  field: ColumnField,
  column: Column,
  columns: Columns,
  model: InstrumentModel,
): Action[] => {
  const name = field.name
  const actions: Action[] = []
  const add = (
    what: string,
    size: number | null,
    probe: number,
    missing: string,
    by: (u: number) => (value: number, row: number) => number,
  ) => {
    if (size === 0) return
    const source = `instrument:${model.id}/${what}`
    const u = size ?? probe
    const move = by(u)
    actions.push({
      source,
      pool: source,
      shape: model.shape,
      dof: Number.POSITIVE_INFINITY,
      ...(size === null ? { unknown: missing } : {}),
      apply: (inputs, z) => moveColumn(inputs, name, (value, row) => z * move(value, row)),
    })
  }
  const digit = model.resolution > 0 ? model.resolution : 1
  const without = (what: string) => `${model.label} states no ${what}`
  const zero = readingZero(field)
  add('gain', model.gain, 1e-3, without('accuracy'), (u) => (value) => u * (value - zero))
  add('offset', model.offset, digit, without('accuracy'), (u) => () => u)
  if (model.calibration) add('calibration', model.calibration, 0, '', (u) => () => u)
  if (field.ramp === 'own') {
    // Where no linearity is stated, the span figure of the accuracy also holds it: the two ends are then
    // independent, each with u, and their difference carries √2·u.
    const ramp = rampAlong(column.values)
    add(
      'linearity',
      model.linearity ?? model.offset,
      digit,
      without('accuracy'),
      (u) => (_, row) => SQRT2 * u * ramp(row),
    )
    if (model.hysteresis) {
      const direction = directions(column.values)
      add('hysteresis', model.hysteresis, 0, '', (u) => (_, row) => u * (direction[row] as number))
    }
  }
  const time = timeOf(columns)
  if (time && (field.hold || model.drift !== null)) {
    const start = time.find((t) => !Number.isNaN(t)) ?? 0
    const since = (row: number) => {
      const t = time[row] as number
      return Number.isNaN(t) ? 0 : t - start
    }
    const hold = Math.max(1, ...[since(time.length - 1)])
    add('drift', model.drift, digit / hold, without('drift'), (u) => (_, row) => u * since(row))
  }
  return actions
}

const resolutionActions = (runId: string, field: ColumnField, column: Column, columns: Columns): Action[] => {
  const r = column.resolution
  if (!(r > 0)) return []
  const action = (what: string, by: (row: number) => number): Action => {
    const source = `resolution:${runId}/${field.name}/${what}`
    const apply = (inputs: Inputs, z: number) => moveColumn(inputs, field.name, (_, row) => z * by(row))
    return { source, pool: source, shape: 'rectangular', dof: Number.POSITIVE_INFINITY, apply }
  }
  const actions = [action('offset', () => r * RESOLUTION_OFFSET)]
  const along = abscissa(field, column, columns)
  if (along) {
    const ramp = rampAlong(along)
    actions.push(action('ramp', (row) => r * RESOLUTION_RAMP * ramp(row)))
  }
  return actions
}

/** The zero shift found between the checks before and after, growing evenly over the rows; rectangular. */
const zeroActions = (runId: string, name: string, shift: number): Action[] => {
  if (shift === 0) return []
  const source = `zero:${runId}/${name}`
  const u = Math.abs(shift) / Math.sqrt(3)
  const apply = (inputs: Inputs, z: number) => {
    const last = Math.max(1, (inputs.columns[name]?.values.length ?? 1) - 1)
    return moveColumn(inputs, name, (_, row) => (z * u * row) / last)
  }
  return [{ source, pool: source, shape: 'rectangular', dof: Number.POSITIVE_INFINITY, apply }]
}

const givenActions = (name: string, quantity: Quantity): Action[] => {
  if (quantity.parts === null) {
    const probe = quantity.value === 0 ? 1e-6 : Math.abs(quantity.value) * 1e-3
    const source = `given:${name}/not-known`
    const unknown = quantity.why[0] ?? `${name} is given without an uncertainty`
    const apply = (inputs: Inputs, z: number) => moveGiven(inputs, name, z * probe)
    return [{ source, pool: source, shape: 'normal', dof: Number.POSITIVE_INFINITY, unknown, apply }]
  }
  return Object.entries(quantity.parts).map(([source, part]) => ({
    source,
    pool: part.pool,
    shape: part.shape,
    dof: part.dof,
    apply: (inputs, z) => moveGiven(inputs, name, z * part.u),
  }))
}

export type SourcesInput = Inputs & {
  readonly runId: string
  readonly fields: readonly ColumnField[]
  readonly instruments: Readonly<Record<string, InstrumentModel>>
  readonly inputs: Readonly<Record<string, Quantity>>
  /** Shift of the unloaded reading over the test, by column, SI. */
  readonly zero: Readonly<Record<string, number>>
  /** Scatter of single readings about the fit: from half a digit on, resolution averages out. */
  readonly residual: Readonly<Record<string, number>>
}

/** All actions of a run, those of one source side by side in one list. */
export const sourcesOf = (run: SourcesInput): ReadonlyMap<string, readonly Action[]> => {
  const actions: Action[] = []
  for (const field of run.fields) {
    const column = run.columns[field.name]
    if (!column || field.kind === 'text') continue
    const model = run.instruments[field.name]
    if (model) actions.push(...instrumentActions(field, column, run.columns, model))
    const averagesOut = (run.residual[field.name] ?? 0) >= column.resolution / 2
    if (!averagesOut) actions.push(...resolutionActions(run.runId, field, column, run.columns))
    actions.push(...zeroActions(run.runId, field.name, run.zero[field.name] ?? 0))
  }
  for (const [name, quantity] of Object.entries(run.inputs)) actions.push(...givenActions(name, quantity))
  const bySource = new Map<string, Action[]>()
  for (const action of actions) {
    const same = bySource.get(action.source)
    if (same) same.push(action)
    else bySource.set(action.source, [action])
  }
  return bySource
}
