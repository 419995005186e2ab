/** What of a file the judging of a run rests on, as one text: files that differ only elsewhere judge alike. */
import { readRecords } from '../../format/records.ts'
import type { Plain } from '../../format/types.ts'
import { readYaml } from '../../format/yaml.ts'
import type { Method } from '../../methods/method.ts'
import { calibrationOn, modelOf } from '../instruments.ts'
import { frontMatter } from './run-text.ts'

/** `day` is that of the run: of an instrument only the calibration in force counts. Null: it cannot be read. */
export type JudgedBy = (path: string, text: string, day: string) => string | null

const SETTINGS = 'shared/campaign.yaml'

/** Of a card: who owns it, when it is due and how it is planned judges nothing. */
const NOT_JUDGED = [
  'title',
  'owner',
  'cautions',
  'every',
  'after',
  'overtaken-by',
  'covers',
  'runs-per-round',
  'stop-at',
]

/** Order of fields says nothing. */
const ordered = (plain: Plain): Plain =>
  typeof plain === 'string' || Array.isArray(plain)
    ? plain
    : Object.fromEntries(
        Object.entries(plain)
          .sort(([a], [b]) => (a < b ? -1 : 1))
          .map(([name, value]) => [name, ordered(value as Plain)]),
      )

const cardText = (text: string): string | null => {
  const fields = frontMatter(text)
  if (!fields) return null
  return JSON.stringify(
    ordered(Object.fromEntries(Object.entries(fields).filter(([name]) => !NOT_JUDGED.includes(name)))),
  )
}

const ruleText = (text: string): string | null => {
  const read = readYaml(text)
  return read.ok ? JSON.stringify(read.value.rule ?? null) : null
}

const instrumentText = (
  path: string,
  text: string,
  day: string,
  methods: Readonly<Record<string, Method>>,
): string | null => {
  const [instrument] = Object.values(readRecords([{ path, text }], methods).records.instruments)
  if (!instrument) return null
  const corrections = calibrationOn(instrument, day)?.corrections ?? []
  return JSON.stringify([modelOf(instrument, day), corrections])
}

/** Remembers what it has read. */
export const judgedBy = (methods: Readonly<Record<string, Method>>): JudgedBy => {
  const known = new Map<string, string | null>()
  return (path, text, day) => {
    const ofInstrument = path.startsWith('shared/instruments/')
    const key = `${ofInstrument ? day : ''} ${path}\n${text}`
    const found = known.get(key)
    if (found !== undefined) return found
    const read =
      path === SETTINGS
        ? ruleText(text)
        : ofInstrument
          ? instrumentText(path, text, day, methods)
          : cardText(text)
    known.set(key, read)
    return read
  }
}
