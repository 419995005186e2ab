/** How a function moves with its inputs, by differences over one standard uncertainty (GUM 5.1.3, note 2). */

type Slope = { readonly central: number; readonly up: number; readonly down: number }

/** The two sides differ by more than this share of the larger: a corner such as that of `abs` or `max`, or an extremum. */
const CORNER = 0.5
/** A branch is stepped onto by this share of u, in directions that no sum or difference of inputs cancels. */
const STEP_ASIDE = 0.01
const ASIDE = [1, -0.618, 0.414, -0.732] as const
const SMALL = 1e-3

const slopes = (
  f: (values: number[]) => number,
  at: readonly number[],
  steps: readonly number[],
): Slope[] => {
  const middle = f([...at])
  return at.map((value, i) => {
    const step = steps[i] as number
    if (step === 0) return { central: 0, up: 0, down: 0 }
    const above = f(at.with(i, value + step))
    const below = f(at.with(i, value - step))
    return {
      central: (above - below) / (2 * step),
      up: (above - middle) / step,
      down: (middle - below) / step,
    }
  })
}

const larger = ({ up, down }: Slope): number => (Math.abs(up) >= Math.abs(down) ? up : down)

const isCorner = (slope: Slope): boolean => Math.abs(slope.up - slope.down) > CORNER * Math.abs(larger(slope))

/**
 * Change of f per unit of each input; `u` are their standard uncertainties, 0 where there is none. NaN where f is not
 * defined nearby. At a corner both sides together would cancel to no uncertainty at all: there the slopes are those of
 * one branch, so that what the inputs share still cancels as it must, and at an extremum the larger side counts.
 */
export const sensitivities = (
  f: (values: number[]) => number,
  values: readonly number[],
  u: readonly number[],
): number[] => {
  const here = slopes(f, values, u)
  if (!here.some(isCorner)) return here.map((slope) => slope.central)
  const aside = values.map(
    (value, i) => value + STEP_ASIDE * (ASIDE[i % ASIDE.length] as number) * (u[i] as number),
  )
  const branch = slopes(
    f,
    aside,
    u.map((each) => SMALL * each),
  )
  return here.map((slope, i) => {
    if (!isCorner(slope)) return slope.central
    const { central } = branch[i] as Slope
    return Math.abs(central) >= CORNER * Math.abs(larger(slope)) ? central : larger(slope)
  })
}
