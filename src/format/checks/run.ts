/** A run against its card, its instruments and its people. */
import type { Schema } from '../../methods/method.ts'
import { makeProblem } from '../../problems/make.ts'
import type { Problem } from '../../problems/types.ts'
import { describeDimension, sameDimension } from '../../quantity/dimension.ts'
import { KINDS } from '../../quantity/kinds.ts'
import { nearest } from '../../quantity/nearest.ts'
import { namesOf } from '../kind-units.ts'
import type { RunFields } from '../kinds/run.ts'
import { runRecord } from '../kinds/run.ts'
import { ownGivens } from '../own-givens.ts'
import { fieldNamed, kindsOf } from '../schema-fields.ts'
import type { GivenText, Readings, RunRecord } from '../types.ts'
import type { CardDraft, Draft, World } from '../world.ts'
import { columnProblems } from './columns.ts'
import { readGivens } from './givens.ts'
import { article, quantityProblem } from './quantity.ts'
import { refer, referPeople, unknown } from './reference.ts'
import { removedProblems } from './removed.ts'

export function checkRun(
  draft: Draft<RunFields>,
  readings: Readings,
  /** False where the table is broken: then nothing is said about its columns. */
  tableRead: boolean,
  world: World,
): { readonly record: RunRecord; readonly problems: readonly Problem[] } {
  const { base, fields } = draft
  const { source } = base
  const card = world.cards.get(fields.card)
  const schema = card?.schema?.(readings.columns.map((column) => column.name))
  const method = card?.fields.method ?? ''
  const own = card ? ownGivens(card.fields, schema) : new Set<string>()
  const read = readGivens(fields.given, { id: method, schema, own }, world, source, ['given'])
  const problems = [
    ...refer(world, ['card'], fields.card, source, ['card']),
    ...(card ? articleProblems(draft, card) : []),
    ...people(draft, world),
    ...read.problems,
    ...(card && schema ? givenProblems(draft, card, schema, own, read.given) : []),
    ...(schema && tableRead ? columnProblems(readings, schema, method, source) : []),
    ...(tableRead ? instrumentProblems(draft, readings, schema, world) : []),
    ...(tableRead ? zeroProblems(draft, readings) : []),
    ...removedProblems(draft.fields.removed, source, world),
    ...nameProblems(draft),
  ]
  return { record: runRecord(base, fields, readings, read.given), problems }
}

function articleProblems({ base, fields }: Draft<RunFields>, card: CardDraft): Problem[] {
  const { source } = base
  const served =
    card.fields.article === undefined ? Object.keys(card.fields.articles ?? {}) : [card.fields.article]
  if (fields.article === undefined) {
    if (served.length < 2) return []
    const message = `the card \`${fields.card}\` serves several articles, and the run does not say which one was tested`
    const hint = `add a line \`article: ${served[0]}\``
    return [
      makeProblem({ code: 'run/article', message, at: source.locate(['card']), expected: served, hint }),
    ]
  }
  if (served.includes(fields.article) || served.length === 0) return []
  const message = `the card \`${fields.card}\` does not serve the article \`${fields.article}\``
  return [
    {
      ...unknown(message, fields.article, served, source.locate(['article']), undefined),
      code: 'run/article',
    },
  ]
}

function people({ base, fields }: Draft<RunFields>, world: World): Problem[] {
  return referPeople(
    world,
    [
      ...fields.by.map((id, index) => [id, ['by', index]] as const),
      [fields.witness, ['witness']],
      [fields.void?.by, ['void', 'by']],
      ...fields.amendments.map((amendment, index) => [amendment.by, ['amendments', index, 'by']] as const),
      ...fields.deviations.map(
        (deviation, index) => [deviation.agreed, ['deviations', index, 'agreed']] as const,
      ),
    ],
    base.source,
  )
}

/** What the card asks for must be there; what it does not ask for is a deviation. */
function givenProblems(
  { base, fields }: Draft<RunFields>,
  card: CardDraft,
  schema: Schema,
  own: ReadonlySet<string>,
  given: Readonly<Record<string, GivenText>>,
): Problem[] {
  const { source } = base
  const problems: Problem[] = []
  const isGiven = (name: string) => fieldNamed(schema.givens, name) !== undefined || own.has(name)
  const misspelt = Object.keys(fields.given).filter((name) => !isGiven(name))
  const askUnclear = card.fields.ask.some((name) => !isGiven(name))
  for (const name of card.fields.ask) {
    if (Object.hasOwn(fields.given, name) || !isGiven(name)) continue
    if (misspelt.some((other) => nearest(other, [name]).length > 0)) continue
    const message = `the card asks for the given \`${name}\`, measured on the day`
    const hint = `add it: \`given: {${name}: …}\``
    problems.push(makeProblem({ code: 'given/missing', message, at: source.locate(['given'], 'key'), hint }))
  }
  for (const name of Object.keys(given)) {
    if (askUnclear || card.fields.ask.includes(name)) continue
    if (fields.deviations.some((deviation) => `${deviation.from} ${deviation.what}`.includes(name))) continue
    problems.push(
      makeProblem({
        code: 'given/not-asked',
        severity: 'warning',
        message: `the card does not ask for \`${name}\``,
        at: source.locate(['given', name], 'key'),
        why: 'another value than the card gives is a deviation that somebody has agreed',
        hint: `name it under \`deviations\`, or list it under \`ask\` of the card \`${fields.card}\``,
      }),
    )
  }
  return problems
}

