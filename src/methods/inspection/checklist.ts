/** The list of an inspection, as the card gives it: what each entry asks, and the limits of those with a value. */
import type { Plain } from '../../format/types.ts'
import { KINDS, type Kind } from '../../quantity/kinds.ts'
import { parseStated } from '../../quantity/quantity-text.ts'
import type { Dimension, Fault, Result, Stated } from '../../quantity/types.ts'

export type Entry = {
  readonly name: string
  readonly text: string
  readonly low?: Stated
  readonly high?: Stated
}
export type Checklist = readonly Entry[]
export type PathFault = Fault & { path: readonly (string | number)[] }

/** Names that the method's own measures have. */
export const OWN_MEASURES = ['entries', 'not_ok', 'open']
const OWN_COLUMNS = ['entry', 'as_found', 'as_left', 'unit', 'remark']
const NAME = /^[a-z][a-z0-9_]*$/
const FIELDS = ['text', 'low', 'high']

/** An entry with a limit is one that is left with a value, not with `ok`. */
export const isValued = (entry: Entry): boolean => entry.low !== undefined || entry.high !== undefined
export const dimOf = (entry: Entry): Dimension | undefined => (entry.low ?? entry.high)?.unit.dim

/** Name of the trade for a dimension; a torque is a moment, not an energy. */
export const kindOf = (dim: Dimension): Kind | undefined => {
  const kinds = Object.keys(KINDS) as Kind[]
  return kinds.find((kind) => kind !== 'text' && KINDS[kind].dim.every((x, i) => x === dim[i]))
}

/** Null where the field of the card was not read: the checks of files have said why. */
export const checklistOf = (fields: Readonly<Record<string, unknown>>): Checklist =>
  Array.isArray(fields.checklist) ? (fields.checklist as Checklist) : []

const isMap = (raw: Plain | undefined): raw is { readonly [key: string]: Plain } =>
  typeof raw === 'object' && !Array.isArray(raw)

const fault = (path: string[], message: string, more: Partial<Fault> = {}): PathFault => ({
  code: 'inspection/checklist',
  message,
  start: 0,
  end: 1,
  path,
  ...more,
})

const readLimit = (
  name: string,
  key: 'low' | 'high',
  raw: Plain | undefined,
): Result<Stated | undefined, PathFault[]> => {
  if (raw === undefined) return { ok: true, value: undefined }
  const path = [name, key]
  if (typeof raw !== 'string')
    return { ok: false, error: [fault(path, `\`${key}\` is one quantity, as \`22 N·m\``)] }
  const stated = parseStated(raw)
  if (!stated.ok) return { ok: false, error: stated.error.map((one) => ({ ...one, path })) }
  if (kindOf(stated.value.unit.dim)) return stated
  return {
    ok: false,
    error: [fault(path, `\`${raw}\` is of no kind that is known here`, { end: raw.length })],
  }
}

const readEntry = (name: string, raw: Plain): Result<Entry, PathFault[]> => {
  if (!NAME.test(name) || [...OWN_MEASURES, ...OWN_COLUMNS].includes(name)) {
    const message = NAME.test(name)
      ? `\`${name}\` is a name that the method uses itself`
      : `\`${name}\` cannot be the name of an entry`
    const hint = 'lower case letters, digits and _, as in `lap_left_torque`'
    return { ok: false, error: [fault([name], message, { end: name.length, hint })] }
  }
  if (!isMap(raw) || typeof raw.text !== 'string' || raw.text.trim() === '') {
    const message = `the entry \`${name}\` needs a \`text\` that says what is looked at`
    return { ok: false, error: [fault([name], message, { hint: '{text: webbing free of cuts}' })] }
  }
  const faults = Object.keys(raw)
    .filter((key) => !FIELDS.includes(key))
    .map((key) => fault([name, key], `an entry has no \`${key}\``, { end: key.length, expected: FIELDS }))
  const low = readLimit(name, 'low', raw.low)
  const high = readLimit(name, 'high', raw.high)
  if (!low.ok) faults.push(...low.error)
  if (!high.ok) faults.push(...high.error)
  if (low.ok && high.ok && low.value && high.value) {
    const [a, b] = [low.value, high.value]
    if (a.unit.dim.some((x, i) => x !== b.unit.dim[i]))
      faults.push(fault([name, 'high'], `\`low\` and \`high\` of \`${name}\` are of different kinds`))
    else if (a.value >= b.value)
      faults.push(fault([name, 'high'], `\`high\` of \`${name}\` is not above \`low\``))
  }
  if (faults.length > 0 || !low.ok || !high.ok) return { ok: false, error: faults }
  return { ok: true, value: { name, text: raw.text, low: low.value, high: high.value } }
}

export const readChecklist = (raw: Plain): Result<Checklist, PathFault[]> => {
  if (!isMap(raw) || Object.keys(raw).length === 0) {
    const message = 'the checklist names its entries'
    const hint =
      '{webbing: {text: webbing free of cuts}, lap_torque: {text: lap anchor, low: 22 N·m, high: 27 N·m}}'
    return { ok: false, error: [fault([], message, { hint })] }
  }
  const entries = Object.entries(raw).map(([name, entry]) => readEntry(name, entry))
  const faults = entries.flatMap((entry) => (entry.ok ? [] : entry.error))
  if (faults.length > 0) return { ok: false, error: faults }
  return { ok: true, value: entries.flatMap((entry) => (entry.ok ? [entry.value] : [])) }
}
