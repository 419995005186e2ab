/** Givens against the method: which names there are, and what each must be. */
import type { Given, Schema } from '../../methods/method.ts'
import { makeProblem, problemOfFault } from '../../problems/make.ts'
import type { Problem } from '../../problems/types.ts'
import { nearest } from '../../quantity/nearest.ts'
import { parseStated } from '../../quantity/quantity-text.ts'
import type { RawGiven } from '../fields/given.ts'
import { fieldNamed, kindsOf } from '../schema-fields.ts'
import type { FieldPath, GivenText, SourceFile } from '../types.ts'
import type { World } from '../world.ts'
import { quantityProblem } from './quantity.ts'
import { refer } from './reference.ts'
import { referResult } from './results.ts'

type Raw = Readonly<Record<string, RawGiven>>
type Read = { readonly given: Readonly<Record<string, GivenText>>; readonly problems: readonly Problem[] }

/** `path` leads to the set of givens. Without a schema (the card is in doubt) nothing is judged. */
export function readGivens(
  raw: Raw,
  method: { readonly id: string; readonly schema: Schema | undefined; readonly own: ReadonlySet<string> },
  world: World,
  source: SourceFile,
  path: FieldPath,
): Read {
  const given: Record<string, GivenText> = {}
  const problems: Problem[] = []
  for (const [name, written] of Object.entries(raw)) {
    const at = [...path, name]
    const field = method.schema && fieldNamed(method.schema.givens, name)
    const own = method.schema !== undefined && field === undefined && method.own.has(name)
    if (method.schema && !field && !own) {
      problems.push(unknownGiven(name, method.schema, method.id, source, at))
      continue
    }
    const read = readGiven(name, written, own ? 'own' : field, method.id, world, source, at)
    problems.push(...read.problems)
    if (read.given) given[name] = read.given
  }
  return { given, problems }
}

function readGiven(
  name: string,
  written: RawGiven,
  /** `own`: the card's own, for its formulas; undefined where the method is in doubt. */
  known: Given | 'own' | undefined,
  method: string,
  world: World,
  source: SourceFile,
  path: FieldPath,
): { readonly given?: GivenText; readonly problems: readonly Problem[] } {
  const field = known === 'own' ? undefined : known
  if (written.form === 'result') {
    const { from, measure } = written
    return {
      given: { form: 'result', from, measure },
      problems: referResult(name, from, measure, field, world, source, path),
    }
  }
  const at = written.nested ? [...path, 'value'] : path
  const text = written.text.trim()
  const instrument =
    written.with === undefined ? [] : refer(world, ['instrument'], written.with, source, [...path, 'with'])
  if (field && (field.role === 'choice' || field.role === 'words')) {
    return {
      given: { form: 'word', word: text },
      problems: [...instrument, ...choiceProblems(name, text, field, source, at)],
    }
  }
  const stated = parseStated(text)
  if (!stated.ok) {
    if (!known) return { given: { form: 'word', word: text }, problems: instrument }
    const faults = stated.error.map((fault) =>
      problemOfFault(
        { ...fault, message: `\`${name}\`: ${fault.message}` },
        source.locate(at, 'value', fault),
      ),
    )
    return { problems: [...instrument, ...faults] }
  }
  const given: GivenText = { form: 'quantity', stated: stated.value, with: written.with }
  const open = (known === 'own' || field?.role === 'known') && stated.value.u === null && !stated.value.exact
  const doubt = open ? [noUncertainty(name, text, source, at)] : []
  if (!field) return { given, problems: [...instrument, ...doubt] }
  if (field.role === 'known' && stated.value.isUncertainty) {
    return { problems: [...instrument, onlyUncertainty(name, source, at)] }
  }
  const { meaning, range } = field
  const wanted = {
    name: `\`${name}\``,
    kinds: kindsOf(field),
    meaning,
    range,
    see: `handbook: ${method}, givens`,
  }
  const problem = quantityProblem(stated.value, wanted, () => source.locate(at))
  if (problem) return { given, problems: [...instrument, problem] }
  return { given, problems: [...instrument, ...doubt] }
}

function choiceProblems(
  name: string,
  word: string,
  field: Given,
  source: SourceFile,
  path: FieldPath,
): Problem[] {
  if (field.role === 'words' || !field.choices || field.choices.includes(word)) return []
  const message = `\`${name}\` cannot be \`${word}\``
  const [near] = nearest(word, field.choices)
  const hint = near && `\`${near}\` is close`
  return [
    makeProblem({
      code: 'given/choice',
      message,
      at: source.locate(path),
      actual: word,
      expected: field.choices,
      hint,
    }),
  ]
}

function noUncertainty(name: string, text: string, source: SourceFile, path: FieldPath): Problem {
  return makeProblem({
    code: 'given/no-uncertainty',
    severity: 'warning',
    message: `\`${name}\` has no uncertainty`,
    at: source.locate(path),
    why: 'not known is not zero: a guarded criterion that rests on it stays undetermined',
    hint: `write \`${text.replace(/^(\S+)/, '$1 ± …')}\`, or \`${text} (exact)\` where it is exact`,
  })
}

/** `0.3 K (u)` is a standard uncertainty and nothing else: a volume cannot be one. */
function onlyUncertainty(name: string, source: SourceFile, path: FieldPath): Problem {
  return makeProblem({
    code: 'given/only-uncertainty',
    message: `\`${name}\` is given as an uncertainty, without a value`,
    at: source.locate(path),
    why: '(u) behind a number alone says that the number is itself a standard uncertainty',
    hint: 'write the value, ±, and its uncertainty, as in `96.4 ± 0.3 L (u)`',
  })
}

export function unknownGiven(
  name: string,
  schema: Schema,
  method: string,
  source: SourceFile,
  path: FieldPath,
): Problem {
  const names = schema.givens.map((given) => given.name)
  const near = nearest(name, names)
  return makeProblem({
    code: 'given/unknown',
    message: `the method ${method} has no given \`${name}\``,
    at: source.locate(path, typeof path.at(-1) === 'number' ? 'value' : 'key'),
    actual: name,
    expected: near.length > 0 ? near : names,
    hint: near[0] && `\`${near[0]}\` is close`,
    see: [`handbook: ${method}, givens`],
  })
}
