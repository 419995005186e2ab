/** Gates, reworks, items and readiness records against what they refer to. */
import type { z } from 'zod'
import { makeProblem } from '../../problems/make.ts'
import type { Problem } from '../../problems/types.ts'
import type { gateFields } from '../kinds/gate.ts'
import { CONCESSION_FIELDS, type itemFields } from '../kinds/item.ts'
import type { readinessFields } from '../kinds/readiness.ts'
import type { reworkFields } from '../kinds/rework.ts'
import type { FieldPath, SourceFile } from '../types.ts'
import type { Check, World } from '../world.ts'
import { articlePaths, referArticle } from './articles.ts'
import { refer, referPeople, unknown } from './reference.ts'
import { removedProblems } from './removed.ts'

export const checkGate: Check<z.output<typeof gateFields>> = ({ base, fields }, world) => [
  ...fields.cards.flatMap((id, index) => refer(world, ['card'], id, base.source, ['cards', index])),
  ...fields.needs.flatMap((id, index) => refer(world, ['gate'], id, base.source, ['needs', index])),
]

export const checkRework: Check<z.output<typeof reworkFields>> = ({ base: { source }, fields }, world) => [
  ...fields.changes.flatMap((part, index) => referArticle(world, part, source, ['changes', index])),
  ...fields.because.flatMap((id, index) => refer(world, ['run', 'item'], id, source, ['because', index])),
  ...Object.keys(fields.serials).flatMap((part) =>
    referArticle(world, part, source, ['serials', part]).map((problem) => ({
      ...problem,
      at: source.locate(['serials', part], 'key'),
    })),
  ),
  ...fields.unaffected.flatMap((entry, index) =>
    refer(world, ['card'], entry.card, source, ['unaffected', index, 'card']),
  ),
  ...removedProblems(fields.removed, source, world),
  ...referPeople(
    world,
    [
      ...fields.by.map((id, index) => [id, ['by', index]] as const),
      [fields['inspected-by'], ['inspected-by']],
      ...fields.unaffected.map((entry, index) => [entry.agreed, ['unaffected', index, 'agreed']] as const),
    ],
    source,
  ),
]

export const checkItem: Check<z.output<typeof itemFields>> = ({ base: { source }, fields }, world) => [
  ...fields.about.flatMap((id, index) => referAny(world, id, source, ['about', index])),
  ...fields.gates.flatMap((id, index) => refer(world, ['gate'], id, source, ['gates', index])),
  ...(fields.closed?.evidence ?? []).flatMap((id, index) =>
    referAny(world, id, source, ['closed', 'evidence', index]),
  ),
  ...concessionProblems(fields, source, world),
  ...removedProblems(fields.removed, source, world),
  ...referPeople(
    world,
    [
      [fields.raised.by, ['raised', 'by']],
      [fields.owner, ['owner']],
      [fields.closed?.by, ['closed', 'by']],
      [fields.agreed, ['agreed']],
    ],
    source,
  ),
]

export const checkReadiness: Check<z.output<typeof readinessFields>> = (
  { base: { source }, fields },
  world,
) => [
  ...refer(world, ['gate'], fields.gate, source, ['gate']),
  ...referPeople(
    world,
    fields.present.map((id, index) => [id, ['present', index]] as const),
    source,
  ),
  ...removedProblems(fields.removed, source, world),
  // The minutes stay as they were signed: a run that is gone since is an open item, not a mistake in them.
  ...fields.basis.flatMap((entry, index) =>
    refer(world, ['run'], entry.run, source, ['basis', index, 'run']).map(
      (problem): Problem => ({ ...problem, severity: 'warning' }),
    ),
  ),
]

/** Anything that has an id, a part of an article, or something fitted in a run. */
function referAny(world: World, id: string, source: SourceFile, path: FieldPath): Problem[] {
  const [run = '', fitted] = id.split('#')
  if (fitted !== undefined)
    return removedProblems([id], source, world).map((problem) => ({ ...problem, at: source.locate(path) }))
  if (world.known.has(run)) return []
  const parts = articlePaths(world)
  if (parts.has(id) || (id.includes('/') && referArticle(world, id, source, path).length === 0)) return []
  return [
    unknown(
      `nothing is called \`${id}\``,
      id,
      [...world.known.keys(), ...parts],
      source.locate(path),
      undefined,
    ),
  ]
}

/** A concession says what it concedes, in which run, who agreed and until when; nothing else has these fields. */
function concessionProblems(
  fields: z.output<typeof itemFields>,
  source: SourceFile,
  world: World,
): Problem[] {
  if (fields.kind !== 'concession') {
    const extra = CONCESSION_FIELDS.find((name) => fields[name] !== undefined)
    if (extra === undefined) return []
    const message = `\`${extra}\` is a field of a concession, and this is ${fields.kind === 'action' ? 'an action' : 'a discrepancy'}`
    return [makeProblem({ code: 'item/concession', message, at: source.locate([extra], 'key') })]
  }
  const missing = CONCESSION_FIELDS.filter((name) => fields[name] === undefined)
  if (missing.length > 0) {
    const message = `a concession needs \`${missing.join('`, `')}\``
    const hint =
      'say which criterion of which run is conceded, who agreed, and until when (`round` or a date)'
    return [makeProblem({ code: 'item/concession', message, at: source.locate(['kind']), hint })]
  }
  const { run = '', criterion = '', agreed = '' } = fields
  const problems = refer(world, ['run'], run, source, ['run'])
  const card = world.cards.get(world.runs.get(run)?.fields.card ?? '')
  const criteria = Object.keys(card?.fields.criteria ?? {})
  if (card && !criteria.includes(criterion)) {
    problems.push(
      unknown(
        `the card of \`${run}\` has no criterion \`${criterion}\``,
        criterion,
        criteria,
        source.locate(['criterion']),
        undefined,
      ),
    )
  }
  const person = world.people && Object.hasOwn(world.people, agreed) ? world.people[agreed] : undefined
  if (person && !person.roles.includes('concede')) {
    const message = `\`${agreed}\` may not agree to a concession`
    const may = Object.values(world.people ?? {}).filter((person) => person.roles.includes('concede'))
    const hint = 'who may has the role `concede` in `shared/people.yaml`'
    const expected = may.map((person) => person.id)
    problems.push(
      makeProblem({ code: 'item/concession', message, at: source.locate(['agreed']), expected, hint }),
    )
  }
  return problems
}
