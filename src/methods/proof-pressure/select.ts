/** Which rows carry what: chosen once from the readings as they are, and held fixed when they are perturbed. */
import { longestHold, sustainedPeak } from '../hold.ts'
import type { Columns, Givens } from '../method.ts'
import { type Carrying, carryingOf } from './carrying.ts'
import { type Bulging, type Channel, type Choice, softeningInputs } from './choice.ts'
import { apartOf, type Loading, loadingsOf, type Step, stepsOf, topOf } from './loadings.ts'
import { at, digitOf, movementOf, over, signOf, stationsOf, suffixOf, targetOf } from './readings.ts'
import { type Spread, spreadOf } from './scatter.ts'
import { FEWEST_DIGITS, type Pair, worstSpan } from './softening.ts'
import { estimateStation } from './station.ts'

/** Unloaded rows from `wait` after the last loaded one on. */
const rested = (
  columns: Columns,
  givens: Givens,
  loaded: readonly number[],
  after: readonly number[],
): number[] => {
  const off = at(columns.time, after[0] ?? loaded.at(-1) ?? 0)
  return after.filter((row) => at(columns.time, row) - off >= (givens.numbers.wait ?? 0))
}

/** Levels of both loadings that lie nearer than a quarter of the way to their neighbours. */
const pairsOf = (pressure: Float64Array, first: readonly Step[], second: readonly Step[]): Pair[] => {
  const levels = first.map((step) => over(pressure, step))
  return first.flatMap((step, k) => {
    const level = levels[k] ?? Number.NaN
    const gaps = [levels[k - 1] ?? 0, levels[k + 1] ?? Number.NaN].map((other) => Math.abs(level - other))
    const room = Math.min(...gaps.filter((gap) => !Number.isNaN(gap))) / 4
    const off = (other: Step) => Math.abs(over(pressure, other) - level)
    const near = second.filter((other) => off(other) <= room).sort((a, b) => off(a) - off(b))[0]
    return near ? [{ first: step, second: near }] : []
  })
}

type Frame = {
  readonly loadings: readonly Loading[]
  readonly after: readonly number[]
  readonly carrying: Carrying | null
  readonly pressureSpread: Spread
  readonly stations: number
}

/** The levels on either side of the target; of the highest one all of the hold. */
const bulging = (
  columns: Columns,
  givens: Givens,
  steps: readonly Step[],
  before: readonly number[],
  held: readonly number[],
): Bulging => {
  const pressure = columns.pressure?.values ?? new Float64Array()
  const short = (step: Step) => signOf(givens) * over(pressure, step) < 0.99 * Math.abs(targetOf(givens))
  return {
    before,
    below: steps.filter(short).at(-1) ?? before,
    above: steps.slice(0, -1).find((step) => !short(step)) ?? held,
  }
}

const channelOf = (columns: Columns, givens: Givens, name: string, frame: Frame): Channel => {
  const { loadings, carrying, pressureSpread } = frame
  const movement = movementOf(columns, name)
  const pressure = columns.pressure?.values ?? new Float64Array()
  const read = (rows: readonly number[]) => rows.filter((row) => !Number.isNaN(movement[row] ?? Number.NaN))
  const steps = loadings.map((loading) =>
    stepsOf(columns, givens, loading)
      .map(read)
      .filter((step) => step.length > 0),
  )
  const carrier = carrying?.loading ?? 0
  const zero = read(loadings[0]?.before ?? [])
  const before = carrier === 0 ? zero : read(loadings[carrier]?.before ?? [])
  const held = read(carrying?.rows ?? [])
  const zeros = [...loadings.map((loading) => read(loading.before)), read(frame.after)]
  const holds = loadings.map((loading) => read(topOf(columns, givens, loading)))
  const spread = spreadOf(movement, [...zeros, ...holds, ...steps.flatMap((all) => all.slice(0, -1))])
  const bulge = over(movement, held) - over(movement, before)
  const digit = digitOf(columns, name)
  const digits = digit > 0 ? Math.abs(bulge) / digit : Number.POSITIVE_INFINITY
  const enough = digits >= FEWEST_DIGITS && loadings.length > 1
  const again = read(loadings[1]?.before ?? [])
  const unloaded = zero.length > 0 && again.length > 0 ? [{ first: zero, second: again }] : []
  const pairs = enough ? [...unloaded, ...pairsOf(pressure, steps[0] ?? [], steps[1] ?? [])] : []
  const inputs = softeningInputs(columns, { name, spread }, { pressureSpread })
  return {
    name,
    suffix: suffixOf(name),
    direction: bulge < 0 ? -1 : 1,
    zero,
    ...bulging(columns, givens, steps[carrier] ?? [], before, held),
    held,
    after: read(rested(columns, givens, loadings.at(-1)?.loaded ?? [], frame.after)),
    again: loadings.length > 1 ? bulging(columns, givens, steps[1] ?? [], again, holds[1] ?? []) : null,
    spread,
    pairs,
    span: worstSpan(inputs, pairs, frame.stations),
    digits,
  }
}

export const select = (columns: Columns, givens: Givens): Choice => {
  const sign = signOf(givens)
  const level = Math.abs(targetOf(givens))
  const along = (columns.pressure?.values ?? new Float64Array()).map((value) => sign * value)
  const guard = columns.pressure_guard
  const sure = (row: number) => level + (guard ? at(guard, row) : 0)
  const input = {
    time: columns.time?.values ?? new Float64Array(),
    values: along,
    maxGap: givens.numbers.max_gap,
    hold: givens.numbers.hold ?? 0,
    apart: apartOf(columns, givens),
  }
  const peak = sustainedPeak(input)
  const held = longestHold(input, sure)
  const { loadings, after } = loadingsOf(columns, givens)
  const carrying = carryingOf(input, loadings, level, sure)
  const pressureSpread = spreadOf(along, [carrying?.rows ?? []])
  const names = stationsOf(Object.keys(columns))
  const frame = { loadings, after, carrying, pressureSpread, stations: names.length }
  const channels = names.map((name) => channelOf(columns, givens, name, frame))
  const choice = { sign, pressureSpread, channels }
  const found = channels.map((channel) => estimateStation(columns, givens, choice, channel).values)
  const largest = (measure: string) => {
    const values = found
      .map((one) => one[measure] ?? Number.NaN)
      .map((value) => (Number.isNaN(value) ? -Infinity : value))
    return Math.max(0, values.indexOf(Math.max(...values)))
  }
  return {
    ...choice,
    peak,
    held,
    possible: longestHold(input, (row) => 2 * level - sure(row)),
    guarded: !guard?.values.some(
      (value, row) => Number.isNaN(value) && !Number.isNaN(along[row] ?? Number.NaN),
    ),
    loadings: loadings.length,
    worst: Object.fromEntries(
      ['bulge', 'second_bulge', 'compliance', 'set', 'creep', 'softening'].map((name) => [
        name,
        largest(name),
      ]),
    ),
  }
}
