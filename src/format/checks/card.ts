/** A card against its method and against everything that it refers to. */

import type { Schema } from '../../methods/method.ts'
import { makeProblem } from '../../problems/make.ts'
import type { Problem } from '../../problems/types.ts'
import { divideDimension, sameDimension } from '../../quantity/dimension.ts'
import { KINDS, type Kind } from '../../quantity/kinds.ts'
import { nearest } from '../../quantity/nearest.ts'
import { cardRecord } from '../kinds/card.ts'
import { ownGivens } from '../own-givens.ts'
import { fieldNamed, kindsOf } from '../schema-fields.ts'
import type { CardRecord, GivenText, InstrumentDemand, SourceFile } from '../types.ts'
import type { CardDraft, World } from '../world.ts'
import { referArticle } from './articles.ts'
import { unknownColumn } from './columns.ts'
import { readGivens, unknownGiven } from './givens.ts'
import { article, quantityProblem } from './quantity.ts'
import { refer, referPeople, unknown } from './reference.ts'

export function checkCard(
  draft: CardDraft,
  world: World,
): { readonly record: CardRecord; readonly problems: readonly Problem[] } {
  const { base, fields } = draft
  const { source } = base
  const schema = draft.schema?.(Object.keys(fields.instruments))
  const method = { id: fields.method, schema, own: ownGivens(fields, schema) }
  const shared = readGivens(fields.given, method, world, source, ['given'])
  const articles: Record<string, Readonly<Record<string, GivenText>>> = {}
  const problems: Problem[] = [...shared.problems]
  for (const [path, raw] of Object.entries(fields.articles ?? {})) {
    const own = readGivens(raw, method, world, source, ['articles', path])
    articles[path] = own.given
    problems.push(...own.problems)
  }
  if (fields.article !== undefined) articles[fields.article] = {}
  problems.push(
    ...articleProblems(draft, Object.keys(articles), world),
    ...referPeople(world, [[fields.owner, ['owner']]], source),
    ...fields.after.flatMap((id, index) => refer(world, ['card'], id, source, ['after', index])),
    ...fields['overtaken-by'].flatMap((id, index) =>
      refer(world, ['card'], id, source, ['overtaken-by', index]),
    ),
    ...(schema ? schemaProblems(draft, schema, articles) : []),
  )
  if (fields.every) {
    const wanted = { name: '`every`', kinds: ['time'] as const }
    problems.push(...some(quantityProblem(fields.every, wanted, () => source.locate(['every']))))
  }
  const read = { given: shared.given, articles, fields: draft.own ?? {} }
  return { record: cardRecord(base, fields, world.settings.rule, read), problems }
}

function articleProblems(draft: CardDraft, paths: readonly string[], world: World): Problem[] {
  const { fields, base } = draft
  const { source } = base
  if (paths.length === 0 || (fields.article !== undefined && fields.articles !== undefined)) {
    const message =
      paths.length === 0
        ? 'the card does not say which article it is for'
        : 'the card has both `article` and `articles`'
    const hint = 'write `article: …` for one, or `articles:` with one line each'
    const at = source.locate(paths.length === 0 ? [] : ['article'], 'key')
    return [makeProblem({ code: 'card/article', message, at, hint })]
  }
  const place = (path: string) => (fields.article === undefined ? ['articles', path] : ['article'])
  const unknownPaths = paths.flatMap((path) => {
    const found = referArticle(world, path, source, place(path))
    return found.map((problem) => ({
      ...problem,
      at: source.locate(place(path), fields.article === undefined ? 'key' : 'value'),
    }))
  })
  if (unknownPaths.length > 0) return unknownPaths
  return fields.covers.flatMap((part, index) =>
    paths.flatMap((path) => referArticle(world, `${path}/${part}`, source, ['covers', index])).slice(0, 1),
  )
}

