/** Numbers inside sentences: three digits and a unit of the trade. */
import type { Kind } from '../../quantity/kinds.ts'
import { KINDS } from '../../quantity/kinds.ts'

const DEGREE = Math.PI / 180

/** Units that people read more easily than the SI ones, where a kind has one. */
const READABLE: Readonly<Partial<Record<Kind, { unit: string; factor: number }>>> = {
  angle: { unit: '°', factor: DEGREE },
  length: { unit: 'mm', factor: 1e-3 },
  'linear-stiffness': { unit: 'N/mm', factor: 1e3 },
  number: { unit: '', factor: 1 },
}

export const digits = (value: number): string => {
  if (value === 0 || !Number.isFinite(value)) return String(value)
  const places = Math.max(0, 2 - Math.floor(Math.log10(Math.abs(value))))
  return value.toFixed(Math.min(places, 12))
}

/** `4290 N·m/rad`, `12.5 mm`. */
export const inWords = (value: number, kind: Kind): string => {
  const { unit, factor } = READABLE[kind] ?? { unit: KINDS[kind].unit, factor: 1 }
  return `${digits(value / factor)} ${unit}`.trim()
}

export const percent = (share: number): string => `${digits(share * 100)} %`
