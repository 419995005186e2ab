/** From what the schema finds to problems: our words, and the place in the file. */
import type { z } from 'zod'
import { makeProblem, problemOfFault } from '../problems/make.ts'
import type { Problem } from '../problems/types.ts'
import { nearest } from '../quantity/nearest.ts'
import type { Result } from '../quantity/types.ts'
import type { FieldFault } from './fields/reader.ts'
import type { FieldPath, SourceFile } from './types.ts'

/** Reads raw fields with a schema; every issue becomes one problem, but one mistake has one message. */
export function readFields<T>(schema: z.ZodType<T>, raw: unknown, source: SourceFile): Result<T, Problem[]> {
  const read = schema.safeParse(raw)
  if (read.success) return { ok: true, value: read.data }
  const missing = read.error.issues.filter((issue) => isMissing(issue, raw))
  const explained = new Set<z.core.$ZodIssue>()
  const problems: Problem[] = []
  for (const issue of read.error.issues) {
    if (issue.code !== 'unrecognized_keys') continue
    for (const key of issue.keys) problems.push(unknownField(issue, key, missing, explained, source))
  }
  for (const issue of read.error.issues) {
    if (issue.code !== 'unrecognized_keys' && !explained.has(issue))
      problems.push(otherIssue(issue, raw, source))
  }
  return { ok: false, error: problems }
}

/** An unknown field that is close to a missing one is that field, misspelt: the missing one is then explained. */
function unknownField(
  issue: z.core.$ZodIssueUnrecognizedKeys,
  key: string,
  missing: readonly z.core.$ZodIssue[],
  explained: Set<z.core.$ZodIssue>,
  source: SourceFile,
): Problem {
  const known = issue.message.split(' ')
  const near = nearest(key, known)
  const meant = missing.find((other) => {
    const name = String(other.path.at(-1))
    return other.path.length === issue.path.length + 1 && near.includes(name) && !explained.has(other)
  })
  if (meant) explained.add(meant)
  const likely = meant ? String(meant.path.at(-1)) : near[0]
  return unknownFieldProblem(key, [...steps(issue.path), key], likely, near.length > 0 ? near : known, source)
}

export function unknownFieldProblem(
  key: string,
  path: FieldPath,
  likely: string | undefined,
  expected: readonly string[],
  source: SourceFile,
): Problem {
  return makeProblem({
    code: 'field/unknown',
    message: `the field \`${key}\` is not known`,
    at: source.locate(path, 'key'),
    actual: key,
    expected,
    hint: likely ? `\`${likely}\` is close` : undefined,
  })
}

function otherIssue(issue: z.core.$ZodIssue, raw: unknown, source: SourceFile): Problem {
  const path = steps(issue.path)
  const name = fieldName(path)
  if (issue.code === 'custom') {
    const fault = faultOf(issue.params)
    if (fault) {
      const at = source.locate(path, fault.part ?? 'value', fault.part === 'key' ? undefined : fault)
      return problemOfFault({ ...fault, message: withName(name, fault) }, at)
    }
  }
  if (isMissing(issue, raw)) {
    const at = source.locate(path.slice(0, -1), 'key')
    const message =
      path.length > 1
        ? `\`${path.at(-1)}\` is missing in ${fieldName(path.slice(0, -1))}`
        : `the field ${name} is missing`
    return makeProblem({ code: 'field/missing', message, at, hint: `add a line \`${path.at(-1)}: …\`` })
  }
  if (issue.code === 'invalid_key') {
    const message = `\`${path.at(-1)}\` is no name that formulas can use`
    const hint = 'names are small letters, digits and `_`, and begin with a letter'
    return makeProblem({ code: 'field/name', message, at: source.locate(path, 'key'), hint })
  }
  const value = valueAt(raw, path)
  if (issue.code === 'invalid_value') {
    const expected = issue.values.map(String)
    const message = `${name} cannot be \`${typeof value === 'string' ? value : describe(value)}\``
    return makeProblem({
      code: 'field/choice',
      message,
      at: source.locate(path),
      expected,
      hint: nearestHint(value, expected),
    })
  }
  return wrongShape(issue, value, path, name, source)
}

function wrongShape(
  issue: z.core.$ZodIssue,
  value: unknown,
  path: FieldPath,
  name: string,
  source: SourceFile,
): Problem {
  const at = source.locate(path)
  const wanted = issue.code === 'invalid_type' ? issue.expected : 'text'
  const inList = typeof path.at(-1) === 'number'
  const [entry] =
    value !== null && typeof value === 'object' && !Array.isArray(value) ? Object.entries(value) : []
  if (wanted === 'string' && inList && entry) {
    const written = `${entry[0]}: ${typeof entry[1] === 'string' ? entry[1] : '…'}`
    const message = 'this entry of a list became a set of fields because of its colon and blank'
    return makeProblem({
      code: 'yaml/entry-became-fields',
      message,
      at,
      hint: `put it in quotes: \`"${written}"\``,
    })
  }
  const shape = { string: 'a text', array: 'a list', object: 'a set of fields', record: 'a set of fields' }
  const expected = Object.entries(shape).find(([kind]) => kind === wanted)?.[1] ?? 'another kind of value'
  const hint = wanted === 'array' && typeof value === 'string' ? `write \`[${value.trim()}]\`` : undefined
  const message = `${name} is ${describe(value)} where ${expected} is expected`
  return makeProblem({ code: 'field/shape', message, at, hint })
}

const describe = (value: unknown) =>
  typeof value === 'string'
    ? 'a text'
    : Array.isArray(value)
      ? 'a list'
      : value === undefined
        ? 'missing'
        : 'a set of fields'

function nearestHint(value: unknown, expected: readonly string[]): string | undefined {
  const [near] = typeof value === 'string' ? nearest(value, expected) : []
  return near && `\`${near}\` is close`
}

/** The fault's own sentence; where it does not name what it is about, the field is named. */
function withName(name: string, fault: FieldFault): string {
  return fault.message.includes('`') ? fault.message : `${name}: ${fault.message}`
}

const fieldName = (path: FieldPath) => `\`${path.filter((step) => typeof step === 'string').join('.')}\``

const steps = (path: readonly PropertyKey[]): FieldPath =>
  path.map((step) => (typeof step === 'symbol' ? String(step) : step))

function isMissing(issue: z.core.$ZodIssue, raw: unknown): boolean {
  const typed =
    issue.code === 'invalid_type' || issue.code === 'invalid_union' || issue.code === 'invalid_value'
  return typed && issue.path.length > 0 && valueAt(raw, steps(issue.path)) === undefined
}

function valueAt(raw: unknown, path: FieldPath): unknown {
  let value = raw
  for (const step of path) {
    if (value === null || typeof value !== 'object' || !Object.hasOwn(value, step)) return undefined
    value = Object.entries(value).find(([key]) => key === String(step))?.[1]
  }
  return value
}

function faultOf(params: Record<string, unknown> | undefined): FieldFault | undefined {
  const fault = params?.fault
  return isFault(fault) ? fault : undefined
}

function isFault(value: unknown): value is FieldFault {
  return (
    typeof value === 'object' && value !== null && 'code' in value && 'message' in value && 'start' in value
  )
}
