/** A file that was handed in, back into the form: every text as it was written. */
import { splitFrontMatter } from '../format/front-matter.ts'
import { readTable } from '../format/table.ts'
import type { Plain } from '../format/types.ts'
import { type Fields, isList, readYaml } from '../format/yaml.ts'
import { EMPTY_GIVEN, emptyRun, type RunState } from './state.ts'
import { runText } from './write.ts'

export type Reopened =
  | {
      readonly ok: true
      readonly state: RunState
      /** What handing it in again would lose, in words. */
      readonly losses: readonly string[]
    }
  | { readonly ok: false; readonly message: string }

/** What was not filled in yet is marked `…` in a new file. */
const textOf = (value: Plain | undefined): string =>
  typeof value === 'string' && !value.trim().startsWith('…') ? value : ''

const fieldsIn = (value: Plain | undefined): Readonly<Record<string, Plain>> =>
  value === undefined || typeof value === 'string' || isList(value) ? {} : value

const listIn = (value: Plain | undefined): readonly Plain[] => {
  if (value === undefined || textOf(value) === '')
    return value !== undefined && typeof value !== 'string' && isList(value) ? value : []
  return [value]
}

const textsIn = (value: Plain | undefined): string[] =>
  listIn(value)
    .map(textOf)
    .filter((text) => text !== '')

const record = <T>(value: Plain | undefined, read: (each: Plain) => T): Record<string, T> =>
  Object.fromEntries(Object.entries(fieldsIn(value)).map(([name, each]) => [name, read(each)]))

const givenIn = (value: Plain) => {
  const { value: text, with: instrument, from, measure } = fieldsIn(value)
  return {
    ...EMPTY_GIVEN,
    value: textOf(text) || textOf(value),
    with: textOf(instrument),
    from: textOf(from),
    measure: textOf(measure),
  }
}

const readingsIn = (value: Plain | undefined): Pick<RunState, 'columns' | 'rows' | 'data'> => {
  if (typeof value !== 'string')
    return { columns: [], rows: [], data: value === undefined ? null : fieldsIn(value) }
  const { table } = readTable(value)
  const columns = table.names.map((name, at) => ({ name, unit: textOf(table.units[at]) }))
  const rows = table.rows.map((row) => columns.map((_, at) => row[at] ?? ''))
  return { columns, rows, data: null }
}

const SHOWN = [
  'card',
  'article',
  'when',
  'by',
  'witness',
  'instruments',
  'given',
  'rig',
  'ambient',
  'fitted',
  'removed',
  'zero',
  'missing',
  'readings',
  'deviations',
  'stopped',
  'files',
  'card-revision',
]

const stateOf = (fields: Fields, body: string): RunState => {
  const ambient = fieldsIn(fields.ambient)
  return {
    ...emptyRun(textOf(fields.card)),
    article: textOf(fields.article),
    when: textOf(fields.when),
    by: textsIn(fields.by),
    witness: textsIn(fields.witness)[0] ?? '',
    instruments: record(fields.instruments, textOf),
    given: record(fields.given, givenIn),
    rig: Object.entries(fieldsIn(fields.rig)).map(([name, value]) => ({ name, value: textOf(value) })),
    ambient: { temperature: textOf(ambient.temperature), note: textOf(ambient.note) },
    fitted: listIn(fields.fitted)
      .map(fieldsIn)
      .map(({ id, what }) => ({ id: textOf(id), what: textOf(what) })),
    removed: textsIn(fields.removed),
    zero: record(fields.zero, (each) => ({
      before: textOf(fieldsIn(each).before),
      after: textOf(fieldsIn(each).after),
    })),
    ...readingsIn(fields.readings),
    missing: textsIn(fields.missing),
    deviations: listIn(fields.deviations)
      .map(fieldsIn)
      .map(({ from, what, why, agreed }) => ({
        from: textOf(from),
        what: textOf(what),
        why: textOf(why),
        agreed: textOf(agreed),
      })),
    stopped: fields.stopped === undefined ? null : textOf(fields.stopped),
    files: listIn(fields.files)
      .map(fieldsIn)
      .map(({ file, caption }) => ({ file: textOf(file), caption: textOf(caption) })),
    revision: textOf(fields['card-revision']),
    body: body.trim(),
    kept: Object.fromEntries(Object.entries(fields).filter(([name]) => !SHOWN.includes(name))),
  }
}

/** The same facts, whatever the layout: order of fields, lists of one, blanks between cells, values not filled in. */
const facts = (value: Plain, name = ''): Plain => {
  if (typeof value === 'string') {
    const text = value.trim().startsWith('…') ? '' : value.trim()
    return name === 'readings' ? text.replace(/[^\S\n]+/g, ' ').replace(/ ?\n ?/g, '\n') : text
  }
  if (isList(value)) {
    const [only, second] = value
    return typeof only === 'string' && second === undefined ? facts(only) : value.map((each) => facts(each))
  }
  const entries = Object.entries(value).map(([key, each]) => [key, facts(each, key)] as const)
  const told = entries
    .filter(([, each]) => JSON.stringify(each).length > 2)
    .sort(([a], [b]) => (a < b ? -1 : 1))
  const [bare] = told
  return told.length === 1 && bare?.[0] === 'value' ? bare[1] : Object.fromEntries(told)
}

const lossesOf = (yaml: string, fields: Fields, state: RunState): string[] => {
  const parts = splitFrontMatter(runText(state))
  const again = parts.ok ? readYaml(parts.value.yaml) : null
  const before = Object.entries(fieldsIn(facts(fields)))
  const after = again?.ok ? fieldsIn(facts(again.value)) : {}
  const changed = before.filter(([name, value]) => JSON.stringify(value) !== JSON.stringify(after[name]))
  return [
    ...(/^\s*#/m.test(yaml) ? ['comments between the fields'] : []),
    ...changed.map(([name]) => `something under \`${name}\``),
  ]
}

/** Reads a file of a run, finished or not. Nothing is judged: the live check does that. */
export const reopenRun = (text: string): Reopened => {
  const parts = splitFrontMatter(text)
  if (!parts.ok) return { ok: false, message: parts.error.message }
  const read = readYaml(parts.value.yaml)
  if (!read.ok) return { ok: false, message: read.error[0]?.message ?? 'it cannot be read' }
  const state = stateOf(read.value, parts.value.body)
  if (state.card === '') return { ok: false, message: 'it does not name a card, so it is no run' }
  return { ok: true, state, losses: lossesOf(parts.value.yaml, read.value, state) }
}
