/**
 * What the readings themselves leave uncertain of each aggregate: scatter (JCGM 100, 4.2) and the digits that were
 * read (F.2.2.1). A single reading carries r/√12 always; a mean or slope only where the scatter is below half a digit,
 * and then in full, however many readings there are.
 */
import { newParts } from '../../quantity/quantity.ts'
import { mean } from '../../quantity/statistics.ts'
import type { Part } from '../../quantity/types.ts'
import { vonNeumann } from '../../quantity/von-neumann.ts'
import { FAST_ROWS, widening } from '../blocks.ts'
import type { Columns, Givens } from '../method.ts'
import type { Pick } from './select.ts'
import { aggregateValue, between, blocked, isMean, lineOf, taken, weightsOf } from './values.ts'

export type PartsByKey = Readonly<Record<string, Record<string, Part>>>

const DIGIT = 1 / Math.sqrt(12)
/** The difference of two ends: twice the variance of one. */
const TWO_DIGITS = 1 / Math.sqrt(6)

/** Residuals of one fit, and by what they are divided to give the standard uncertainty of its result. */
type Fit = {
  readonly key: string
  readonly column: string
  /** Fits of one group take the same rows: what scatters together in two columns stays together. */
  readonly group: string
  readonly residuals: Float64Array
  readonly divisor: number
  readonly dof: number
  /** By how much it is wider because neighbouring blocks are alike. */
  readonly wide: number
}

export type Scatter = {
  readonly dof: number
  /** Standard deviation of a single reading, or of a block of those logged fast. */
  readonly deviation: number
  /** Neighbours are alike (von Neumann ratio, 1 %), beyond what digits alone do. */
  readonly correlated: boolean
}

const digitOf = (columns: Columns, name: string | undefined): number => columns[name ?? '']?.resolution ?? 0

const deviationOf = ({ residuals, dof }: Fit): number =>
  dof > 0 ? Math.hypot(...residuals) / Math.sqrt(dof) : Number.NaN

const groupOf = (pick: Pick): string => {
  const { aggregate, rows } = pick
  const what = aggregate.name === 'slope' ? `slope ${aggregate.x?.name}` : 'mean'
  // Rows rise, so that their number, ends and sum tell two choices apart well enough to name them.
  const sum = rows.reduce((total, row) => total + row, 0)
  return `${what} ${rows.length} ${rows[0]} ${sum}`
}

const fitOf = (columns: Columns, pick: Pick): Fit | null => {
  const { aggregate, rows, refused } = pick
  const isSlope = aggregate.name === 'slope'
  if (refused || rows.length < 2 || !(isSlope || isMean(aggregate))) return null
  const y = blocked(taken(columns, aggregate.y.name, rows))
  const common = { key: aggregate.key, column: aggregate.y.name, group: groupOf(pick) }
  const wide = (residuals: Float64Array) => (rows.length > FAST_ROWS ? widening(Array.from(residuals)) : 1)
  if (isSlope) {
    const residuals = Float64Array.from(lineOf(columns, pick).residuals)
    const x = blocked(taken(columns, aggregate.x?.name, rows))
    const middle = mean(x)
    const dof = y.length - 2
    const divisor = Math.sqrt(dof) * Math.hypot(...x.map((each) => each - middle))
    return { ...common, residuals, dof, divisor, wide: wide(residuals) }
  }
  const middle = mean(y)
  const dof = y.length - 1
  const residuals = y.map((each) => each - middle)
  return { ...common, residuals, dof, divisor: Math.sqrt(dof * y.length), wide: wide(residuals) }
}

/** Null where there is no scatter to be had (a single reading, a count). */
export const scatterOf = (columns: Columns, pick: Pick): Scatter | null => {
  if (pick.aggregate.name === 'integral' && !pick.refused) {
    const { deviation, dof } = roughness(columns, pick)
    return { deviation, dof, correlated: false }
  }
  const fit = fitOf(columns, pick)
  if (!fit) return null
  const deviation = deviationOf(fit)
  // What digits, of the display or of the computer, leave is alike from row to row and says nothing.
  const size = taken(columns, fit.column, pick.rows).reduce(
    (most, value) => Math.max(most, Math.abs(value)),
    0,
  )
  const onlyDigits = deviation < Math.max(digitOf(columns, fit.column) / 2, 1e-9 * size)
  return { dof: fit.dof, deviation, correlated: !onlyDigits && vonNeumann(fit.residuals).correlated }
}

const dot = (a: Float64Array, b: Float64Array): number =>
  a.reduce((sum, value, i) => sum + value * (b[i] ?? 0), 0)

/**
 * Scatter of fits over the same rows, in orthogonal parts that share one pool: with u² as usual, and the covariance
 * of two columns that were read together, Σ e·f over the same divisors (JCGM 100, 5.2.3 and H.2).
 */
const together = (fits: readonly Fit[], name: string): PartsByKey => {
  const parts: Record<string, Record<string, Part>> = {}
  const basis: Float64Array[] = []
  for (const { key, residuals, divisor, dof, wide } of fits) {
    const own = newParts()
    let rest = residuals
    const add = (direction: number, length: number) => {
      const u = (wide * length) / divisor
      if (u !== 0) own[`${name}/${direction}`] = { u, dof, pool: name, shape: 't' }
    }
    for (const [k, axis] of basis.entries()) {
      const along = dot(rest, axis)
      rest = rest.map((value, i) => value - along * (axis[i] ?? 0))
      add(k, along)
    }
    const length = Math.hypot(...rest)
    if (length > 1e-9 * Math.hypot(...residuals)) {
      basis.push(rest.map((value) => value / length))
      add(basis.length - 1, length)
    }
    parts[key] = own
  }
  return parts
}

