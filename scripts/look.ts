import { readFileSync } from 'node:fs'
import { basename, resolve } from 'node:path'
import { plannedSchema } from '../src/campaign/schema.ts'
import { decodePieces } from '../src/format/logger/decode.ts'
import { frontMatter, unmatched } from '../src/format/logger/front-matter.ts'
import { readLogger } from '../src/format/logger/read.ts'
import { surveyLines } from '../src/format/logger/report.ts'
import { survey, surveyOptions } from '../src/format/logger/survey.ts'
import type { LoggerFault, LoggerText } from '../src/format/logger/types.ts'
import { loadRecords } from '../src/format/node/load.ts'
import type { ColumnField } from '../src/methods/method.ts'
import { loadMethods } from '../src/methods/registry.ts'
import { makeProblem } from '../src/problems/make.ts'
import { placeOf, placeOfFile } from '../src/problems/place.ts'
import { printTerminal } from '../src/problems/printers/terminal.ts'
import { prepareFormulas } from '../src/quantity/formula/index.ts'
import { nearest } from '../src/quantity/nearest.ts'
import { complain, readCall, rootOf } from './command.ts'

const HELP = `npm run look -- <file> [options]     what a logger file holds, and the front matter that reads it

  --card ID         with the columns of this card
  --root DIR        a folder that holds records/ and shared/ (this repository)
  --help            this text

Nothing is written. Exit status: 0 the file can be read; 1 something stands in the way; 2 wrong call.
`

const bytesOf = (file: string): Uint8Array | string => {
  try {
    return readFileSync(resolve(file))
  } catch (error) {
    return `${file} cannot be read (${error instanceof Error && 'code' in error ? String(error.code) : 'unknown reason'}).`
  }
}

/** The columns of a card; a sentence where there is no such card. */
const fieldsOf = async (root: string, id: string): Promise<readonly ColumnField[] | string> => {
  const [methods] = await Promise.all([loadMethods(), prepareFormulas()])
  const { records } = loadRecords(root, methods)
  const card = records.cards[id]
  const method = card && methods[card.method]
  if (card && method) return plannedSchema(method, card).columns
  const close = nearest(id, Object.keys(records.cards))
  return `There is no card ${id}${close.length > 0 ? `; these are close: ${close.join(', ')}` : ''}.`
}

/** A fault as it is printed elsewhere; what names an option points to the file as a whole. */
const printed = ({ at, ...fault }: LoggerFault, file: string, { text }: LoggerText): string => {
  const place = at.in === 'data' ? placeOf(file, text, at.start, at.end, 'cell') : placeOfFile(file)
  return printTerminal(makeProblem({ ...fault, at: place }), () => (at.in === 'data' ? text : undefined))
}

const main = async (): Promise<void> => {
  const call = readCall({ card: { type: 'string' }, root: { type: 'string' } }, HELP)
  if (!call) return
  const [file, extra] = call.positionals
  if (file === undefined || extra !== undefined) return complain(`Name one file.\n\n${HELP}`)
  const { card, root } = call.values
  const bytes = bytesOf(file)
  if (typeof bytes === 'string') return complain(bytes)
  const fields = card === undefined ? null : await fieldsOf(rootOf(root), card)
  if (typeof fields === 'string') return complain(fields)

  const text = decodePieces([bytes])
  const found = survey(text)
  const read = found.columns.length > 0 ? readLogger(surveyOptions(found), text) : null
  const faults = [...found.questions, ...(read && !read.ok && found.questions.length === 0 ? read.error : [])]
  const block = found.columns.length > 0 ? frontMatter(basename(file), found, fields) : ''
  process.stdout.write(
    [
      `${file}: ${surveyLines(found, read?.ok ? read.value : null).join('\n')}`,
      ...faults.map((fault) => printed(fault, file, text)),
      ...(fields && block ? unmatched(found, fields) : []),
      ...(block ? [`Paste into the run, and name the file after it:\n\n${block}`] : ['']),
    ].join('\n\n'),
  )
  if (faults.length > 0) process.exitCode = 1
}

await main()
