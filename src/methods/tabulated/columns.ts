/** The columns that a card declares: `rpm: {unit: rpm, meaning: engine speed}`. */
import type { Plain } from '../../format/types.ts'
import { sameDimension } from '../../quantity/dimension.ts'
import { KINDS, type Kind } from '../../quantity/kinds.ts'
import { nearest } from '../../quantity/nearest.ts'
import type { Fault, Result, Unit } from '../../quantity/types.ts'
import { parseUnit } from '../../quantity/unit-text.ts'
import { isMap, isName, isYesNo, type PathFault, texts } from './plain.ts'

export type DeclaredColumn = {
  readonly name: string
  readonly kind: Kind
  readonly meaning: string
  readonly required: boolean
  readonly instrument: 'required' | 'optional' | 'none'
  /** As the card writes it; absent where it names a kind. */
  readonly unit?: string
  /** Whether the instrument must hold still over time; absent: where a slope over time is taken. */
  readonly hold?: boolean
  /** Of a column of words: those that may stand in it. */
  readonly words?: readonly string[]
}

const FIELDS = ['unit', 'kind', 'meaning', 'required', 'instrument', 'hold', 'words']
const INSTRUMENT = ['required', 'optional', 'none'] as const
const WITHOUT_INSTRUMENT: readonly Kind[] = ['time', 'count', 'number', 'text']

const fault = (
  path: readonly (string | number)[],
  message: string,
  more: Partial<Fault> = {},
): PathFault => ({
  code: 'tabulated/columns',
  message,
  start: 0,
  end: 1,
  path,
  ...more,
})

/** The kind that a unit speaks of; of two with one dimension the one that the trade means by it. */
export const kindOfUnit = (unit: Unit): Kind | undefined => {
  if (sameDimension(unit.dim, KINDS.temperature.dim))
    return /delta|Δ/.test(unit.text) ? 'temperature-difference' : 'temperature'
  if (sameDimension(unit.dim, KINDS.energy.dim)) return unit.energy ? 'energy' : 'moment'
  return (Object.keys(KINDS) as Kind[]).find(
    (kind) => kind !== 'text' && sameDimension(KINDS[kind].dim, unit.dim),
  )
}

const readKind = (name: string, raw: { readonly [key: string]: Plain }): Result<Kind, PathFault[]> => {
  const { unit, kind } = raw
  const written = [unit, kind].filter((each) => each !== undefined)
  if (written.length !== 1 || typeof written[0] !== 'string') {
    const message = `the column \`${name}\` needs either a \`unit\` or a \`kind\``
    const hint = 'as in `{unit: psi, meaning: oil pressure}`; words have `unit: text`'
    return { ok: false, error: [fault([name], message, { hint })] }
  }
  const [text] = written
  if (kind !== undefined) {
    if (Object.hasOwn(KINDS, text)) return { ok: true, value: text as Kind }
    const expected = nearest(text, Object.keys(KINDS))
    const message = `\`${text}\` is no kind of quantity`
    const more = { end: text.length, expected: expected.length > 0 ? expected : Object.keys(KINDS) }
    return { ok: false, error: [fault([name, 'kind'], message, more)] }
  }
  if (text === 'text') return { ok: true, value: 'text' }
  if (/^hh:mm/.test(text)) return { ok: true, value: 'time' }
  const parsed = parseUnit(text)
  if (!parsed.ok) return { ok: false, error: parsed.error.map((each) => ({ ...each, path: [name, 'unit'] })) }
  const found = kindOfUnit(parsed.value)
  if (found) return { ok: true, value: found }
  const message = `a column cannot hold values in \`${text}\`: this is of no kind that is known here`
  const hint = 'read what the instruments show, each in its column, and put them together in a measure'
  return { ok: false, error: [fault([name, 'unit'], message, { end: text.length, hint })] }
}

const readColumn = (name: string, raw: Plain): Result<DeclaredColumn, PathFault[]> => {
  if (!isName(name) || name === 'remark') {
    const message =
      name === 'remark'
        ? '`remark` is there without being declared'
        : `\`${name}\` cannot be the name of a column`
    const hint = name === 'remark' ? 'take it out' : 'lower case letters, digits and _, as in `oil_pressure`'
    return { ok: false, error: [fault([name], message, { hint })] }
  }
  if (!isMap(raw)) {
    const hint = `\`${name}: {unit: psi, meaning: oil pressure}\``
    return {
      ok: false,
      error: [fault([name], `the column \`${name}\` has no unit and no meaning`, { hint })],
    }
  }
  const faults = Object.keys(raw)
    .filter((key) => !FIELDS.includes(key))
    .map((key) => fault([name, key], `a column has no \`${key}\``, { end: key.length, expected: FIELDS }))
  const kind = readKind(name, raw)
  if (!kind.ok) faults.push(...kind.error)
  const { meaning, unit } = raw
  if (typeof meaning !== 'string' || meaning.trim() === '')
    faults.push(
      fault([name], `the column \`${name}\` needs a \`meaning\``, { hint: 'what is read, and where' }),
    )
  for (const key of ['required', 'hold']) {
    if (raw[key] !== undefined && !isYesNo(raw[key]))
      faults.push(fault([name, key], `\`${key}\` is yes or no`, { expected: ['yes', 'no'] }))
  }
  const instrument =
    raw.instrument ?? (kind.ok && WITHOUT_INSTRUMENT.includes(kind.value) ? 'none' : 'required')
  const known = INSTRUMENT.find((one) => one === instrument)
  if (!known)
    faults.push(fault([name, 'instrument'], '`instrument` is one of three words', { expected: INSTRUMENT }))
  const words = raw.words === undefined ? undefined : texts(raw.words)
  if (words === null || words?.some((word) => !isName(word)))
    faults.push(
      fault([name, 'words'], 'words that formulas may name: lower case letters, digits and _', {
        hint: '[left, right, nose]',
      }),
    )
  if (words && kind.ok && kind.value !== 'text')
    faults.push(
      fault([name, 'words'], `\`${name}\` holds values, not words`, { hint: 'words go with `unit: text`' }),
    )
  if (name === 'time' && kind.ok && kind.value !== 'time')
    faults.push(
      fault([name], '`time` is the clock of the run and cannot hold anything else', {
        hint: 'give it another name',
      }),
    )
  if (faults.length > 0 || !kind.ok || !known || typeof meaning !== 'string')
    return { ok: false, error: faults }
  return {
    ok: true,
    value: {
      name,
      kind: kind.value,
      meaning: meaning.trim(),
      required: raw.required !== 'no',
      instrument: known,
      ...(typeof unit === 'string' ? { unit } : {}),
      ...(raw.hold === undefined ? {} : { hold: raw.hold === 'yes' }),
      ...(words ? { words } : {}),
    },
  }
}

export const readColumns = (raw: Plain): Result<readonly DeclaredColumn[], PathFault[]> => {
  if (!isMap(raw) || Object.keys(raw).length === 0) {
    const hint = '{time: {unit: min, meaning: clock}, rpm: {unit: rpm, meaning: engine speed}}'
    return { ok: false, error: [fault([], '`columns` names what is read', { hint })] }
  }
  const columns = Object.entries(raw).map(([name, column]) => readColumn(name, column))
  const faults = columns.flatMap((column) => (column.ok ? [] : column.error))
  if (faults.length > 0) return { ok: false, error: faults }
  return { ok: true, value: columns.flatMap((column) => (column.ok ? [column.value] : [])) }
}
