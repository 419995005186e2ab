/** What to say about a unit that is not known, or that is another than was meant. */
import { sameDimension } from './dimension.ts'
import { KINDS } from './kinds.ts'
import { nearest } from './nearest.ts'
import type { Dimension, Unit } from './types.ts'
import { unitNames } from './unit-names.ts'

/** What people write for something else: the names to use instead, and a sentence. */
const OFTEN_WRITTEN: Readonly<Record<string, { readonly use: readonly string[]; readonly hint: string }>> = {
  C: { use: ['degC', '°C'], hint: 'a temperature is written `degC` or `°C`, a difference `K`' },
  F: { use: ['degF', '°F'], hint: 'a temperature is written `degF` or `°F`, a difference `delta degF`' },
  R: { use: ['K', 'degF'], hint: 'give an absolute temperature in `K`, `degC` or `degF`' },
  kts: { use: ['kt'], hint: 'the knot is written `kt`' },
  kph: { use: ['km/h'], hint: 'write `km/h`' },
  kmh: { use: ['km/h'], hint: 'write `km/h`' },
  kg_f: { use: ['kgf'], hint: 'a force is written `kgf`' },
  lbs: { use: ['lb', 'lbf'], hint: 'a mass is written `lb`, a force `lbf`' },
  pound: { use: ['lb', 'lbf'], hint: 'a mass is written `lb`, a force `lbf`' },
  pounds: { use: ['lb', 'lbf'], hint: 'a mass is written `lb`, a force `lbf`' },
  '"': { use: ['in'], hint: 'the inch is written `in`' },
  "'": { use: ['ft'], hint: 'the foot is written `ft`' },
  '#': { use: ['lb', 'lbf'], hint: 'a mass is written `lb`, a force `lbf`' },
  kgs: { use: ['kg'], hint: 'a mass is written `kg`, a force `kgf` or `N`' },
  gallon: { use: ['USgal', 'UKgal'], hint: '`gal` is the US gallon, `UKgal` the imperial one' },
  gallons: { use: ['USgal', 'UKgal'], hint: '`gal` is the US gallon, `UKgal` the imperial one' },
  impgal: { use: ['UKgal'], hint: 'the imperial gallon is written `UKgal`' },
  nm: { use: ['N·m', 'nmi', 'µm'], hint: 'write `N·m` for a moment, `nmi` for a nautical mile' },
  NM: { use: ['nmi', 'N·m'], hint: 'write `nmi` for a nautical mile, `N·m` for a moment' },
  G: { use: ['1', 'm/s²'], hint: 'a load factor is a pure number, an acceleration is in `m/s²`' },
  inlb: { use: ['lbf·in'], hint: 'write `lbf·in`' },
  ftlb: { use: ['lbf·ft'], hint: 'write `lbf·ft`' },
  inlbf: { use: ['lbf·in'], hint: 'write `lbf·in`' },
  ftlbf: { use: ['lbf·ft'], hint: 'write `lbf·ft`' },
  Nmm: { use: ['N·mm'], hint: 'write `N·mm`' },
  psig: { use: ['psi'], hint: 'write `psi`; whether it is gauge or absolute is said by the column' },
  psia: { use: ['psi'], hint: 'write `psi`; whether it is gauge or absolute is said by the column' },
  barg: { use: ['bar'], hint: 'write `bar`; whether it is gauge or absolute is said by the column' },
  mbarg: { use: ['mbar'], hint: 'write `mbar`; whether it is gauge or absolute is said by the column' },
  inWC: { use: ['inH2O'], hint: 'inches of water are written `inH2O`' },
  mmWC: { use: ['mmH2O'], hint: 'millimetres of water are written `mmH2O`' },
  sccm: { use: ['cm³/min'], hint: 'write `cm³/min`; the reference conditions are givens of the method' },
  degK: { use: ['K'], hint: 'the kelvin is written `K`' },
  hours: { use: ['h'], hint: 'the hour is written `h`' },
  minutes: { use: ['min'], hint: 'the minute is written `min`' },
  seconds: { use: ['s'], hint: 'the second is written `s`' },
  inches: { use: ['in'], hint: 'the inch is written `in`' },
  feet: { use: ['ft'], hint: 'the foot is written `ft`' },
}

type Instead = { readonly expected: string[]; readonly hint?: string }

export function oftenWritten(name: string): Instead | undefined {
  const often = Object.hasOwn(OFTEN_WRITTEN, name) ? OFTEN_WRITTEN[name] : undefined
  return often && { expected: [...often.use], hint: often.hint }
}

/** What to write instead of a name that is no unit. */
export function insteadOf(name: string): Instead {
  const often = oftenWritten(name)
  if (often) return often
  const near = nearest(name, unitNames())
  return near.length > 0 ? { expected: near } : { expected: [], hint: 'the handbook lists all units' }
}

/** A mass where a force is needed and the like: a sentence for the hint, where there is one. */
export function meantInstead(unit: Unit, wanted: Dimension): string | undefined {
  const is = (kind: { dim: Dimension }) => sameDimension(unit.dim, kind.dim)
  const wants = (kind: { dim: Dimension }) => sameDimension(wanted, kind.dim)
  if (is(KINDS.mass) && wants(KINDS.force)) return 'a force is written `N`, `kgf` or `lbf`'
  if (is(KINDS.force) && wants(KINDS.mass)) return 'a mass is written `kg` or `lb`'
  if (is(KINDS['mass-moment']) && wants(KINDS.moment)) return 'a moment is written `N·m`, `kgf·m` or `lbf·in`'
  if (is(KINDS.moment) && wants(KINDS['mass-moment'])) return 'a mass moment is written `kg·m` or `lb·in`'
  if (is(KINDS['linear-stiffness']) && wants(KINDS['angular-stiffness']))
    return 'a moment per angle is written `N·m/rad` or `lbf·in/deg`'
  if (is(KINDS.moment) && wants(KINDS['angular-stiffness']))
    return 'say per which angle: `N·m/rad` or `N·m/deg`'
  if (is(KINDS.number) && wants(KINDS.angle)) return 'an angle is written `deg` or `rad`'
  if (is(KINDS.number) && !wants(KINDS.number)) return 'a bare number has no unit: write the unit behind it'
  return undefined
}
