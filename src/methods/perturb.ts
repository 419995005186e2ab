/**
 * The sources of uncertainty of one run, each as movements of the inputs by its standard uncertainty.
 * One source may act on several columns and givens at once: what shares a source moves together, so
 * correlation is right without anyone thinking of it (JCGM 100, 5.2 and F.1.2.3).
 */
import type { Quantity, Shape } from '../quantity/types.ts'
import type { Column, ColumnField, Columns, InstrumentModel } from './method.ts'
import {
  alongColumn,
  directions,
  type Inputs,
  type Movement,
  moveGiven,
  movement,
  timeOf,
} from './movements.ts'

/** What one source does to one column or given; all actions under one source name happen together. */
export type Action = {
  readonly source: string
  readonly shape: Shape
  readonly dof: number
  readonly pool: string
  /** Set where the size is not known: the action is then only a probe that shows which measures depend on it. */
  readonly unknown?: string
  readonly movement: Movement
  /** How far one standard uncertainty moves; the sign is that of the correlation. */
  readonly size: number
}

const SQRT2 = Math.SQRT2
/** Resolution r: a mean carries r/√12, the difference of two ends r/√6 (GUM F.2.2.1, twice). */
const RESOLUTION_OFFSET = 1 / Math.sqrt(12)
const RESOLUTION_RAMP = 1 / Math.sqrt(6)

/** A percentage of a temperature reading is one of degrees Celsius, not of kelvins. */
const readingZero = (field: ColumnField): number => (field.kind === 'temperature' ? 273.15 : 0)

/** All readings alike: a single reading, or several of the same thing. */
const isLevel = (values: Float64Array): boolean =>
  values.every((value) => Number.isNaN(value) || value === values[0])

const instrumentActions = (
  field: ColumnField,
  column: Column,
  columns: Columns,
  model: InstrumentModel,
): Action[] => {
  const { name } = field
  const actions: Action[] = []
  const add = (what: string, size: number | null, probe: number, missing: string, movement: Movement) => {
    if (size === 0) return
    const source = `instrument:${model.id}/${what}`
    actions.push({
      source,
      pool: source,
      shape: model.shape,
      dof: Number.POSITIVE_INFINITY,
      ...(size === null ? { unknown: missing } : {}),
      movement,
      size: size ?? probe,
    })
  }
  const digit = model.resolution > 0 ? model.resolution : 1
  const without = (what: string) => `${model.label} states no ${what}`
  const zero = readingZero(field)
  const shift = movement(name, 'shift', () => 1)
  add(
    'gain',
    model.gain,
    1e-3,
    without('accuracy'),
    movement(name, 'gain', (_, value) => value - zero),
  )
  add('offset', model.offset, digit, without('accuracy'), shift)
  if (model.calibration) add('calibration', model.calibration, 0, '', shift)
  if (field.ramp === 'own') {
    // Where no linearity is stated, the span figure of the accuracy also holds it: the two ends are then
    // independent, each with u, and their difference carries √2·u.
    const linearity = model.linearity ?? model.offset
    const own = alongColumn(field, column, columns)
    if (own)
      add('linearity', linearity === null ? null : SQRT2 * linearity, SQRT2 * digit, without('accuracy'), own)
    // Over no range there is no slope to move: then it moves the level of the one reading.
    if (model.linearity && isLevel(column.values)) add('linearity-level', model.linearity, 0, '', shift)
    if (model.hysteresis) {
      const direction = directions(column.values)
      const turn = movement(name, 'direction', (row) => direction[row] as number)
      add('hysteresis', model.hysteresis, 0, '', turn)
    }
  }
  const time = timeOf(columns)
  if (time && (field.hold || model.drift !== null)) {
    const start = time.find((t) => !Number.isNaN(t)) ?? 0
    const since = (row: number) => {
      const t = time[row] as number
      return Number.isNaN(t) ? 0 : t - start
    }
    const hold = Math.max(1, since(time.length - 1))
    add('drift', model.drift, digit / hold, without('drift'), movement(name, 'drift', since))
  }
  return actions
}

const rectangular = (source: string, movement: Movement, size: number): Action => ({
  source,
  pool: source,
  shape: 'rectangular',
  dof: Number.POSITIVE_INFINITY,
  movement,
  size,
})

const resolutionActions = (runId: string, field: ColumnField, column: Column, columns: Columns): Action[] => {
  const r = column.resolution
  if (!(r > 0)) return []
  const source = `resolution:${runId}/${field.name}`
  const shift = movement(field.name, 'shift', () => 1)
  const along = alongColumn(field, column, columns)
  return [
    rectangular(`${source}/offset`, shift, r * RESOLUTION_OFFSET),
    ...(along ? [rectangular(`${source}/ramp`, along, r * RESOLUTION_RAMP)] : []),
  ]
}

/** The zero shift found between the checks before and after, growing evenly over the rows; rectangular. */
const zeroActions = (runId: string, name: string, column: Column, shift: number): Action[] => {
  if (shift === 0) return []
  const last = Math.max(1, column.values.length - 1)
  const grow = movement(name, 'rows', (row) => row / last)
  return [rectangular(`zero:${runId}/${name}`, grow, Math.abs(shift) / Math.sqrt(3))]
}

const givenActions = (name: string, quantity: Quantity): Action[] => {
  const movement = moveGiven(name)
  if (quantity.parts === null) {
    const size = quantity.value === 0 ? 1e-6 : Math.abs(quantity.value) * 1e-3
    const source = `given:${name}/not-known`
    const unknown = quantity.why[0] ?? `${name} is given without an uncertainty`
    const dof = Number.POSITIVE_INFINITY
    return [{ source, pool: source, shape: 'normal', dof, unknown, movement, size }]
  }
  return Object.entries(quantity.parts).map(([source, { u, ...part }]) => ({
    source,
    ...part,
    movement,
    size: u,
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
    actions.push(...zeroActions(run.runId, field.name, column, run.zero[field.name] ?? 0))
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
