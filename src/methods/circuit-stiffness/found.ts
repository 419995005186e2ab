/** How measures are collected, and of which kind they are. */
import type { Kind } from '../../quantity/kinds.ts'
import type { Estimate } from '../method.ts'
import { combine, type Fitted, type Scatter, toParts } from './fits.ts'
import type { Form } from './motion.ts'

type Entry = readonly [name: string, fitted: Fitted, scatter: Scatter, pool: string, kind: Kind]

/** Measures as they are collected. */
export type Found = { readonly values: Record<string, number>; readonly entries: Entry[] }

export type Put = (...entry: Entry) => void

export const putInto =
  ({ values, entries }: Found): Put =>
  (...entry) => {
    const [name, fitted] = entry
    values[name] = fitted.value
    entries.push(entry)
  }

export const scatterOf = ({ entries }: Found): Estimate['scatter'] =>
  Object.fromEntries(entries.map(([name, fitted, scatter, pool]) => [name, toParts(fitted, scatter, pool)]))

export const kindsIn = ({ entries }: Found): Estimate['kinds'] =>
  Object.fromEntries(entries.map(([name, , , , kind]) => [name, kind]))

/** Kinds by form: what is a moment and an angle in one is a force and a length in the other. */
export const kindsOf = (form: Form) =>
  form === 'angular'
    ? ({
        motion: 'angle',
        load: 'moment',
        stiffness: 'angular-stiffness',
        compliance: 'angular-compliance',
      } as const)
    : ({
        motion: 'length',
        load: 'force',
        stiffness: 'linear-stiffness',
        compliance: 'linear-compliance',
      } as const)

/** factor/value, with first-order parts: u(1/c) = u(c)/c². */
export const inverse = (of: Fitted, factor = 1): Fitted =>
  combine(factor / of.value, () => [[-factor / of.value ** 2, of]])

/** a − b. */
export const difference = (a: Fitted, b: Fitted): Fitted =>
  combine(a.value - b.value, () => [
    [1, a],
    [-1, b],
  ])

/** factor · a. */
export const times = (a: Fitted, factor: number): Fitted => combine(a.value * factor, () => [[factor, a]])
