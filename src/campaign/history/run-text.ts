/** The text of a run as it stood at some time, with the data file that it names. */
import { classify } from '../../format/classify.ts'
import { readDocument } from '../../format/document.ts'
import { splitFrontMatter } from '../../format/front-matter.ts'
import { readFields } from '../../format/issues.ts'
import { runFields } from '../../format/kinds/run.ts'
import { runReadings } from '../../format/run-readings.ts'
import { readTable, type Table } from '../../format/table.ts'
import { type Fields, readYaml } from '../../format/yaml.ts'

export type RunText = {
  readonly path: string
  readonly text: string
  /** Where the readings stand in a file beside the run. */
  readonly data?: { readonly path: string; readonly text: string }
}

/** Undefined: the front matter cannot be read. */
export const frontMatter = (text: string): Fields | undefined => {
  const split = splitFrontMatter(text)
  const read = split.ok ? readYaml(split.value.yaml) : undefined
  return read?.ok ? read.value : undefined
}

/** Path of a file that lies beside the run. */
export const besideRun = (path: string, file: string): string =>
  `${path.slice(0, path.lastIndexOf('/') + 1)}${file}`

/** The data file that a run names in its front matter. */
export const dataPathIn = (path: string, text: string): string | null => {
  const readings = frontMatter(text)?.readings
  if (readings === undefined || typeof readings === 'string' || Array.isArray(readings)) return null
  const { file } = readings as Fields
  return typeof file === 'string' ? besideRun(path, file) : null
}

export const isVoid = ({ text }: RunText): boolean => frontMatter(text)?.void !== undefined

/** The table of a data file as the run's own options read it. */
const loggedTable = ({ path, text, data }: RunText): Table | undefined => {
  const classified = classify(path)
  const document = classified.kind === 'run' ? readDocument(path, text, 'run') : undefined
  if (classified.kind !== 'run' || !document?.ok) return undefined
  const { source, body } = document.value
  const fields = readFields(runFields, document.value.fields, source)
  if (!fields.ok) return undefined
  const base = { id: classified.id, source, body }
  const { readings } = runReadings(base, fields.value, (file) => (file === data?.path ? data : undefined))
  return (
    (readings && {
      names: readings.columns.map(({ name }) => name),
      units: readings.columns.map(({ unit }) => unit),
      rows: Array.from({ length: readings.rows }, (_, row) =>
        readings.columns.map(({ cells }) => cells[row] ?? ''),
      ),
    }) ??
    undefined
  )
}

/** Undefined: it cannot be read. */
export const tableOf = (run: RunText, fields: Fields): Table | undefined =>
  typeof fields.readings === 'string' ? readTable(fields.readings).table : loggedTable(run)