/**
 * Noise of readings on a smooth curve: what each inner reading is off the line between its neighbours. The effective
 * degrees of freedom are 18/35 of their number, since second differences share readings (correlations −2/3 and 1/6).
 * `sampling`: how far the area may be off because the curve is bent between readings, from what every second reading
 * alone would have given (a third of the difference; Richardson).
 */
const roughness = (
  columns: Columns,
  { aggregate, rows }: Pick,
): { readonly deviation: number; readonly dof: number; readonly sampling: number } => {
  const [x, y] = [taken(columns, aggregate.x?.name, rows), taken(columns, aggregate.y.name, rows)]
  let squares = 0
  let lost = 0
  for (let i = 1; i < rows.length - 1; i += 1) {
    const [a, b, c] = [x[i - 1] as number, x[i] as number, x[i + 1] as number]
    const share = (b - a) / (c - a)
    const off = (y[i] as number) - (1 - share) * (y[i - 1] as number) - share * (y[i + 1] as number)
    squares += off ** 2 / (1 + (1 - share) ** 2 + share ** 2)
    // The triangle that leaving this reading out would cut off; every second one is left out.
    if (i % 2 === 1) lost += (off * (c - a)) / 2
  }
  const inner = rows.length - 2
  return { deviation: Math.sqrt(squares / inner), dof: (18 / 35) * inner, sampling: Math.abs(lost) / 3 }
}

const digit = (column: string, key: string, u: number): Record<string, Part> => {
  const source = `resolution/${column}/${key}`
  return u === 0 ? {} : { [source]: { u, dof: Number.POSITIVE_INFINITY, pool: source, shape: 'rectangular' } }
}

const spanOf = (values: Float64Array): number =>
  values.reduce((most, value) => Math.max(most, value), Number.NEGATIVE_INFINITY) -
  values.reduce((least, value) => Math.min(least, value), Number.POSITIVE_INFINITY)

const digitsOf = (columns: Columns, givens: Givens, pick: Pick): Record<string, Part> => {
  const { aggregate, rows, refused } = pick
  const { key, name, y, x } = aggregate
  if (refused || name === 'count') return {}
  const [r, rx] = [digitOf(columns, y.name), digitOf(columns, x?.name)]
  const scatter = scatterOf(columns, pick)
  const averagesOut = scatter !== null && scatter.deviation >= r / 2
  switch (name) {
    case 'range': {
      const [high, low] = [DIGIT * r, -DIGIT * r]
      return { ...digit(y.name, `${key} high`, high), ...digit(y.name, `${key} low`, low) }
    }
    case 'slope': {
      const span = spanOf(taken(columns, x?.name, rows))
      const slope = aggregateValue(columns, givens, pick)
      const own = averagesOut ? 0 : (TWO_DIGITS * r) / span
      return { ...digit(y.name, key, own), ...digit(x?.name ?? '', key, (TWO_DIGITS * rx * slope) / span) }
    }
    case 'integral': {
      const span = spanOf(taken(columns, x?.name, rows))
      const height = aggregateValue(columns, givens, pick) / span
      return {
        ...digit(y.name, key, DIGIT * r * span),
        ...digit(x?.name ?? '', key, TWO_DIGITS * rx * height),
      }
    }
    case 'at': {
      if (isMean(aggregate)) return digit(y.name, key, averagesOut ? 0 : DIGIT * r)
      const { steepness } = between(columns, givens, pick)
      return { ...digit(y.name, key, DIGIT * r), ...digit(x?.name ?? '', key, DIGIT * rx * steepness) }
    }
    default:
      return digit(y.name, key, averagesOut ? 0 : DIGIT * r)
  }
}

const areaParts = (columns: Columns, pick: Pick): Record<string, Part> => {
  const { key, x } = pick.aggregate
  const { deviation, dof, sampling } = roughness(columns, pick)
  const weights = weightsOf(taken(columns, x?.name, pick.rows))
  const noise = deviation * Math.sqrt(dot(weights, weights))
  const bent = `sampling/${key}`
  return {
    ...(noise > 0 ? { [`area/${key}`]: { u: noise, dof, pool: `area/${key}`, shape: 't' as const } } : {}),
    ...(sampling > 0
      ? {
          [bent]: {
            u: sampling / Math.sqrt(3),
            dof: Number.POSITIVE_INFINITY,
            pool: bent,
            shape: 'rectangular' as const,
          },
        }
      : {}),
  }
}

/** The parts of every aggregate. */
export const partsOf = (columns: Columns, givens: Givens, picks: readonly Pick[]): PartsByKey => {
  const fits = picks.flatMap((pick) => fitOf(columns, pick) ?? []).filter(({ dof }) => dof > 0)
  const groups = [...new Set(fits.map(({ group }) => group))]
  const fitted = groups.map((group, n) =>
    together(
      fits.filter((fit) => fit.group === group),
      `scatter-${n + 1}`,
    ),
  )
  return Object.fromEntries(
    picks.map((pick) => {
      const { key, name } = pick.aggregate
      const scatter = Object.assign({}, ...fitted.map((parts) => parts[key] ?? {}))
      const area = name === 'integral' && !pick.refused ? areaParts(columns, pick) : {}
      return [key, { ...scatter, ...area, ...digitsOf(columns, givens, pick) }]
    }),
  )
}
