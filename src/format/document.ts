/** One file taken apart: its fields as texts, its prose, and the way back to lines and columns. */
import { problemOfFault } from '../problems/make.ts'
import { placeOf } from '../problems/place.ts'
import type { Problem } from '../problems/types.ts'
import type { Result } from '../quantity/types.ts'
import type { Classified } from './classify.ts'
import { splitFrontMatter } from './front-matter.ts'
import { placeholders } from './placeholders.ts'
import { makeSource } from './source.ts'
import type { SourceFile } from './types.ts'
import { type Fields, readYaml } from './yaml.ts'

export type Document = {
  readonly source: SourceFile
  readonly fields: Fields
  readonly body: string
  /** Offset of the body in the text. */
  readonly bodyStart: number
}

/** `campaign.yaml` and `people.yaml` are YAML as a whole; every other file has front matter. */
export function readDocument(
  path: string,
  text: string,
  kind: Classified['kind'],
): Result<Document, Problem[]> {
  const foreign = text.indexOf('\uFFFD')
  if (foreign >= 0) {
    const at = placeOf(path, text, foreign, foreign + 1, 'file')
    const hint = 'save the file as UTF-8; signs such as °, ± and µ have other bytes in older encodings'
    const fault = {
      code: 'file/encoding',
      message: 'the file is not UTF-8 from here on',
      start: 0,
      end: 1,
      hint,
    }
    return { ok: false, error: [problemOfFault(fault, at)] }
  }
  const parts = kind === 'campaign' || kind === 'people' ? wholeYaml(text) : splitFrontMatter(text)
  if (!parts.ok) {
    const { start, end } = parts.error
    return { ok: false, error: [problemOfFault(parts.error, placeOf(path, text, start, end, 'file'))] }
  }
  const { yaml, start, body, bodyStart } = parts.value
  const read = readYaml(yaml)
  if (!read.ok) {
    const at = (span: { start: number; end: number }) =>
      placeOf(path, text, start + span.start, start + span.end, 'value')
    const problems = read.error.map((fault) => {
      const related = fault.first && [{ message: 'the first one stands here', at: at(fault.first) }]
      return { ...problemOfFault(fault, at(fault)), related }
    })
    return { ok: false, error: problems }
  }
  const source = makeSource(path, text, { start, text: yaml })
  const unfilled = placeholders(read.value, source)
  if (unfilled.length > 0) return { ok: false, error: unfilled }
  return { ok: true, value: { source, fields: read.value, body, bodyStart } }
}

function wholeYaml(text: string): ReturnType<typeof splitFrontMatter> {
  const start = text.charCodeAt(0) === 0xfeff ? 1 : 0
  if (text.slice(start).trim() === '') return splitFrontMatter('')
  return { ok: true, value: { yaml: text.slice(start), start, body: '', bodyStart: text.length } }
}
