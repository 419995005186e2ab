/** A card's fields: its own, and those that its method adds. */
import { makeProblem, problemOfFault } from '../problems/make.ts'
import type { Problem } from '../problems/types.ts'
import { nearest } from '../quantity/nearest.ts'
import type { Document } from './document.ts'
import { readFields, unknownFieldProblem } from './issues.ts'
import { CARD_FIELD_NAMES, cardFields } from './kinds/card.ts'
import type { Plain, RecordBase } from './types.ts'
import type { CardDraft, MethodSchemas } from './world.ts'

type Read = { readonly draft?: CardDraft; readonly problems: readonly Problem[] }

export function readCard(base: RecordBase, document: Document, schemas: MethodSchemas): Read {
  const { source, fields: raw } = document
  const name = typeof raw.method === 'string' ? raw.method.trim() : ''
  const method = Object.hasOwn(schemas, name) ? schemas[name] : undefined
  const ownNames = method?.schema.cardFields.map((field) => field.name) ?? []
  const common: Record<string, Plain> = {}
  const own: Record<string, Plain> = {}
  const problems: Problem[] = []
  for (const [key, value] of Object.entries(raw)) {
    if (ownNames.includes(key)) own[key] = value
    // Without a method nobody knows which further fields there are: the method is the one mistake.
    else if (CARD_FIELD_NAMES.includes(key) || method || name === '') common[key] = value
  }
  const fields = readFields(cardFields, common, source)
  if (!fields.ok) problems.push(...fields.error.map((problem) => withOwnNames(problem, ownNames, source)))
  if (name !== '' && !method) {
    const names = Object.keys(schemas)
    const [near] = nearest(name, names)
    const at = source.locate(['method'])
    const hint = near && `\`${near}\` is close`
    const message = `there is no method \`${name}\``
    problems.push(
      makeProblem({ code: 'reference/unknown', message, at, actual: name, expected: names, hint }),
    )
  }
  const read = method ? readOwn(own, method, document) : undefined
  if (read) problems.push(...read.problems)
  if (!fields.ok) return { problems }
  const describe = method?.describe
  const values = read?.values
  const schema =
    method && values
      ? (columns: readonly string[]) => describe?.(values, columns) ?? method.schema
      : undefined
  return { draft: { base, document, fields: fields.value, own: values, schema }, problems }
}

/** The method's own fields; no values where one of them is wrong. */
function readOwn(
  raw: Readonly<Record<string, Plain>>,
  method: MethodSchemas[string],
  { source }: Document,
): { readonly values?: Readonly<Record<string, unknown>>; readonly problems: readonly Problem[] } {
  const values: Record<string, unknown> = {}
  const problems: Problem[] = []
  for (const field of method.schema.cardFields) {
    const value = raw[field.name]
    if (value === undefined) {
      if (!field.required) continue
      const message = `the field \`${field.name}\` is missing`
      const at = source.locate([])
      problems.push(
        makeProblem({
          code: 'field/missing',
          message,
          at,
          why: field.meaning,
          hint: `add \`${field.name}: …\``,
        }),
      )
      continue
    }
    const read = field.read(value)
    if (read.ok) values[field.name] = read.value
    else {
      for (const fault of read.error) {
        problems.push(problemOfFault(fault, source.locate([field.name, ...fault.path], 'value', fault)))
      }
    }
  }
  return problems.length > 0 ? { problems } : { values, problems }
}

/** An unknown field of a card may be near to a field of its method. */
function withOwnNames(problem: Problem, ownNames: readonly string[], source: RecordBase['source']): Problem {
  if (problem.code !== 'field/unknown' || problem.actual === undefined) return problem
  const near = nearest(problem.actual, ownNames)
  if (near.length === 0) return problem
  return unknownFieldProblem(problem.actual, [problem.actual], near[0], near, source)
}