function schemaProblems(
  { fields, base }: CardDraft,
  schema: Schema,
  articles: Readonly<Record<string, Readonly<Record<string, GivenText>>>>,
): Problem[] {
  const { source } = base
  const problems: Problem[] = []
  const own = ownGivens(fields, schema)
  for (const [index, name] of fields.ask.entries()) {
    if (!fieldNamed(schema.givens, name) && !own.has(name))
      problems.push(unknownGiven(name, schema, fields.method, source, ['ask', index]))
  }
  for (const [name, stated] of Object.entries(fields['stop-at'])) {
    const column = fieldNamed(schema.columns, name)
    if (!column)
      problems.push(unknownColumn(name, schema, fields.method, source.locate(['stop-at', name], 'key')))
    else {
      const wanted = { name: `the stop of \`${name}\``, kinds: kindsOf(column), meaning: undefined }
      problems.push(...some(quantityProblem(stated, wanted, () => source.locate(['stop-at', name]))))
    }
  }
  for (const [name, demand] of Object.entries(fields.instruments)) {
    const column = fieldNamed(schema.columns, name)
    if (!column)
      problems.push(unknownColumn(name, schema, fields.method, source.locate(['instruments', name], 'key')))
    else problems.push(...demandProblems(name, demand, kindsOf(column), source))
  }
  for (const measure of Object.keys(fields.show)) {
    const own = [...Object.keys(fields.derive), ...Object.keys(fields.targets)]
    const names = [...schema.measures.map((field) => field.name), ...own]
    if (fieldNamed(schema.measures, measure) || names.includes(measure)) continue
    const message = `the card has no measure or target \`${measure}\``
    problems.push(unknown(message, measure, names, source.locate(['show', measure], 'key'), undefined))
  }
  const unknownNames = [fields.given, ...Object.values(fields.articles ?? {})]
    .flatMap((raw) => Object.keys(raw))
    .filter((name) => !fieldNamed(schema.givens, name) && !own.has(name))
  for (const given of schema.givens) {
    if (!given.required || given.default !== undefined || given.name.includes('<')) continue
    const has = (own: Readonly<Record<string, unknown>>) => Object.hasOwn(own, given.name)
    if (has(fields.given) || has(fields.targets) || fields.ask.includes(given.name)) continue
    if (fields.articles && Object.values(fields.articles).every(has)) continue
    if (unknownNames.some((name) => nearest(name, [given.name]).length > 0)) continue
    const without = Object.keys(articles).filter((path) => !has(fields.articles?.[path] ?? {}))
    const some = without.length < Object.keys(articles).length ? ` for \`${without.join('`, `')}\`` : ''
    problems.push(
      makeProblem({
        code: 'given/missing',
        message: `the method ${fields.method} needs the given \`${given.name}\`${some}`,
        at: source.locate(some ? ['articles', without[0] ?? ''] : ['given'], 'key'),
        why: given.meaning,
        hint: `write it under \`given\`, or list it under \`ask\` if it is measured on the day`,
        see: [`handbook: ${fields.method}, givens`],
      }),
    )
  }
  return problems
}

/** What a card asks of an instrument: range and steps of the column's kind, drift of that kind per time. */
function demandProblems(
  name: string,
  demand: InstrumentDemand,
  kinds: readonly Kind[],
  source: SourceFile,
): Problem[] {
  const problems: Problem[] = []
  const at = (part: string) => source.locate(['instruments', name, part])
  const differences = kinds.map((kind): Kind => (kind === 'temperature' ? 'temperature-difference' : kind))
  if (demand.range) {
    problems.push(
      ...some(
        quantityProblem(demand.range.high, { name: `the range of \`${name}\``, kinds }, () => at('range')),
      ),
    )
  }
  for (const part of ['uncertainty', 'resolution'] as const) {
    const stated = demand[part]
    const wanted = { name: `the ${part} of \`${name}\``, kinds: differences }
    if (stated) problems.push(...some(quantityProblem(stated, wanted, () => at(part))))
  }
  const { drift } = demand
  if (
    drift &&
    !kinds.some((kind) => sameDimension(drift.unit.dim, divideDimension(KINDS[kind].dim, KINDS.time.dim)))
  ) {
    const message = `the drift of \`${name}\` is not ${article(KINDS[kinds[0] ?? 'number'].name)} per time`
    const hint = `write it per hour, as in \`<= 2 ${KINDS[kinds[0] ?? 'number'].unit}/h\``
    problems.push(makeProblem({ code: 'unit/wrong-dimension', message, at: at('drift'), hint }))
  }
  return problems
}

const some = (problem: Problem | undefined): Problem[] => (problem ? [problem] : [])