function instrumentProblems(
  { base, fields }: Draft<RunFields>,
  readings: Readings,
  schema: Schema | undefined,
  world: World,
): Problem[] {
  const { source } = base
  const problems: Problem[] = []
  const columns = readings.columns.map((column) => column.name)
  for (const [name, id] of Object.entries(fields.instruments)) {
    const path = ['instruments', name]
    problems.push(...refer(world, ['instrument'], id, source, path))
    const field = schema && fieldNamed(schema.columns, name)
    if (!columns.includes(name)) {
      // A required column that is missing is said once, at the table; one that is read out of another is never in it.
      if (field?.required || field?.from) continue
      const known = unknown(
        `the readings have no column \`${name}\``,
        name,
        columns,
        source.locate(path, 'key'),
        undefined,
      )
      problems.push(field ? { ...known, code: 'instrument/unused', severity: 'warning' } : known)
      continue
    }
    const instrument = world.instruments.get(id)
    if (!field || !instrument) continue
    const { dim } = instrument.resolution.unit
    if (kindsOf(field).some((kind) => sameDimension(KINDS[kind].dim, dim))) continue
    const message = `\`${id}\` reads ${article(describeDimension(dim))}, the column \`${name}\` is ${article(namesOf(kindsOf(field)))}`
    problems.push(makeProblem({ code: 'unit/wrong-dimension', message, at: source.locate(path) }))
  }
  for (const [index, name] of columns.entries()) {
    const field = schema && fieldNamed(schema.columns, name)
    if (field?.instrument !== 'required' || Object.hasOwn(fields.instruments, name)) continue
    problems.push(
      makeProblem({
        code: 'instrument/missing',
        message: `the run does not say which instrument read \`${name}\``,
        at: source.locateCell(-2, index),
        why: 'resolution, accuracy and calibration of the reading come from the instrument',
        hint: `add it: \`instruments: {${name}: …}\``,
        expected: [...world.instruments.keys()].slice(0, 8),
      }),
    )
  }
  return problems
}

function zeroProblems({ base, fields }: Draft<RunFields>, readings: Readings): Problem[] {
  const { source } = base
  return Object.entries(fields.zero).flatMap(([name, { before, after }]) => {
    const column = readings.columns.find((column) => column.name === name)
    if (!column) {
      const columns = readings.columns.map((column) => column.name)
      return [
        unknown(
          `the readings have no column \`${name}\``,
          name,
          columns,
          source.locate(['zero', name], 'key'),
          undefined,
        ),
      ]
    }
    return [
      { stated: before, part: 'before' },
      { stated: after, part: 'after' },
    ].flatMap(({ stated, part }) => {
      if (sameDimension(stated.unit.dim, column.dim)) return []
      const at = source.locate(['zero', name, part])
      const message = `the zero of \`${name}\` is ${article(describeDimension(stated.unit.dim))}, its readings are ${article(describeDimension(column.dim))}`
      return [makeProblem({ code: 'unit/wrong-dimension', message, at, hint: `give it in ${column.unit}` })]
    })
  })
}

/** Ambient temperature, and the name of the file against the time of the run. */
function nameProblems({ base, fields }: Draft<RunFields>): Problem[] {
  const { source, id } = base
  const problems: Problem[] = []
  const { temperature } = fields.ambient
  const path = ['ambient', 'temperature']
  if (temperature) {
    const wanted = { name: 'the ambient temperature', kinds: ['temperature'] as const }
    const problem = quantityProblem(temperature, wanted, () => source.locate(path))
    if (problem) problems.push(problem)
  }
  const { date, clock } = fields.when
  const month = /^records\/runs\/([^/]+)\//.exec(source.path)?.[1]
  const named = /^(\d{4}-\d{2}-\d{2})(?:-(\d{4}))?(?:-|$)/.exec(id)
  const time = named?.[2]
  const agrees = named?.[1] === date && (time === undefined || time === clock.replace(':', ''))
  if (agrees && month === date.slice(0, 7)) return problems
  const expected = `records/runs/${date.slice(0, 7)}/${date}-${clock.replace(':', '')}-${fields.card}.md`
  problems.push(
    makeProblem({
      code: 'run/name',
      severity: 'warning',
      message: `the name of the file and \`when\` (${date} ${clock}) differ`,
      at: source.locate(['when']),
      hint: `if \`when\` is right, the file is named \`${expected}\`, or the same with more behind it`,
    }),
  )
  return problems
}
