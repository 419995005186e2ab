/** Parts of set-ups: instruments, columns and knowns, in SI. */
import { IDEAL } from '../../src/methods/as-shown.ts'
import type { Column, InstrumentModel } from '../../src/methods/method.ts'
import { KINDS, type Kind } from '../../src/quantity/kinds.ts'
import { exact } from '../../src/quantity/quantity.ts'
import type { Quantity } from '../../src/quantity/types.ts'

/** Without errors and digits but for those that are named, as limits. */
export const instrument = (id: string, more: Partial<InstrumentModel> = {}): InstrumentModel => ({
  ...IDEAL,
  id,
  label: id,
  shape: 'rectangular',
  ...more,
})

export const column = (kind: Kind, values: readonly number[], resolution = 0): Column => ({
  values: Float64Array.from(values),
  dim: KINDS[kind].dim,
  resolution,
})

/** A given in SI with its standard uncertainty. */
export const known = (name: string, value: number, u: number, kind: Kind): Quantity => {
  const pool = `given:card:test/${name}`
  const parts = { [pool]: { u, dof: Number.POSITIVE_INFINITY, pool, shape: 'normal' } } as const
  return { value, dim: KINDS[kind].dim, parts, why: [] }
}

export const given = (value: number, kind: Kind): Quantity => exact(value, KINDS[kind].dim)
